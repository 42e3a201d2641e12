package sunup.http;

import io.vertx.core.http.HttpClosedException;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.core.http.HttpVersion;
import io.vertx.core.net.HostAndPort;
import io.vertx.ext.web.RoutingContext;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.access.Access;
import sunup.access.Connections;
import sunup.access.Page;
import sunup.access.Refusals;
import sunup.board.Actor;
import sunup.board.CommandKind;
import sunup.board.Rights;
import sunup.board.Role;
import sunup.board.SuiteId;

/** What stands before every request: which are taken at all, and the headers of every answer. */
final class Guard {
  private static final Logger LOG = LoggerFactory.getLogger(Guard.class);

  static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
          + "font-src 'self'; connect-src 'self'; manifest-src 'self'; base-uri 'none'; "
          + "form-action 'none'; object-src 'none'; frame-ancestors 'none'";

  /** What a paired screen's page sends with each request of the API. */
  static final String PASS = "Sunup-Pass";

  private static final String ASKER = "sunup.asker";

  /** Two years: a browser that has seen the board by https asks for it in no other way. */
  static final String STRICT = "max-age=63072000; includeSubDomains";

  private final Connections connections;
  private final Refusals refusals;

  /** Null where screens are not paired. */
  private final Access access;

  Guard(Connections connections, Refusals refusals, Access access) {
    this.connections = connections;
    this.refusals = refusals;
    this.access = access;
  }

  /** Which paired screen asks; null where screens are not paired. */
  static Access.Asker asker(RoutingContext context) {
    return context.get(ASKER);
  }

  /**
   * Refuses whoever is not a desk of the suite, where screens are paired.
   *
   * @param words what is told to another
   */
  static void mustBeDesk(Access.Asker asker, SuiteId suite, String words) throws Answers.Wrong {
    if (asker != null && (asker.page() != Page.DESK || !asker.suite().equals(suite))) {
      throw new Answers.Wrong("Not allowed", 403, words);
    }
  }

  /**
   * Who asks for what only a desk may do: where screens are paired a desk of this suite, and nobody
   * who only looks.
   *
   * @param words what is told to another
   * @param screen what acts for the desk where screens are not paired
   */
  static Actor planner(Access.Asker asker, SuiteId suite, String words, String screen)
      throws Answers.Wrong {
    if (asker == null) {
      return new Actor(Role.DESK, null, screen);
    }
    mustBeDesk(asker, suite, words);
    if (!Rights.who(CommandKind.PLAN).contains(asker.actor().role())) {
      throw new Answers.Wrong("Not allowed", 403, words);
    }
    return asker.actor();
  }

  void check(RoutingContext context) {
    HttpServerResponse response = context.response();
    response
        .putHeader("Content-Security-Policy", POLICY)
        .putHeader("X-Content-Type-Options", "nosniff")
        .putHeader("Referrer-Policy", "no-referrer")
        .putHeader("Cross-Origin-Opener-Policy", "same-origin")
        .putHeader("Cross-Origin-Resource-Policy", "same-origin")
        .putHeader("X-Frame-Options", "DENY");
    HttpServerRequest request = context.request();
    String host = host(request);
    String remote = request.remoteAddress().hostAddress();
    // Other programs of a developer's machine are also called localhost: they must stay reachable.
    if (connections.tls() && !Connections.hostIsLoopback(host)) {
      response.putHeader("Strict-Transport-Security", STRICT);
    }
    if (!connections.hostIsOurs(host)) {
      refusals.count("another host", remote);
      new Problem("Another host", 421, "This server is reached by its own names only.")
          .send(context);
      return;
    }
    boolean reads =
        request.method().equals(HttpMethod.GET) || request.method().equals(HttpMethod.HEAD);
    if (!reads && !connections.originMayTalk(request.getHeader("Origin"), host, remote)) {
      refusals.count("another origin", remote);
      new Problem("Another origin", 403, "Only the board's own pages may do that.").send(context);
      return;
    }
    String path = context.normalizedPath();
    if (access != null && path.startsWith("/api/")) {
      Optional<Access.Asker> asker = access.asker(request.getHeader(PASS));
      if (asker.isEmpty()) {
        refusals.count("not paired", remote);
        new Problem(
                "Not paired",
                401,
                "Only paired screens that are connected may ask. If this one is paired, ask again"
                    + " once it is connected; if not, pair it at a desk.")
            .send(context);
        return;
      }
      if (asker.get().page() == Page.WALL) {
        refusals.count("a wall asks", remote);
        new Problem("Not allowed", 403, "A wall only shows; ask at a desk.").send(context);
        return;
      }
      if (asker.get().actor().role() == Role.MANAGER && !(reads && managers(path))) {
        refusals.count("a manager asks", remote);
        new Problem("Not allowed", 403, "A manager reads the review; the morning is for the desk.")
            .send(context);
        return;
      }
      context.put(ASKER, asker.get());
    }
    context.next();
  }

  /** What tells nothing of a morning that is on. */
  private static boolean managers(String path) {
    return path.startsWith(ReviewApi.ROOT + "/")
        || path.equals(SiteApi.PATH)
        || path.equals(SiteApi.SUITES);
  }

  /**
   * The host that the request names, or null if it names none or two: the pseudo-header {@code
   * :authority} over HTTP/2, the Host header before it. Vert.x resets a stream whose Host header
   * differs from its authority; that is not left to it alone.
   */
  private static String host(HttpServerRequest request) {
    HostAndPort authority = request.authority();
    List<String> named = request.headers().getAll("Host");
    if (request.version() != HttpVersion.HTTP_2 || authority == null) {
      return named.size() == 1 ? named.get(0) : null;
    }
    String host =
        authority.port() < 0 ? authority.host() : authority.host() + ":" + authority.port();
    return named.stream().allMatch(host::equalsIgnoreCase) ? host : null;
  }

  /** The answer to whatever went wrong, without its inside. */
  static void failed(RoutingContext context) {
    if (context.failure() instanceof HttpClosedException) {
      // Whoever asked is gone, or was not waited for any longer: nobody reads an answer.
      return;
    }
    int status = context.statusCode() >= 400 ? context.statusCode() : 500;
    if (status >= 500) {
      LOG.error(
          "{} {} failed", context.request().method(), context.request().path(), context.failure());
    }
    problem(status).send(context);
  }

  static Problem problem(int status) {
    return switch (status) {
      case 400 -> new Problem("Not understood", 400, "The request can't be read.");
      case 404 -> new Problem("Not found", 404, "There is nothing here. The board is at /.");
      case 405 -> new Problem("Not so", 405, "This address takes another method.");
      case 413 -> new Problem("Too large", 413, "Send less at once.");
      case 415 -> new Problem("Another type", 415, "Send the content type that is documented.");
      default ->
          new Problem(
              status < 500 ? "Refused" : "Our fault",
              status,
              status < 500
                  ? "The request was refused."
                  : "Something went wrong here. It was written to the log; try again.");
    };
  }
}
