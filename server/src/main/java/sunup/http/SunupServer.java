package sunup.http;

import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import io.vertx.ext.web.Router;
import java.time.ZoneId;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import sunup.access.Connections;
import sunup.board.SuiteId;
import sunup.live.LiveEndpoint;
import sunup.live.Mornings;
import sunup.live.Owners;
import sunup.live.Sight;
import sunup.live.ThreadLane;

/** The whole server: puts its pieces together, starts and ends them. */
public final class SunupServer {
  /** Forecasts that wait for a thread, over all mornings; more are asked for again later. */
  private static final int FORECASTS_WAITING_MAX = 32;

  /** Look-ups of owners that wait for a thread; more are answered "not now". */
  private static final int LOOKUPS_WAITING_MAX = 256;

  private static final int IDLE_SECONDS = 75;

  private final HttpServer http;
  private final LiveEndpoint live;
  private final Mornings mornings;
  private final ThreadLane lane;
  private final ExecutorService forecasts;
  private final ExecutorService blocking;

  private SunupServer(
      HttpServer http,
      LiveEndpoint live,
      Mornings mornings,
      ThreadLane lane,
      ExecutorService forecasts,
      ExecutorService blocking) {
    this.http = http;
    this.live = live;
    this.mornings = mornings;
    this.lane = lane;
    this.forecasts = forecasts;
    this.blocking = blocking;
  }

  /**
   * Starts a server.
   *
   * @return fails with an {@link IllegalArgumentException} that says what to do if the options are
   *     wrong
   */
  public static Future<SunupServer> start(Vertx vertx, ServerOptions options) {
    try {
      Connections.checkLoopback(options.host());
    } catch (IllegalArgumentException e) {
      return Future.failedFuture(e);
    }
    Owners owners = new NoJournal(options.clock());
    Sight sight = new NothingPlanned();
    return start(vertx, options, new SuiteId("main"), ZoneId.of("UTC"), owners, sight);
  }

  static Future<SunupServer> start(
      Vertx vertx, ServerOptions options, SuiteId suite, ZoneId zone, Owners owners, Sight sight) {
    ThreadLane lane = new ThreadLane("sunup-live");
    int cores = Runtime.getRuntime().availableProcessors();
    ExecutorService forecasts =
        pool("sunup-forecast", Math.max(1, cores - 1), FORECASTS_WAITING_MAX);
    ExecutorService blocking = pool("sunup-lookup", 2, LOOKUPS_WAITING_MAX);
    Mornings mornings =
        new Mornings(
            suite, zone, owners, options.clock(), lane, sight, forecasts, blocking, options.pace());
    Connections connections = new Connections(options.origins());
    LiveEndpoint live = new LiveEndpoint(vertx, mornings, connections, options.limits());
    Router router = Router.router(vertx);
    router.route().handler(new Guard(connections)::check);
    new Webroot("webroot").mount(router);
    router.route().failureHandler(Guard::failed);
    router.errorHandler(404, Guard::failed);
    router.errorHandler(405, Guard::failed);
    HttpServer http =
        vertx
            .createHttpServer(
                LiveEndpoint.options(options.limits())
                    .setHost(options.host())
                    .setPort(options.port())
                    .setIdleTimeout(IDLE_SECONDS))
            .requestHandler(router);
    live.mount(http);
    SunupServer server = new SunupServer(http, live, mornings, lane, forecasts, blocking);
    mornings.open();
    return http.listen()
        .map(server)
        .onFailure(
            e -> {
              server.stopThreads();
            });
  }

  /** The port that it listens on. */
  public int port() {
    return http.actualPort();
  }

  /** Open sockets. */
  public int sockets() {
    return live.count();
  }

  /** Tells the screens, stops listening and ends all that was started. */
  public Future<Void> close() {
    live.close();
    return http.close().onComplete(done -> stopThreads());
  }

  private void stopThreads() {
    mornings.close();
    lane.close();
    forecasts.shutdownNow();
    blocking.shutdownNow();
  }

  private static ExecutorService pool(String name, int threads, int waitingMax) {
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
