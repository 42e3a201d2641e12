package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import sunup.board.MorningId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.wire.Audience;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/**
 * A screen that follows rule 2 as the pages do: keeps the parts, drops lower epochs, asks when it
 * finds a gap, and takes a heartbeat for a proof of life only if it speaks of the very frame that
 * is shown.
 */
public final class PageScreen {
  /** As in the pages. */
  public static final long STALE_MS = 5_000;

  /** As in the pages: a heartbeat after the answer to an older tick may have lain on the line. */
  public static final long ECHO_MS = 2_000;

  private static final long TICK_MS = 1_000;

  private static final long VIEW_WAIT_MS = 3_000;
  private static final int LOWER_BEATS_TO_FORGET = 15;

  /** Told of a heartbeat that proved life, and when the node sent it. */
  public interface Judge {
    void alive(PageScreen screen, ServerMessage.Beat beat, long sentAt);
  }

  /** Between it and its node. */
  public interface Line {
    /** How long the next message takes. */
    long way();

    /** How long the next tick or its answer takes. */
    long echoWay();

    /** True for a planted mistake: what lay on the line proves as much. */
    boolean trusted();
  }

  private final String name;
  private final Audience audience;
  private final Lane outside;
  private final LongSupplier now;
  private final Line line;
  private final Judge judge;
  private final Map<String, Part> parts = new LinkedHashMap<>();
  private Socket socket;
  private MorningId morning;
  private long epoch = -1;
  private long n;
  private long upTo;
  private int lowerBeats;
  private long aliveAt = Long.MIN_VALUE / 2;
  private long heardAt;
  private long echoAt;
  private long askedAt = Long.MIN_VALUE / 2;
  private boolean readOnly;

  /**
   * @param outside where it lives
   * @param now simulated milliseconds
   */
  public PageScreen(
      String name, Audience audience, Lane outside, LongSupplier now, Line line, Judge judge) {
    this.name = name;
    this.audience = audience;
    this.outside = outside;
    this.now = now;
    this.line = line;
    this.judge = judge;
  }

  /**
   * Says hello to a node, resuming if it has something.
   *
   * @param there where the node reads its sockets
   */
  public void connect(Mornings to, Consumer<Runnable> there) {
    close();
    Socket made = new Socket(to);
    socket = made;
    heardAt = now.getAsLong();
    echoAt = heardAt;
    tick(made, there);
    askedAt = Long.MIN_VALUE / 2;
    if (morning == null) {
      to.join(made, null, null, null, null);
    } else {
      to.join(made, null, morning, epoch, n);
    }
  }

  /** Its socket ends. */
  public void close() {
    if (socket != null) {
      socket.to.leave(socket);
      socket = null;
    }
  }

  public boolean connected() {
    return socket != null;
  }

  /** Once a second; the answer comes in turn with all that the node sends. */
  private void tick(Socket by, Consumer<Runnable> there) {
    if (by == socket) {
      long sentAt = now.getAsLong();
      Runnable answer =
          () -> by.carry(Json.bytes(new ServerMessage.Tock(sentAt, 0, 1)), line.echoWay());
      Runnable unused = outside.after(line.echoWay(), () -> there.accept(answer));
      Runnable unusedNext = outside.after(TICK_MS, () -> tick(by, there));
    }
  }

  /** When anything was last heard. */
  public long heardAt() {
    return heardAt;
  }

  /** What the page shows as live and taking commands. */
  public boolean live() {
    return !readOnly && now.getAsLong() - aliveAt < STALE_MS;
  }

  public Map<String, Part> parts() {
    return parts;
  }

  public Audience audience() {
    return audience;
  }

  @Override
  public String toString() {
    return name;
  }

  private final class Socket implements Screen {
    private final Mornings to;
    private long lastArrival;

    Socket(Mornings to) {
      this.to = to;
    }

    @Override
    public Audience audience() {
      return audience;
    }

    @Override
    public void view(Buffer message) {
      carry(message.getBytes(), line.way());
    }

    @Override
    public void frame(Buffer message) {
      carry(message.getBytes(), line.way());
    }

    @Override
    public void beat(Buffer message, long madeAt) {
      carry(message.getBytes(), line.way());
    }

    private void carry(byte[] message, long way) {
      long sentAt = now.getAsLong();
      lastArrival = Math.max(lastArrival, sentAt + way);
      Runnable unused = outside.after(lastArrival - sentAt, () -> arrived(this, message, sentAt));
    }
  }

  private void arrived(Socket by, byte[] message, long sentAt) {
    if (by != socket) {
      return;
    }
    heardAt = now.getAsLong();
    try {
      ServerMessage read = Json.read(message, ServerMessage.class);
      if (read instanceof ServerMessage.View view) {
        view(view);
      } else if (read instanceof ServerMessage.Frame frame) {
        frame(frame);
      } else if (read instanceof ServerMessage.Beat beat) {
        beat(beat, sentAt);
      } else if (read instanceof ServerMessage.Tock tock) {
        echoAt = Math.max(echoAt, tock.sentAt());
      }
    } catch (BadJson e) {
      throw new IllegalStateException(e);
    }
  }

  private void view(ServerMessage.View view) {
    if (view.epoch() < epoch || (view.epoch() == epoch && view.n() < n)) {
      return;
    }
    parts.clear();
    view.parts().forEach(part -> parts.put(part.key(), part));
    askedAt = Long.MIN_VALUE / 2;
    move(view.morning(), view.epoch(), view.n(), view.upTo());
  }

  private void frame(ServerMessage.Frame frame) {
    if (frame.epoch() < epoch || (frame.epoch() == epoch && frame.n() <= n)) {
      return;
    }
    if (frame.epoch() != epoch || frame.n() != n + 1) {
      ask();
      return;
    }
    frame.set().forEach(part -> parts.put(part.key(), part));
    frame.gone().forEach(parts::remove);
    move(frame.morning(), epoch, frame.n(), frame.upTo());
  }

  private void move(MorningId of, long toEpoch, long toN, long toUpTo) {
    morning = of;
    epoch = toEpoch;
    n = toN;
    upTo = toUpTo;
    lowerBeats = 0;
  }

  private void beat(ServerMessage.Beat beat, long sentAt) {
    if (beat.epoch() < epoch) {
      lowerBeats++;
      if (lowerBeats >= LOWER_BEATS_TO_FORGET) {
        throw new IllegalStateException(name + " took the board's journal for another one");
      }
      return;
    }
    lowerBeats = 0;
    if (beat.epoch() > epoch || beat.n() > n) {
      ask();
    } else if (beat.n() == n && (line.trusted() || now.getAsLong() - echoAt <= ECHO_MS)) {
      upTo = Math.max(upTo, beat.upTo());
      aliveAt = now.getAsLong();
      readOnly = beat.readOnly();
      judge.alive(this, beat, sentAt);
    }
  }

  private void ask() {
    long at = now.getAsLong();
    Socket by = socket;
    if (at - askedAt >= VIEW_WAIT_MS) {
      askedAt = at;
      Runnable unused = outside.after(line.way(), () -> by.to.view(by));
    }
  }
}
