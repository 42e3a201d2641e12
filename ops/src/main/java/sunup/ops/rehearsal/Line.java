package sunup.ops.rehearsal;

import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.WebSocket;
import io.vertx.core.http.WebSocketClient;
import io.vertx.core.http.WebSocketConnectOptions;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.CommandId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/**
 * One screen of the rehearsal and its socket. Keeps what was not answered and sends it again under
 * the same id after the socket or the board was gone. Lives on one event loop.
 */
final class Line {
  static final String SUBPROTOCOL = "sunup.1";

  /** Touches on their way; more wait in the queue, whose length is the script's. */
  static final int IN_FLIGHT = 8;

  /** Touches a second, under what the board takes from one screen. */
  static final int PER_SECOND = 15;

  static final int RETRY_MS = 500;
  private static final byte[] ANSWER = "{\"m\":\"answer\"".getBytes(StandardCharsets.UTF_8);
  private static final byte[] FRAME = "{\"m\":\"frame\"".getBytes(StandardCharsets.UTF_8);
  private static final byte[] VIEW = "{\"m\":\"view\"".getBytes(StandardCharsets.UTF_8);
  private static final Logger LOG = LoggerFactory.getLogger(Line.class);

  /** A touch with its id. */
  record Touch(CommandId id, Report report) {}

  private final Vertx vertx;
  private final WebSocketClient client;
  private final WebSocketConnectOptions where;
  private final String screen;
  private final String page;
  private final Consumer<Buffer> others;
  private final Consumer<ServerMessage.Answer> answers;
  private final Deque<Touch> queue = new ArrayDeque<>();
  private final Map<CommandId, Touch> inFlight = new LinkedHashMap<>();
  private Consumer<Throwable> unreached;
  private WebSocket socket;
  private boolean closed;
  private boolean viewed;
  private double tokens = PER_SECOND;
  private long pauseUntil;
  private long lastTick = Long.MIN_VALUE;

  /**
   * @param others takes views, frames and beats as they come; null if this screen does not look
   */
  Line(
      Vertx vertx,
      WebSocketClient client,
      WebSocketConnectOptions where,
      String screen,
      String page,
      Consumer<Buffer> others,
      Consumer<ServerMessage.Answer> answers) {
    this.vertx = vertx;
    this.client = client;
    this.where = where;
    this.screen = screen;
    this.page = page;
    this.others = others;
    this.answers = answers;
  }

  /**
   * Tells that nobody answers, instead of trying again, as long as it was never connected.
   *
   * @param told takes why
   */
  void tellIfUnreached(Consumer<Throwable> told) {
    unreached = told;
  }

  void open() {
    if (closed) {
      return;
    }
    client
        .connect(where)
        .onSuccess(this::opened)
        .onFailure(
            e -> {
              LOG.debug("{} is not connected: {}", screen, e.getMessage());
              if (unreached != null) {
                unreached.accept(e);
              } else {
                openAgain();
              }
            });
  }

  private void opened(WebSocket ws) {
    if (closed) {
      ws.close();
      return;
    }
    socket = ws;
    unreached = null;
    viewed = false;
    ws.binaryMessageHandler(this::heard);
    ws.exceptionHandler(e -> LOG.debug("{}: {}", screen, e.getMessage()));
    ws.closeHandler(
        v -> {
          socket = null;
          List<Touch> unanswered = new ArrayList<>(inFlight.values());
          inFlight.clear();
          for (int i = unanswered.size() - 1; i >= 0; i--) {
            queue.addFirst(unanswered.get(i));
          }
          openAgain();
        });
    write(new ClientMessage.Hello(screen, page, null, null, null));
  }

  private void openAgain() {
    if (!closed) {
      vertx.setTimer(RETRY_MS, t -> open());
    }
  }

  private void heard(Buffer message) {
    if (begins(message, ANSWER)) {
      try {
        answered((ServerMessage.Answer) Json.read(message.getBytes(), ServerMessage.class));
      } catch (BadJson e) {
        LOG.warn("{} got an answer that can't be read: {}", screen, e.getMessage());
      }
      return;
    }
    viewed |= begins(message, VIEW);
    if (others != null) {
      others.accept(message);
    } else if (!begins(message, FRAME) && message.toString().startsWith("{\"m\":\"trouble\"")) {
      LOG.warn("{}: {}", screen, message);
    }
  }

  private void answered(ServerMessage.Answer answer) {
    Touch touch = inFlight.remove(answer.id());
    if (touch == null) {
      return;
    }
    if (answer.status().equals("later")) {
      queue.addFirst(touch);
      pauseUntil = lastTick + RETRY_MS;
      return;
    }
    answers.accept(answer);
  }

  void touch(Touch touch) {
    queue.addLast(touch);
  }

  /**
   * Sends what may be sent now.
   *
   * @param revisions of what the desk's screen shows, by part
   */
  void tick(long monotonicMs, Map<String, Long> revisions) {
    long passed = lastTick == Long.MIN_VALUE ? 0 : monotonicMs - lastTick;
    lastTick = monotonicMs;
    tokens = Math.min(PER_SECOND, tokens + passed * PER_SECOND / 1000.0);
    while (socket != null
        && viewed
        && monotonicMs >= pauseUntil
        && tokens >= 1
        && inFlight.size() < IN_FLIGHT
        && !queue.isEmpty()) {
      tokens -= 1;
      Touch next = queue.removeFirst();
      inFlight.put(next.id(), next);
      Report r = next.report();
      Long seen = r.shown() == null ? null : revisions.get(r.shown());
      write(new ClientMessage.Send(next.id(), null, seen, r.at(), 0, r.person(), r.command()));
    }
  }

  private void write(ClientMessage message) {
    socket.writeBinaryMessage(Buffer.buffer(Json.bytes(message)));
  }

  boolean idle() {
    return queue.isEmpty() && inFlight.isEmpty();
  }

  int waiting() {
    return queue.size() + inFlight.size();
  }

  void close() {
    closed = true;
    if (socket != null) {
      socket.close();
    }
  }

  static boolean begins(Buffer message, byte[] with) {
    if (message.length() < with.length) {
      return false;
    }
    for (int i = 0; i < with.length; i++) {
      if (message.getByte(i) != with[i]) {
        return false;
      }
    }
    return true;
  }
}
