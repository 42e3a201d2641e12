package sunup.ops.bench;

import io.vertx.core.Future;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.WebSocket;
import io.vertx.core.http.WebSocketClient;
import io.vertx.core.http.WebSocketConnectOptions;
import java.io.IOException;
import java.util.Arrays;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.LongAdder;

/** A screen of the wire's bench: counts what comes and how long it took. */
final class WireScreen {
  /** Before the moment at which a change was sent, in its text. */
  private static final byte[] MARK = {'a', 't', '='};

  private static final int DIGITS = 19;

  /** What all screens count together. */
  static final class Counts {
    final Spread times = new Spread();
    final LongAdder frames = new LongAdder();
    final LongAdder bytes = new LongAdder();
    final LongAdder changes = new LongAdder();
    volatile byte[] sample;

    void clear() {
      times.clear();
      frames.reset();
      bytes.reset();
      changes.reset();
    }
  }

  private final WireServer server;
  private final Counts counts;
  private final CompletableFuture<Void> ready = new CompletableFuture<>();
  private WebSocket socket;
  private volatile boolean counting = true;

  private WireScreen(WireServer server, Counts counts) {
    this.server = server;
    this.counts = counts;
  }

  /** Connects; its {@link #ready} completes when it has what there is. */
  static WireScreen open(
      WebSocketClient client, WireServer server, int port, String name, Counts counts)
      throws IOException {
    WireScreen screen = new WireScreen(server, counts);
    WebSocketConnectOptions where =
        new WebSocketConnectOptions()
            .setHost("127.0.0.1")
            .setPort(port)
            .setURI(server.path())
            .setAllowOriginHeader(false);
    if (server.subprotocol() != null) {
      where.addSubProtocol(server.subprotocol());
    }
    Buffer hello = server.hello(name);
    client
        .webSocket()
        .binaryMessageHandler(screen::heard)
        .closeHandler(v -> screen.ready.completeExceptionally(new IOException("closed")))
        .connect(where)
        .onComplete(
            done -> {
              if (done.failed()) {
                screen.ready.completeExceptionally(done.cause());
                return;
              }
              screen.socket = done.result();
              if (hello == null) {
                screen.ready.complete(null);
              } else {
                screen.send(hello);
              }
            });
    return screen;
  }

  /** One that sends only. */
  WireScreen silent() {
    counting = false;
    return this;
  }

  CompletableFuture<Void> ready() {
    return ready;
  }

  void send(Buffer message) {
    Future<Void> unused = socket.writeBinaryMessage(message);
  }

  /** Reads nothing from now on, or goes on. */
  void reads(boolean on) {
    if (on) {
      socket.resume();
    } else {
      socket.pause();
    }
  }

  void close() {
    Future<Void> unused = socket.close();
  }

  private void heard(Buffer message) {
    long now = System.nanoTime();
    if (!ready.isDone()) {
      Buffer second = server.second(message);
      if (second != null) {
        send(second);
      }
      if (server.ready(message)) {
        ready.complete(null);
      }
      return;
    }
    byte[] bytes = message.getBytes();
    int changes = 0;
    for (int at = find(bytes, 0); at >= 0 && counting; at = find(bytes, at + DIGITS)) {
      counts.times.add(now - number(bytes, at));
      changes++;
    }
    if (changes > 0) {
      counts.frames.increment();
      counts.bytes.add(bytes.length);
      counts.changes.add(changes);
      if (changes == 1 && counts.sample == null) {
        counts.sample = bytes;
      }
    }
  }

  static String text() {
    return "at=%019d".formatted(System.nanoTime());
  }

  /** The frame with another text. */
  static byte[] withText(byte[] frame, String text) {
    byte[] made = Arrays.copyOf(frame, frame.length);
    int at = find(made, 0) - MARK.length;
    for (int letter = 0; letter < text.length(); letter++) {
      made[at + letter] = (byte) text.charAt(letter);
    }
    return made;
  }

  /** Where the digits after the next mark begin, or -1. */
  private static int find(byte[] bytes, int from) {
    for (int at = from; at + MARK.length + DIGITS <= bytes.length; at++) {
      if (bytes[at + 2] == MARK[2] && bytes[at + 1] == MARK[1] && bytes[at] == MARK[0]) {
        return at + MARK.length;
      }
    }
    return -1;
  }

  private static long number(byte[] bytes, int at) {
    long value = 0;
    for (int digit = 0; digit < DIGITS; digit++) {
      value = value * 10 + bytes[at + digit] - '0';
    }
    return value;
  }
}
