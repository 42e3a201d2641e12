package sunup.http;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpConnection;
import io.vertx.core.http.HttpServer;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.net.SocketAddress;
import io.vertx.ext.web.RoutingContext;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import sunup.access.Refusals;
import sunup.suites.Clock;

/**
 * The open connections, and how long each may take. Who sends a body byte by byte, or asks nothing
 * more, is not waited for; nobody holds more connections than their share.
 */
final class Connected {
  /** How often it is looked, as a share of the shortest limit. */
  private static final int LOOKS = 4;

  private final Vertx vertx;
  private final Clock clock;
  private final Doors doors;
  private final Refusals refusals;
  private final Map<SocketAddress, Link> links = new ConcurrentHashMap<>();
  private final Set<SocketAddress> turnedAway = ConcurrentHashMap.newKeySet();
  private final Map<String, Integer> perAddress = new HashMap<>();
  private final long timer;

  Connected(Vertx vertx, Clock clock, Doors doors, Refusals refusals) {
    this.vertx = vertx;
    this.clock = clock;
    this.doors = doors;
    this.refusals = refusals;
    int every = Math.max(20, Math.min(doors.requestMs(), doors.idleMs()) / LOOKS);
    this.timer = vertx.setPeriodic(every, id -> look());
  }

  /** One connection. Its fields are read by the one who looks, so all is under its lock. */
  private final class Link {
    final HttpConnection connection;

    /** Requests that are not here whole, each with when it began. */
    final Map<HttpServerRequest, Long> coming = new HashMap<>();

    int underWay;
    long since;
    boolean socket;

    Link(HttpConnection connection) {
      this.connection = connection;
      this.since = clock.monotonicMs();
    }

    synchronized void began(HttpServerRequest request) {
      underWay++;
      since = clock.monotonicMs();
      if (!request.isEnded()) {
        coming.put(request, since);
      }
    }

    synchronized void ended(HttpServerRequest request) {
      coming.remove(request);
      underWay--;
      since = clock.monotonicMs();
    }

    synchronized String overdue(long now) {
      coming.keySet().removeIf(HttpServerRequest::isEnded);
      if (socket) {
        return null;
      }
      if (coming.values().stream().anyMatch(began -> now - began > doors.requestMs())) {
        return "a slow body";
      }
      boolean still = underWay == 0;
      return still && now - since > doors.idleMs() ? "nothing asked" : null;
    }

    synchronized void becameSocket() {
      socket = true;
    }
  }

  void mount(HttpServer server) {
    server.connectionHandler(this::opened);
  }

  int count() {
    return links.size();
  }

  private void opened(HttpConnection connection) {
    SocketAddress peer = connection.remoteAddress();
    String address = peer.hostAddress();
    if (links.size() >= doors.connectionsMax() || !take(address)) {
      refusals.count("too many connections", address);
      turnedAway.add(peer);
      connection.closeHandler(v -> turnedAway.remove(peer));
      connection.close();
      return;
    }
    Link link = new Link(connection);
    links.put(peer, link);
    connection.closeHandler(
        v -> {
          // One that changed to HTTP/2 has become another connection of the same peer.
          links.remove(peer, link);
          give(address);
        });
  }

  private synchronized boolean take(String address) {
    if (perAddress.getOrDefault(address, 0) >= doors.connectionsPerAddressMax()) {
      return false;
    }
    perAddress.merge(address, 1, Integer::sum);
    return true;
  }

  private synchronized void give(String address) {
    perAddress.merge(address, -1, Integer::sum);
    perAddress.remove(address, 0);
  }

  /** The first handler of every request. */
  void began(RoutingContext context) {
    HttpServerRequest request = context.request();
    SocketAddress peer = request.connection().remoteAddress();
    if (turnedAway.contains(peer)) {
      // It is being closed, and what it asked is not answered.
      request.connection().close();
      return;
    }
    Link link = links.get(peer);
    if (link != null) {
      link.began(request);
      context.addEndHandler(done -> link.ended(request));
    }
    context.next();
  }

  /** Sockets have limits of their own. */
  void becameSocket(SocketAddress peer) {
    Link link = links.get(peer);
    if (link != null) {
      link.becameSocket();
    }
  }

  private void look() {
    long now = clock.monotonicMs();
    for (Link link : links.values()) {
      String why = link.overdue(now);
      if (why != null) {
        refusals.count(why, link.connection.remoteAddress().hostAddress());
        link.connection.close();
      }
    }
  }

  void close() {
    vertx.cancelTimer(timer);
  }
}
