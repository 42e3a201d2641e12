package sunup.ops.rehearsal;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Context;
import io.vertx.core.Future;
import io.vertx.core.Promise;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.WebSocketClient;
import io.vertx.core.http.WebSocketClientOptions;
import io.vertx.core.http.WebSocketConnectOptions;
import java.io.IOException;
import java.net.ConnectException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.codec.Json;
import sunup.wire.ServerMessage;

/**
 * Plays a script's reports through real sockets, each when the board's morning clock reaches it. It
 * may be started in the middle of a morning: all that should have been reported by then is sent
 * first, under the same ids as ever, so that what the board has already is not told twice.
 */
public final class Player {
  /** Real milliseconds between two looks at the clock. */
  private static final int TICK_MS = 50;

  private static final int MOST_MESSAGE = 16 * 1024 * 1024;
  private static final Logger LOG = LoggerFactory.getLogger(Player.class);

  /**
   * What became of the reports.
   *
   * @param told how many the board has answered
   * @param refused how many it refused, by code
   */
  public record Tally(int told, Map<String, Integer> refused) {
    public int refusals() {
      return refused.values().stream().mapToInt(Integer::intValue).sum();
    }
  }

  private final Vertx vertx;
  private final Function<MorningId, Script> scripts;
  private final LongSupplier monotonicMs;
  private final BoardClock clock;
  private final WebSocketConnectOptions where;
  private final Map<String, Line> lines = new LinkedHashMap<>();
  private final Map<String, Long> revisions = new HashMap<>();
  private final Map<String, Integer> refused = new TreeMap<>();
  private final Promise<Tally> over = Promise.promise();
  private Context context;
  private WebSocketClient client;
  private boolean asked;
  private Script script;
  private int next;
  private int told;
  private long timer = -1;

  /**
   * @param scripts gives the script for the morning that the board shows, or throws {@link
   *     IllegalArgumentException} if it can't be played
   * @param speed morning seconds per real second, or 0 to follow the board's own clock
   * @param monotonicMs a clock that never goes back
   */
  public Player(
      Vertx vertx,
      String host,
      int port,
      Function<MorningId, Script> scripts,
      double speed,
      LongSupplier monotonicMs) {
    this.vertx = vertx;
    this.scripts = scripts;
    this.monotonicMs = monotonicMs;
    this.clock = new BoardClock(speed);
    this.where =
        new WebSocketConnectOptions()
            .setHost(host)
            .setPort(port)
            .setURI("/live")
            .addSubProtocol(Line.SUBPROTOCOL);
  }

  /** Begins; the future ends when all is told, when it is closed, or with what went wrong. */
  public Future<Tally> start() {
    context = vertx.getOrCreateContext();
    context.runOnContext(
        v -> {
          client =
              vertx.createWebSocketClient(
                  new WebSocketClientOptions()
                      .setMaxFrameSize(MOST_MESSAGE)
                      .setMaxMessageSize(MOST_MESSAGE)
                      .setMaxConnections(1_000));
          lineFor(DeskNotes.SCREEN, "desk");
          timer = vertx.setPeriodic(TICK_MS, t -> tick());
        });
    return over.future();
  }

  /** Stops telling; what was not answered is not told. */
  public void close() {
    if (context != null) {
      context.runOnContext(v -> stop());
    }
  }

  private void stop() {
    vertx.cancelTimer(timer);
    lines.values().forEach(Line::close);
    client.close();
    over.tryComplete(new Tally(told, Map.copyOf(refused)));
  }

  private Line lineFor(String screen, String page) {
    return lines.computeIfAbsent(
        screen,
        name -> {
          boolean looks = name.equals(DeskNotes.SCREEN);
          Line line =
              new Line(
                  vertx, client, where, name, page, looks ? this::looked : null, this::answered);
          if (looks) {
            line.tellIfUnreached(this::unreached);
          }
          line.open();
          return line;
        });
  }

  private void unreached(Throwable why) {
    String at = where.getHost() + ":" + where.getPort();
    over.tryFail(new ConnectException("No board answers at " + at + ": " + why.getMessage()));
    stop();
  }

  private void tick() {
    long real = monotonicMs.getAsLong();
    Long now = clock.morning(real);
    if (script == null || now == null) {
      return;
    }
    while (next < script.reports().size() && script.reports().get(next).at() <= now) {
      Report r = script.reports().get(next);
      Line.Touch touch = new Line.Touch(Report.id(r.at(), script.seed(), next), r);
      lineFor(r.screen(), r.page()).touch(touch);
      next++;
    }
    lines.values().forEach(line -> line.tick(real, revisions));
    if (next == script.reports().size() && lines.values().stream().allMatch(Line::idle)) {
      LOG.info("the rehearsal has told all of {} reports", told);
      stop();
    }
  }

  private void answered(ServerMessage.Answer answer) {
    told++;
    if (answer.status().equals("refused")) {
      refused.merge(String.valueOf(answer.code()), 1, Integer::sum);
      LOG.debug("refused: {} {}", answer.code(), answer.words());
    }
  }

  /** The desk's screen: heartbeats set the clock, views and frames the revisions. */
  private void looked(Buffer message) {
    try {
      JsonNode m = Json.mapper().readTree(message.getBytes());
      switch (m.path("m").asText()) {
        case "beat" -> beat(m);
        case "view" -> {
          revisions.clear();
          note(m.path("parts"));
        }
        case "frame" -> note(m.path("set"));
        case "trouble" -> LOG.warn("the board says: {}", m.path("words").asText());
        default -> {}
      }
    } catch (IOException e) {
      LOG.warn("a message of the board can't be read: {}", e.getMessage());
    }
  }

  private void beat(JsonNode m) {
    if (!asked) {
      asked = true;
      MorningId morning = MorningId.parse(m.path("morning").asText());
      vertx
          .executeBlocking(() -> scripts.apply(morning))
          .onSuccess(
              written -> {
                script = written;
                LOG.info("rehearsing {} with seed {}", morning, written.seed());
              })
          .onFailure(
              e -> {
                over.tryFail(e);
                stop();
              });
    }
    if (!m.path("readOnly").asBoolean()) {
      clock.beat(
          m.path("morningClock").asLong(), m.path("rate").asDouble(1), monotonicMs.getAsLong());
    }
  }

  private void note(JsonNode parts) {
    for (JsonNode part : parts) {
      if (part.has("revision")) {
        revisions.put(part.path("key").asText(), part.path("revision").asLong());
      }
    }
  }

  /** How many reports the board has answered so far, and how many wait. For progress lines. */
  public String progress() {
    int waiting = lines.values().stream().mapToInt(Line::waiting).sum();
    return told + " told, " + waiting + " waiting, refused " + refused;
  }
}
