package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.LinkedHashMap;
import java.util.Map;
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

  private static final long VIEW_WAIT_MS = 3_000;
  private static final int LOWER_BEATS_TO_FORGET = 15;

  /** Told of a heartbeat that proved life. */
  public interface Judge {
    void alive(PageScreen screen, ServerMessage.Beat beat);
  }

  private final String name;
  private final Audience audience;
  private final Lane outside;
  private final LongSupplier now;
  private final LongSupplier way;
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
  private long askedAt = Long.MIN_VALUE / 2;
  private boolean readOnly;

  /**
   * @param outside where it lives
   * @param now simulated milliseconds
   * @param way how long the next message to or from it takes
   */
  public PageScreen(
      String name,
      Audience audience,
      Lane outside,
      LongSupplier now,
      LongSupplier way,
      Judge judge) {
    this.name = name;
    this.audience = audience;
    this.outside = outside;
    this.now = now;
    this.way = way;
    this.judge = judge;
  }

  /** Says hello to a node, resuming if it has something. */
  public void connect(Mornings to) {
    close();
    Socket made = new Socket(to);
    socket = made;
    heardAt = now.getAsLong();
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
      carry(message);
    }

    @Override
    public void frame(Buffer message) {
      carry(message);
    }

    @Override
    public void beat(Buffer message) {
      carry(message);
    }

    private void carry(Buffer message) {
      lastArrival = Math.max(lastArrival, now.getAsLong() + way.getAsLong());
      Runnable unused = outside.after(lastArrival - now.getAsLong(), () -> arrived(this, message));
    }
  }

  private void arrived(Socket by, Buffer message) {
    if (by != socket) {
      return;
    }
    heardAt = now.getAsLong();
    try {
      ServerMessage read = Json.read(message.getBytes(), ServerMessage.class);
      if (read instanceof ServerMessage.View view) {
        view(view);
      } else if (read instanceof ServerMessage.Frame frame) {
        frame(frame);
      } else if (read instanceof ServerMessage.Beat beat) {
        beat(beat);
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

  private void beat(ServerMessage.Beat beat) {
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
    } else if (beat.n() == n) {
      upTo = Math.max(upTo, beat.upTo());
      aliveAt = now.getAsLong();
      readOnly = beat.readOnly();
      judge.alive(this, beat);
    }
  }

  private void ask() {
    long at = now.getAsLong();
    Socket by = socket;
    if (at - askedAt >= VIEW_WAIT_MS) {
      askedAt = at;
      Runnable unused = outside.after(way.getAsLong(), () -> by.to.view(by));
    }
  }
}
