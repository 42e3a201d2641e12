package sunup.live;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import io.vertx.core.http.HttpServerOptions;
import io.vertx.core.http.ServerWebSocket;
import io.vertx.core.http.ServerWebSocketHandshake;
import io.vertx.core.net.SocketAddress;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import sunup.access.Access;
import sunup.access.Connections;
import sunup.access.Door;
import sunup.access.Refusals;
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

  private final Refusals refusals;
  private final Set<LiveSocket> sockets = ConcurrentHashMap.newKeySet();
  private final Loops loops = new Loops();
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
      Refusals refusals,
      Access access) {
    this.refusals = refusals;
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

  /**
   * @param became told of each connection that became a socket, by its peer
   */
  public void mount(HttpServer server, Consumer<SocketAddress> became) {
    server.webSocketHandshakeHandler(this::shake);
    server.webSocketHandler(
        socket -> {
          became.accept(socket.remoteAddress());
          opened(socket);
        });
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
    List<String> named = handshake.headers().getAll("Host");
    String host = named.size() == 1 ? named.get(0) : null;
    String remote = handshake.remoteAddress().hostAddress();
    if (!connections.hostIsOurs(host)) {
      refuse(handshake, 421, "another host");
    } else if (!connections.originMayTalk(handshake.headers().get("Origin"), host, remote)) {
      refuse(handshake, 403, "another origin");
    } else if (!PATH.equals(handshake.path())) {
      refuse(handshake, 404, "a socket elsewhere");
    } else if (!offersOurs(handshake.headers().get("Sec-WebSocket-Protocol"))) {
      refuse(handshake, 400, "another subprotocol");
    } else if (sockets.size() >= limits.socketsMax() || full(remote)) {
      refuse(handshake, 503, "too many sockets");
    } else {
      handshake.accept();
    }
  }

  private void refuse(ServerWebSocketHandshake handshake, int status, String reason) {
    refusals.count(reason, handshake.remoteAddress().hostAddress());
    handshake.reject(status);
  }

  static boolean offersOurs(String offered) {
    return offered != null
        && Arrays.stream(offered.split(",")).map(String::strip).anyMatch(SUBPROTOCOL::equals);
  }

  private void opened(ServerWebSocket socket) {
    String remote = socket.remoteAddress().hostAddress();
    LiveSocket live =
        new LiveSocket(
            socket,
            loops.of(vertx.getOrCreateContext()),
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
