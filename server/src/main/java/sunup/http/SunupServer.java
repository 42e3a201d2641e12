package sunup.http;

import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import io.vertx.ext.web.Route;
import io.vertx.ext.web.Router;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.access.Access;
import sunup.access.Connections;
import sunup.access.Refusals;
import sunup.archive.Archivist;
import sunup.archive.FactStore;
import sunup.archive.ForecastLog;
import sunup.board.Morning;
import sunup.board.SuiteId;
import sunup.cluster.Cluster;
import sunup.editions.Editions;
import sunup.intake.SiteFile;
import sunup.journal.Journal;
import sunup.live.ForecastPool;
import sunup.live.LiveEndpoint;
import sunup.live.Mornings;
import sunup.live.Nudges;
import sunup.live.OutlookSight;
import sunup.live.Owners;
import sunup.live.Pace;
import sunup.live.Sight;
import sunup.live.ThreadLane;
import sunup.live.Tries;
import sunup.live.WarmUp;
import sunup.suites.Suites;
import sunup.tls.Identity;
import sunup.tls.TlsOptions;

/** The whole server: puts its pieces together, starts and ends them. */
public final class SunupServer {
  /** Forecasts that wait for a thread, beside one a suite; more are asked for again later. */
  static final int FORECASTS_WAITING_MAX = 32;

  /** Look-ups of owners that wait for a thread, beside one a suite; more are answered "not now". */
  static final int LOOKUPS_WAITING_MAX = 256;

  /** API requests that wait for a thread; more are answered 503. */
  static final int REQUESTS_WAITING_MAX = 16;

  /** How often it is looked whether another node paired, revoked or signed on. */
  private static final int ACCESS_POLL_MS = 1_000;

  private static final Logger LOG = LoggerFactory.getLogger(SunupServer.class);

  private final Vertx vertx;
  private final Suites suites;

  /** Null for one node alone. */
  private final Cluster cluster;

  private final ThreadLane lane = new ThreadLane("sunup-live");
  private final ForecastPool forecasts;
  private final ExecutorService lookups;
  private final ExecutorService requests = pool("sunup-api", 2, REQUESTS_WAITING_MAX);

  /** Apart: years of facts may be asked for while a list is to be taken. */
  private final ExecutorService reviews = pool("sunup-review", 1, REQUESTS_WAITING_MAX);

  /** Apart from these: forecasts of a past morning may have to be made again. */
  private final ExecutorService pasts = pool("sunup-past", 2, REQUESTS_WAITING_MAX);

  /** Null where screens are not paired. */
  private final Access access;

  /** Null where no phone is told anything. */
  private final Phones phones;

  /** The timer that looks for what other nodes changed, or -1. */
  private final long accessPoll;

  private final Hosted hosted;

  /** The site's file of each suite. */
  private final Map<SuiteId, Path> siteFiles = new HashMap<>();

  private final Editions editions;
  private final Archivist archivist;
  private final Journal journal;
  private final ForecastLog said;
  private final LiveEndpoint live;
  private volatile boolean warming;
  private final Router router;
  private final HttpServer http;
  private final Connected connected;

  /** Null where the board speaks without TLS. */
  private final Identity identity;

  /** Null where nobody asked for a second port. */
  private final HttpServer side;

  private final Doors doors;

  private SunupServer(Vertx vertx, ServerOptions options, Opened opened) {
    List<SiteFile> sites = opened.sites();
    for (int i = 0; i < sites.size(); i++) {
      siteFiles.put(sites.get(i).suite(), options.siteFiles().get(i));
    }
    this.vertx = vertx;
    this.access = opened.access();
    this.identity = opened.identity();
    this.doors = options.doors();
    boolean tells = access != null && sites.stream().anyMatch(site -> site.push() != null);
    this.phones = tells ? new Phones(vertx, access.subscribing(), options.pairing().push()) : null;
    Suites suites = opened.suites();
    Cluster cluster = opened.cluster();
    this.editions = opened.editions();
    this.archivist = opened.archivist();
    this.journal = opened.journal();
    this.said = opened.said();
    this.suites = suites;
    this.cluster = cluster;
    Owners owners = cluster == null ? suites::owner : cluster.routing();
    this.lookups = pool("sunup-lookup", 2, LOOKUPS_WAITING_MAX + sites.size());
    int cores = Runtime.getRuntime().availableProcessors();
    this.forecasts =
        new ForecastPool(
            options.clock(),
            pool("sunup-forecast", Math.max(1, cores - 1), FORECASTS_WAITING_MAX + sites.size()),
            cores,
            options.spareShare());
    this.hosted =
        new Hosted(
            sites.stream()
                .map(site -> new Hosted.Suite(site, mornings(site, owners, options)))
                .toList());
    Connections connections = connections(options);
    Refusals refusals = new Refusals();
    this.live =
        new LiveEndpoint(
            vertx,
            hosted.mornings(),
            options.clock(),
            connections,
            options.limits(),
            refusals,
            access);
    this.connected = new Connected(vertx, options.clock(), options.doors(), refusals);
    Health health =
        new Health(
            hosted.mornings(),
            Connections.isLoopback(options.host()),
            () -> cluster == null ? null : cluster.routing().state(),
            () -> warming);
    boolean inDetail = doors.sidePort() == null && Connections.isLoopback(options.host());
    Tries tries = new Tries(options.clock(), lane, forecasts);
    this.router = router(new Guard(connections, refusals, access));
    mount(router, owners, tries, opened.facts(), options);
    health.mount(router, inDetail);
    fail(router);
    this.http = vertx.createHttpServer(doors.open(options, identity)).requestHandler(router);
    connected.mount(http);
    live.mount(http, connected::becameSocket);
    this.side = side(options, refusals, health);
    if (cluster != null) {
      cluster.routing().serve(hosted.mornings(), live::count);
    }
    if (access != null && options.database() != null) {
      accessPoll = vertx.setPeriodic(ACCESS_POLL_MS, t -> access.poll());
    } else {
      accessPoll = -1;
    }
  }

  private Mornings mornings(SiteFile site, Owners owners, ServerOptions options) {
    return new Mornings(
        site.suite(),
        site.settings().zoneId(),
        owners,
        options.clock(),
        lane,
        new OutlookSight(site.settings(), options.clock().rate()),
        forecasts,
        lookups,
        options.pace(),
        said::keep,
        phones == null ? Nudges.NONE : phones);
  }

  private static Connections connections(ServerOptions options) {
    TlsOptions tls = options.doors().tls();
    if (tls == null) {
      return new Connections(options.origins());
    }
    Set<String> names = new TreeSet<>();
    for (String name : tls.names()) {
      String lower = name.toLowerCase(Locale.ROOT);
      names.add(lower.contains(":") ? "[" + lower + "]" : lower);
    }
    return new Connections(options.origins(), names, true);
  }

  /** What stands before every request, and what needs nothing of a morning. */
  private Router router(Guard guard) {
    Router made = Router.router(vertx);
    made.route().handler(connected::began);
    made.route().handler(guard::check);
    new Webroot("webroot").mount(made);
    new ProtocolPages().mount(made);
    if (access != null) {
      new SignedInPage(access).mount(made);
    }
    if (identity != null && identity.rootPem() != null) {
      new TrustPages(identity).mount(made);
    }
    return made;
  }

  private void mount(
      Router made, Owners owners, Tries tries, FactStore facts, ServerOptions options) {
    new ForecastApi(vertx, requests).mount(made);
    new IntakeApi(vertx, requests, hosted, editions, owners).mount(made);
    new SheetsApi(vertx, requests, hosted, editions, options.clock(), suites).mount(made);
    new TryApi(vertx, requests, hosted, owners, tries).mount(made);
    new SiteApi(vertx, requests, hosted, editions).mount(made);
    new BedsideApi(vertx, requests, hosted, siteFiles, owners).mount(made);
    new ReadingsApi(vertx, requests, hosted, owners, options.clock(), suites).mount(made);
    new ReviewApi(vertx, reviews, pasts, hosted, facts, archivist).mount(made);
  }

  private static void fail(Router made) {
    made.route().failureHandler(Guard::failed);
    made.errorHandler(404, Guard::failed);
    made.errorHandler(405, Guard::failed);
    made.errorHandler(413, Guard::failed);
  }

  /** For those who look after the machine: on an address of its own, without TLS. */
  private HttpServer side(ServerOptions options, Refusals refusals, Health health) {
    if (doors.sidePort() == null) {
      return null;
    }
    Router made = Router.router(vertx);
    made.route().handler(new Guard(new Connections(List.of()), refusals, null)::check);
    health.mount(made, true);
    new Metrics(options.clock(), health, live, connected, refusals, identity).mount(made);
    fail(made);
    return vertx.createHttpServer(doors.openSide()).requestHandler(made);
  }

  /**
   * Starts a server.
   *
   * @return fails with an {@link IllegalArgumentException} that says what to do if the options, the
   *     site's file or the data folder can't be used
   */
  public static Future<SunupServer> start(Vertx vertx, ServerOptions options) {
    return vertx
        .executeBlocking(() -> new SunupServer(vertx, options, Opened.of(vertx, options)))
        .compose(SunupServer::listen);
  }

  private Future<SunupServer> listen() {
    hosted.mornings().open();
    archivist.start();
    return http.listen()
        .compose(listens -> side == null ? Future.succeededFuture(http) : side.listen())
        .map(
            listens -> {
              watchIdentity();
              return this;
            })
        .recover(e -> stop().transform(stopped -> Future.<SunupServer>failedFuture(e)));
  }

  private void watchIdentity() {
    if (identity != null) {
      identity.watch(
          () ->
              http.updateSSLOptions(identity.ssl(doors.requestMs()))
                  .onFailure(e -> LOG.error("a new certificate could not be shown", e)));
    }
  }

  /** The second port, or -1. */
  public int sidePort() {
    return side == null ? -1 : side.actualPort();
  }

  /** SHA-256 of the root that screens must install, or null if there is none. */
  public String rootFingerprint() {
    return identity == null ? null : identity.rootFingerprint();
  }

  /** The port that it listens on. */
  public int port() {
    return http.actualPort();
  }

  /**
   * Forecasts a made-up morning on a thread beside, until the first real forecast is wanted or its
   * code is compiled. One node of several is not ready before.
   *
   * @param now the moment that the morning stands at
   */
  public void warmUp(Callable<Morning> madeUp, long now) {
    Sight sight = new OutlookSight(hosted.all().get(0).site().settings(), 1);
    warming = true;
    Thread thread =
        new Thread(
            () -> {
              WarmUp.run(sight, Pace.DEFAULT, madeUp, now, forecasts::busy);
              warming = false;
            },
            "sunup-warm-up");
    thread.setDaemon(true);
    thread.start();
  }

  /** What the API's document must name, for example {@code GET /api/site}. */
  Set<String> documentedRoutes() {
    Set<String> routes = new TreeSet<>();
    for (Route route : router.getRoutes()) {
      String path = route.getPath();
      if (path != null && path.matches("/(api|health|protocol)(/.*)?")) {
        route.methods().forEach(method -> routes.add(method + " " + path));
      }
    }
    return routes;
  }

  /** The secret of the link for the first administrator, while a suite has none. */
  public Optional<String> firstLink() {
    return access == null ? Optional.empty() : access.firstLink();
  }

  /** The suites without an administrator at the start, of a board that has one; else empty. */
  public List<SuiteId> unadministered() {
    return access == null ? List.of() : access.unadministered();
  }

  /** The journal that it keeps, for whoever lays mornings into it that are over: a demo's past. */
  public Journal journal() {
    return journal;
  }

  /** Makes the review's facts of what came into the journal, without waiting for the next look. */
  public void reviewNow() {
    archivist.look();
  }

  /** Open sockets. */
  public int sockets() {
    return live.count();
  }

  /**
   * In order: gives its mornings to other nodes, if there are any; tells the screens, stops
   * listening, answers what is under way and closes the journal.
   */
  public Future<Void> close() {
    Future<Void> left =
        cluster == null
            ? Future.succeededFuture()
            : vertx.executeBlocking(
                () -> {
                  cluster.leave();
                  return null;
                });
    return left.eventually(
            () -> {
              live.close();
              return http.close();
            })
        .eventually(this::closeSide)
        .eventually(this::stop);
  }

  private Future<Void> closeSide() {
    return side == null ? Future.succeededFuture() : side.close();
  }

  private Future<Void> stop() {
    hosted.mornings().close();
    connected.close();
    if (accessPoll >= 0) {
      vertx.cancelTimer(accessPoll);
    }
    if (identity != null) {
      identity.close();
    }
    if (phones != null) {
      phones.close();
    }
    return vertx.executeBlocking(
        () -> {
          archivist.close();
          editions.close();
          said.close();
          if (cluster == null) {
            suites.close();
          } else {
            cluster.close();
          }
          if (access != null) {
            access.close();
          }
          lane.close();
          forecasts.close();
          lookups.shutdownNow();
          requests.shutdownNow();
          reviews.shutdownNow();
          pasts.shutdownNow();
          return null;
        });
  }

  private static ThreadPoolExecutor pool(String name, int threads, int waitingMax) {
    ThreadPoolExecutor pool =
        new ThreadPoolExecutor(
            threads,
            threads,
            10,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(waitingMax),
            task -> {
              Thread made = new Thread(task, name);
              made.setDaemon(true);
              return made;
            });
    pool.allowCoreThreadTimeOut(true);
    return pool;
  }
}
