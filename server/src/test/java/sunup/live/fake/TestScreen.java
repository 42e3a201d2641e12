package sunup.live.fake;

import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.WebSocket;
import io.vertx.core.http.WebSocketClient;
import io.vertx.core.http.WebSocketClientOptions;
import io.vertx.core.http.WebSocketConnectOptions;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Predicate;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Private;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.live.LiveEndpoint;
import sunup.wire.ClientMessage;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/** A screen over a real socket: keeps the parts as rule 2 says, and all that it got. */
public final class TestScreen {
  private static final long WAIT_SECONDS = 20;

  /** As in the pages. */
  private static final long ECHO_NS = 2_000_000_000L;

  private static final int TICK_MS = 1_000;

  private final List<String> raw = new ArrayList<>();
  private final List<ServerMessage> got = new ArrayList<>();
  private final Map<String, Part> parts = new LinkedHashMap<>();
  private final CompletableFuture<Void> ended = new CompletableFuture<>();

  /** Kept: Vert.x closes a client that nobody refers to, and its sockets with it. */
  private final WebSocketClient client;

  private WebSocket socket;
  private String morning;
  private long epoch = -1;
  private long n = -1;
  private long upTo = -1;
  private int gaps;
  private final long begun = System.nanoTime();
  private long beatAt = begun;
  private boolean readOnly;
  private boolean ticking;
  private boolean proved;

  /** When the newest tick was sent that has been answered. */
  private long echoAt;

  private long beatEchoAt = beatAt;

  private TestScreen(WebSocketClient client) {
    this.client = client;
  }

  /** Connects and waits for it. */
  public static TestScreen connect(Vertx vertx, int port) throws Exception {
    return connect(vertx, options(port));
  }

  public static WebSocketConnectOptions options(int port) {
    return options("127.0.0.1", port);
  }

  public static WebSocketConnectOptions options(String host, int port) {
    return new WebSocketConnectOptions()
        .setHost(host)
        .setPort(port)
        .setURI(LiveEndpoint.PATH)
        .addSubProtocol(LiveEndpoint.SUBPROTOCOL);
  }

  public static TestScreen connect(Vertx vertx, WebSocketConnectOptions options) throws Exception {
    TestScreen screen =
        new TestScreen(
            vertx.createWebSocketClient(
                new WebSocketClientOptions()
                    .setReceiveBufferSize(8 * 1024)
                    // A test ends without waiting for the farewell of a socket that reads nothing.
                    .setClosingTimeout(1)
                    .setMaxMessageSize(64 * 1024 * 1024)));
    // The handlers must be there before the first message is read: connected on the client's loop.
    screen.socket =
        await(
            screen
                .client
                .webSocket()
                .textMessageHandler(screen::text)
                .binaryMessageHandler(screen::binary)
                .closeHandler(v -> screen.ended.complete(null))
                .connect(options)
                .toCompletionStage()
                .toCompletableFuture());
    return screen;
  }

  private static <T> T await(CompletableFuture<T> future)
      throws InterruptedException, ExecutionException, TimeoutException {
    return future.get(WAIT_SECONDS, TimeUnit.SECONDS);
  }

  private void text(String text) {
    throw new IllegalStateException("a text frame: " + text);
  }

  private synchronized void binary(Buffer bytes) {
    try {
      ServerMessage message = Json.read(bytes.getBytes(), ServerMessage.class);
      raw.add(bytes.toString());
      got.add(message);
      keep(message);
    } catch (BadJson e) {
      throw new IllegalStateException(e);
    } finally {
      notifyAll();
    }
  }

  private void keep(ServerMessage message) {
    if (message instanceof ServerMessage.Beat beat) {
      beat(beat);
    } else if (message instanceof ServerMessage.Tock tock) {
      echoAt = Math.max(echoAt, tock.sentAt());
    }
    if (message instanceof ServerMessage.View view && !(ticking && view.epoch() < epoch)) {
      parts.clear();
      view.parts().forEach(part -> parts.put(part.key(), part));
      morning = view.morning().toString();
      epoch = view.epoch();
      n = view.n();
      upTo = view.upTo();
    } else if (message instanceof ServerMessage.Frame frame) {
      if (frame.epoch() != epoch || frame.n() != n + 1) {
        gaps++;
        return;
      }
      frame.set().forEach(part -> parts.put(part.key(), part));
      frame.gone().forEach(parts::remove);
      n = frame.n();
      upTo = frame.upTo();
    }
  }

  /** A proof of life, if it speaks of what is shown and can't have lain on the line. */
  private void beat(ServerMessage.Beat beat) {
    long now = System.nanoTime();
    if (!ticking || (beat.epoch() == epoch && beat.n() == n && now - echoAt <= ECHO_NS)) {
      proved = true;
      beatAt = now;
      beatEchoAt = echoAt;
      readOnly = beat.readOnly();
    } else if (beat.epoch() > epoch || beat.n() > n) {
      send(new ClientMessage.AskView());
    }
  }

  /** From now on it judges heartbeats as a page does, which sends a tick a second for that. */
  public TestScreen ticking(Vertx vertx) {
    synchronized (this) {
      ticking = true;
      // That it is connected may itself have lain on the line.
      echoAt = begun;
    }
    long timer =
        vertx.setPeriodic(0, TICK_MS, t -> send(new ClientMessage.Tick(System.nanoTime())));
    var unused = ended.thenRun(() -> vertx.cancelTimer(timer));
    return this;
  }

  public TestScreen hello(String name, String page) {
    return send(new ClientMessage.Hello(name, page, null, null, null));
  }

  /** Says hello as a screen that was where {@code before} is now. */
  public TestScreen resume(TestScreen before, String name, String page) {
    synchronized (before) {
      parts.putAll(before.parts);
      morning = before.morning;
      epoch = before.epoch;
      n = before.n;
      upTo = before.upTo;
    }
    return send(new ClientMessage.Hello(name, page, morning, epoch, n));
  }

  public TestScreen note(String id, String text) {
    return send(
        new ClientMessage.Send(
            new CommandId(id),
            null,
            null,
            ManualClock.START,
            0,
            null,
            new Command.AddNote(null, Private.of(text))));
  }

  public TestScreen send(ClientMessage message) {
    socket.writeBinaryMessage(Buffer.buffer(Json.bytes(message)));
    return this;
  }

  public TestScreen sendText(String text) {
    socket.writeTextMessage(text);
    return this;
  }

  public WebSocket socket() {
    return socket;
  }

  /** Waits until the screen got such a message, now or earlier. */
  public <M extends ServerMessage> M await(Class<M> kind, Predicate<M> wanted) throws Exception {
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(WAIT_SECONDS);
    synchronized (this) {
      while (true) {
        for (ServerMessage message : got) {
          if (kind.isInstance(message) && wanted.test(kind.cast(message))) {
            return kind.cast(message);
          }
        }
        long left = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
        if (left <= 0) {
          throw new AssertionError("no such " + kind.getSimpleName() + " among " + raw);
        }
        wait(left);
      }
    }
  }

  /** Waits until what the server sent before it took this is here. */
  public TestScreen barrier(long token) throws Exception {
    send(new ClientMessage.Tick(token));
    await(ServerMessage.Tock.class, tock -> tock.sentAt() == token);
    return this;
  }

  /** Waits until the socket is closed and tells the close code. */
  public int closeCode() throws Exception {
    await(ended);
    return socket.closeStatusCode();
  }

  public void close() throws Exception {
    socket.close();
    await(ended);
  }

  public synchronized Map<String, Part> parts() {
    return new LinkedHashMap<>(parts);
  }

  public synchronized long n() {
    return n;
  }

  public synchronized long upTo() {
    return upTo;
  }

  /** When the last heartbeat came, or it was made, by {@link System#nanoTime}. */
  public synchronized long beatAt() {
    return beatAt;
  }

  /** The last heartbeat was sent after this. */
  public synchronized long beatEchoAt() {
    return beatEchoAt;
  }

  /** Takes over when the last heartbeat of an earlier socket came, and what it said. */
  public TestScreen since(TestScreen before) {
    long at = before.beatAt();
    long echo = before.beatEchoAt();
    boolean kept = before.readOnly();
    synchronized (this) {
      readOnly = proved ? readOnly : kept;
      beatAt = proved ? beatAt : at;
      beatEchoAt = proved ? beatEchoAt : echo;
    }
    return this;
  }

  /** True if the last heartbeat said that nothing is taken now. */
  public synchronized boolean readOnly() {
    return readOnly;
  }

  public boolean closed() {
    return ended.isDone();
  }

  public synchronized int gaps() {
    return gaps;
  }

  public synchronized <M extends ServerMessage> List<M> all(Class<M> kind) {
    return got.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  public synchronized String rawText() {
    return String.join("\n", raw);
  }

  public synchronized void forgetMessages() {
    raw.clear();
    got.clear();
  }
}
