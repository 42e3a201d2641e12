package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.forecast.Forecast;
import sunup.outlook.Foretold;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Standpoint;
import sunup.wire.Audience;

/**
 * Makes what the screens of one morning get, by rule 2: watches the owner, keeps the figures,
 * draws, and sends each audience what changed for it in one shared buffer. All of it happens in the
 * lane.
 */
final class MorningChannel {
  private static final Logger LOG = LoggerFactory.getLogger(MorningChannel.class);

  /** Where a screen was when it lost its socket. */
  record Resume(MorningId morning, long epoch, long n) {}

  /** What channels of one server share. */
  record Tools(Clock clock, Lane lane, Sight sight, Executor pool, Pace pace) {}

  private final Owner owner;
  private final Tools tools;
  private final Map<Audience, AudienceStream> streams = new EnumMap<>(Audience.class);
  private final Figures figures;
  private final AtomicReference<Standpoint> arriving = new AtomicReference<>();
  private final Set<Screen> screens = new LinkedHashSet<>();
  private final Map<Screen, Resume> waiting = new LinkedHashMap<>();
  private volatile Standpoint known;
  private Object memory;
  private Foretold foretold = Foretold.NONE;
  private long drawnEpoch = -1;
  private boolean broken;
  private boolean closed;
  private boolean flushPending;
  private long lastFrameAt;
  private Runnable unwatch = () -> {};

  /**
   * @param firstN where frame numbers begin, by audience: past those of an earlier channel of this
   *     morning in this process
   */
  MorningChannel(Owner owner, Tools tools, Map<Audience, Long> firstN) {
    this.owner = owner;
    this.tools = tools;
    for (Audience audience : Audience.values()) {
      streams.put(
          audience,
          new AudienceStream(
              owner.morning(), audience, tools.pace(), firstN.getOrDefault(audience, 0L)));
    }
    this.figures =
        new Figures(tools.sight(), tools.lane(), tools.pool(), tools.pace(), new Taker());
    this.lastFrameAt = tools.clock().monotonicMs() - tools.pace().frameMs();
  }

  MorningId morning() {
    return owner.morning();
  }

  Owner owner() {
    return owner;
  }

  /** The last standpoint taken, or null before the first. May be called from any thread. */
  Standpoint known() {
    return known;
  }

  void open() {
    unwatch = owner.watch(this::arrived);
    beatLater();
    gridLater();
  }

  /**
   * @return where the next channel of this morning must begin its numbers
   */
  Map<Audience, Long> close() {
    closed = true;
    figures.close();
    unwatch.run();
    screens.clear();
    waiting.clear();
    Map<Audience, Long> next = new EnumMap<>(Audience.class);
    streams.forEach((audience, stream) -> next.put(audience, stream.n() + 1));
    return next;
  }

  /**
   * Sends the screen a view, or the frames that it missed, and from then on all frames.
   *
   * @param resume null for a screen that has nothing yet
   */
  void join(Screen screen, Resume resume) {
    if (drawnEpoch < 0) {
      waiting.put(screen, resume);
      return;
    }
    screens.add(screen);
    AudienceStream stream = streams.get(screen.audience());
    boolean same = resume != null && resume.morning().equals(morning());
    List<Buffer> missed = same ? stream.since(resume.epoch(), resume.n()) : null;
    if (missed == null) {
      screen.view(stream.view());
    } else {
      missed.forEach(screen::frame);
    }
    if (alive()) {
      screen.beat(beatOf(stream));
    }
  }

  void leave(Screen screen) {
    screens.remove(screen);
    waiting.remove(screen);
  }

  /** Sends the screen everything anew. */
  void view(Screen screen) {
    if (screens.contains(screen)) {
      screen.view(streams.get(screen.audience()).view());
    }
  }

  /** Any thread; only the newest standpoint is taken, a standpoint being the whole state. */
  private void arrived(Standpoint standpoint) {
    if (arriving.getAndSet(standpoint) == null) {
      tools.lane().run(this::take);
    }
  }

  private void take() {
    Standpoint newest = arriving.getAndSet(null);
    Standpoint before = known;
    if (closed || (before != null && newest.epoch() < before.epoch())) {
      return;
    }
    known = newest;
    if (before == null || newest.epoch() > before.epoch()) {
      begin();
    } else if (newest.state().seq() != before.state().seq()) {
      figures.want(newest.state(), tools.clock().morningMs());
      changed();
    }
    if (before != null && before.readOnly() != newest.readOnly()) {
      beat();
    }
  }

  private void begin() {
    Standpoint now = known;
    if (foretold.of() > now.state().seq()) {
      foretold = Foretold.NONE;
    }
    Sight.Seen seen = look(now);
    figures.want(now.state(), tools.clock().morningMs());
    if (seen == null) {
      return;
    }
    for (AudienceStream stream : streams.values()) {
      stream.begin(now.epoch(), seen.parts(), now.state().seq(), foretold.of());
    }
    drawnEpoch = now.epoch();
    lastFrameAt = tools.clock().monotonicMs();
    for (Screen screen : screens) {
      screen.view(streams.get(screen.audience()).view());
    }
    Map<Screen, Resume> came = new LinkedHashMap<>(waiting);
    waiting.clear();
    came.forEach(this::join);
  }

  private Sight.Seen look(Standpoint now) {
    try {
      Sight.Seen seen =
          tools.sight().see(morning(), memory, now.state(), foretold, tools.clock().morningMs());
      memory = seen.memory();
      broken = false;
      return seen;
    } catch (RuntimeException e) {
      // What can't be drawn must not pass for live: no beat until it can.
      broken = true;
      LOG.error("morning {} can't be drawn; its screens go stale", morning(), e);
      return null;
    }
  }

  private final class Taker implements Figures.Taker {
    @Override
    public void take(Forecast forecast, long seq) {
      told(new Foretold(forecast, Math.min(seq, known.state().seq()), false));
    }

    @Override
    public void failed() {
      told(new Foretold(foretold.forecast(), foretold.of(), true));
    }

    private void told(Foretold newest) {
      if (!closed) {
        foretold = newest;
        changed();
      }
    }
  }

  /** The first change goes at once, then at most one frame in {@link Pace#frameMs}. */
  private void changed() {
    if (flushPending) {
      return;
    }
    long since = tools.clock().monotonicMs() - lastFrameAt;
    if (since >= tools.pace().frameMs()) {
      draw();
    } else {
      flushPending = true;
      tools
          .lane()
          .after(
              tools.pace().frameMs() - since,
              () -> {
                flushPending = false;
                draw();
              });
    }
  }

  private void draw() {
    if (closed) {
      return;
    }
    Standpoint now = known;
    if (drawnEpoch != now.epoch()) {
      begin();
      return;
    }
    Sight.Seen seen = look(now);
    if (seen == null) {
      return;
    }
    long at = tools.clock().monotonicMs();
    Map<Audience, Buffer> frames = new EnumMap<>(Audience.class);
    for (Map.Entry<Audience, AudienceStream> entry : streams.entrySet()) {
      Buffer frame = entry.getValue().advance(seen.parts(), now.state().seq(), foretold.of(), at);
      if (frame != null) {
        frames.put(entry.getKey(), frame);
        lastFrameAt = at;
      }
    }
    for (Screen screen : screens) {
      Buffer frame = frames.get(screen.audience());
      if (frame != null) {
        screen.frame(frame);
      }
    }
  }

  private void gridLater() {
    long grid = tools.pace().gridMs();
    long untilNext = grid - Math.floorMod(tools.clock().morningMs(), grid);
    double rate = tools.clock().rate();
    long realMs = rate > 0 ? (long) Math.ceil(untilNext / rate) : grid;
    long delay = Math.min(grid, Math.max(tools.pace().gridRealMsMin(), realMs));
    tools.lane().after(delay, this::grid);
  }

  private void grid() {
    if (closed) {
      return;
    }
    Standpoint now = known;
    if (now != null) {
      long grid = tools.pace().gridMs();
      figures.want(now.state(), tools.clock().morningMs() / grid * grid);
    }
    gridLater();
  }

  private void beatLater() {
    tools
        .lane()
        .after(
            tools.pace().beatMs(),
            () -> {
              if (!closed) {
                beat();
                beatLater();
              }
            });
  }

  /** Rule 2: only while the journal confirms the epoch, or saying that it does not answer. */
  private boolean alive() {
    Standpoint now = known;
    return drawnEpoch >= 0
        && !broken
        && (now.readOnly()
            || tools.clock().monotonicMs() - now.confirmedAt() <= tools.pace().confirmedMs());
  }

  private void beat() {
    if (!alive()) {
      return;
    }
    Map<Audience, Buffer> beats = new EnumMap<>(Audience.class);
    streams.forEach((audience, stream) -> beats.put(audience, beatOf(stream)));
    for (Screen screen : screens) {
      screen.beat(beats.get(screen.audience()));
    }
  }

  private Buffer beatOf(AudienceStream stream) {
    Clock clock = tools.clock();
    Standpoint now = known;
    long confirmedAt = clock.realMs() - (clock.monotonicMs() - now.confirmedAt());
    return stream.beat(clock.morningMs(), clock.rate(), confirmedAt, now.readOnly());
  }
}
