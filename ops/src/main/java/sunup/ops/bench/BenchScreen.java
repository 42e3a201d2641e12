package sunup.ops.bench;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.WebSocket;
import io.vertx.core.http.WebSocketClient;
import io.vertx.core.http.WebSocketClientOptions;
import io.vertx.core.http.WebSocketConnectOptions;
import java.io.IOException;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import sunup.board.CommandId;
import sunup.codec.Json;
import sunup.wire.ClientMessage;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/**
 * A screen for measuring: notes when what it waits for came. One thread waits while the socket's
 * event loop notes; both under this object's lock.
 */
final class BenchScreen {
  private static final int MESSAGE_MAX = 16 * 1024 * 1024;
  private static final int STATIONS_MAX = 60;
  private static final long VIEW_MS = 20_000;

  private final Vertx vertx;
  private final int port;
  private final ObjectMapper json = Json.mapper();
  private final Map<String, Part> parts = new LinkedHashMap<>();
  private final Map<String, BenchScreen> stations = new LinkedHashMap<>();

  /** Kept: a client that nobody refers to is collected, and its sockets with it. */
  private WebSocketClient client;

  private WebSocket socket;
  private boolean seen;
  private long morningClock;
  private long upTo;
  private long upToAt;
  private long forecastOf;
  private long forecastAt;
  private ServerMessage.Answer answer;
  private long answeredAt;

  private BenchScreen(Vertx vertx, int port) {
    this.vertx = vertx;
    this.port = port;
  }

  static BenchScreen open(Vertx vertx, int port, String page, String name) throws Exception {
    return open(vertx, port, page, name, null);
  }

  /**
   * @param suite null for the board's first
   */
  static BenchScreen open(Vertx vertx, int port, String page, String name, String suite)
      throws Exception {
    BenchScreen screen = new BenchScreen(vertx, port);
    WebSocketConnectOptions where =
        new WebSocketConnectOptions()
            .setHost("127.0.0.1")
            .setPort(port)
            .setURI("/live")
            .addSubProtocol("sunup.1");
    WebSocketClientOptions limits =
        new WebSocketClientOptions().setMaxMessageSize(MESSAGE_MAX).setMaxFrameSize(MESSAGE_MAX);
    screen.client = vertx.createWebSocketClient(limits);
    screen.socket =
        screen
            .client
            .connect(where)
            .toCompletionStage()
            .toCompletableFuture()
            .get(10, TimeUnit.SECONDS);
    screen.socket.binaryMessageHandler(screen::note);
    screen.send(new ClientMessage.Hello(name, page, null, null, null, null, suite));
    if (screen.until(VIEW_MS, () -> screen.seen ? screen : null) == null) {
      throw new IllegalStateException("The board on port " + port + " sent no view.");
    }
    return screen;
  }

  /** The station of a room, opened when first asked for. */
  BenchScreen station(String room) throws Exception {
    BenchScreen station = stations.get(room);
    if (station == null && stations.size() < STATIONS_MAX) {
      station = open(vertx, port, "station", "station-" + room);
      stations.put(room, station);
    }
    return station;
  }

  void send(ClientMessage message) throws IOException {
    socket.writeBinaryMessage(
        Buffer.buffer(json.writerFor(ClientMessage.class).writeValueAsBytes(message)));
  }

  synchronized Collection<Part> parts() {
    return List.copyOf(parts.values());
  }

  synchronized long morningNow() {
    return morningClock;
  }

  synchronized long answeredAt() {
    return answeredAt;
  }

  ServerMessage.Answer answer(CommandId id, long waitMs) throws InterruptedException {
    return until(waitMs, () -> answer != null && answer.id().equals(id) ? answer : null);
  }

  long frameAt(long seq, long waitMs) throws InterruptedException {
    Long at = until(waitMs, () -> upTo >= seq ? Long.valueOf(upToAt) : null);
    if (at == null) {
      throw new IllegalStateException("no frame came for sequence " + seq);
    }
    return at;
  }

  /** When figures of this state came, or null if none did in time. */
  Long figuresAt(long seq, long waitMs) throws InterruptedException {
    return until(waitMs, () -> forecastOf >= seq ? Long.valueOf(forecastAt) : null);
  }

  private synchronized <T> T until(long waitMs, Supplier<T> condition) throws InterruptedException {
    long end = System.nanoTime() + waitMs * 1_000_000;
    T found = condition.get();
    while (found == null) {
      long left = (end - System.nanoTime()) / 1_000_000;
      if (left <= 0) {
        return null;
      }
      wait(left);
      found = condition.get();
    }
    return found;
  }

  private synchronized void note(Buffer bytes) {
    long now = System.nanoTime();
    ServerMessage message;
    try {
      message = json.readValue(bytes.getBytes(), ServerMessage.class);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    if (message instanceof ServerMessage.View view) {
      seen = true;
      view.parts().forEach(part -> parts.put(part.key(), part));
      came(view.upTo(), view.forecastOf(), now);
    } else if (message instanceof ServerMessage.Frame frame) {
      frame.set().forEach(part -> parts.put(part.key(), part));
      frame.gone().forEach(parts::remove);
      came(frame.upTo(), frame.forecastOf(), now);
    } else if (message instanceof ServerMessage.Beat beat) {
      morningClock = beat.morningClock();
    } else if (message instanceof ServerMessage.Answer given) {
      answer = given;
      answeredAt = now;
    }
    notifyAll();
  }

  private void came(long sequence, long computedOf, long now) {
    if (sequence > upTo) {
      upTo = sequence;
      upToAt = now;
    }
    if (computedOf > forecastOf) {
      forecastOf = computedOf;
      forecastAt = now;
    }
  }
}
