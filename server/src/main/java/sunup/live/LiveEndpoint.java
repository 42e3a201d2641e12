package sunup.live;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import io.vertx.core.http.HttpServerOptions;
import io.vertx.core.http.ServerWebSocket;
import io.vertx.core.http.ServerWebSocketHandshake;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import sunup.access.Access;
import sunup.access.Connections;
import sunup.access.Door;
import sunup.suites.Clock;

/** The address {@code /live}: which sockets are opened, and all that are open. */
public final class LiveEndpoint {
  public static final String PATH = "/live";
  public static final String SUBPROTOCOL = "sunup.1";

  /** Kernel buffers of a socket: a screen that reads slowly shall not hide in them. */
  private static final int SEND_BUFFER_BYTES = 128 * 1024;

  private static final int RECEIVE_BUFFER_BYTES = 32 * 1024;

  /** Real seconds that a closing handshake may take. */
  private static final int CLOSING_SECONDS = 3;

  private final Vertx vertx;
  private final MorningsBySuite suites;
  private final Clock clock;
  private final Connections connections;
  private final Limits limits;

  /** Null where screens are not paired. */
  private final Access access;

  private final Set<LiveSocket> sockets = ConcurrentHashMap.newKeySet();
  private final Map<String, Integer> perAddress = new HashMap<>();

  /**
   * @param access null where screens are not paired
   */
  public LiveEndpoint(
      Vertx vertx,
      MorningsBySuite suites,
      Clock clock,
      Connections connections,
      Limits limits,
      Access access) {
    this.vertx = vertx;
    this.suites = suites;
    this.clock = clock;
    this.connections = connections;
    this.limits = limits;
    this.access = access;
  }

  /** The options that the endpoint needs; compression would undo the shared buffers. */
  public static HttpServerOptions options(Limits limits) {
    return new HttpServerOptions()
        .setWebSocketSubProtocols(List.of(SUBPROTOCOL))
        .setMaxWebSocketMessageSize(limits.messageBytesMax())
        .setPerFrameWebSocketCompressionSupported(false)
        .setPerMessageWebSocketCompressionSupported(false)
        .setWebSocketClosingTimeout(CLOSING_SECONDS)
        .setSendBufferSize(SEND_BUFFER_BYTES)
        .setReceiveBufferSize(RECEIVE_BUFFER_BYTES);
  }

  public void mount(HttpServer server) {
    server.webSocketHandshakeHandler(this::shake);
    server.webSocketHandler(this::opened);
  }

  /** Open sockets. */
  public int count() {
    return sockets.size();
  }

  /** Tells all screens that the server goes. */
  public void close() {
    sockets.forEach(LiveSocket::goAway);
  }

  private void shake(ServerWebSocketHandshake handshake) {
    String host = handshake.headers().get("Host");
    String remote = handshake.remoteAddress().hostAddress();
    if (!connections.hostIsOurs(host)) {
      handshake.reject(421);
    } else if (!connections.originMayTalk(handshake.headers().get("Origin"), host, remote)) {
      handshake.reject(403);
    } else if (!PATH.equals(handshake.path())) {
      handshake.reject(404);
    } else if (!offersOurs(handshake.headers().get("Sec-WebSocket-Protocol"))) {
      handshake.reject(400);
    } else if (sockets.size() >= limits.socketsMax() || full(remote)) {
      handshake.reject(503);
    } else {
      handshake.accept();
    }
  }

  private static boolean offersOurs(String offered) {
    return offered != null
        && Arrays.stream(offered.split(",")).map(String::strip).anyMatch(SUBPROTOCOL::equals);
  }

  private void opened(ServerWebSocket socket) {
    String remote = socket.remoteAddress().hostAddress();
    LiveSocket live =
        new LiveSocket(
            socket,
            vertx.getOrCreateContext(),
            vertx,
            suites,
            clock,
            limits,
            line -> access == null ? null : Door.of(access, line, origin(socket), remote));
    sockets.add(live);
    count(remote, 1);
    live.open(
        () -> {
          sockets.remove(live);
          count(remote, -1);
        });
  }

  /** Of the page that opened it; what is no page signs for the address that it asked. */
  private static String origin(ServerWebSocket socket) {
    String given = socket.headers().get("Origin");
    String scheme = socket.isSsl() ? "https://" : "http://";
    return given != null ? given : scheme + socket.headers().get("Host");
  }

  private synchronized boolean full(String address) {
    return perAddress.getOrDefault(address, 0) >= limits.socketsPerAddressMax();
  }

  private synchronized void count(String address, int change) {
    perAddress.merge(address, change, Integer::sum);
    perAddress.remove(address, 0);
  }
}
