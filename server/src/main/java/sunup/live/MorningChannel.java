package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.forecast.Forecast;
import sunup.moves.Ideas;
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
final class MorningChannel implements Channel {
  private static final Logger LOG = LoggerFactory.getLogger(MorningChannel.class);

  /** What channels of one server share. */
  record Tools(
      Clock clock, Lane lane, Sight sight, Pool pool, Pace pace, SaidLog log, Nudges nudges) {}

  private final Owner owner;
  private final Tools tools;
  private final Map<Audience, AudienceStream> streams = new EnumMap<>(Audience.class);
  private final Figures figures;
  private final Searches searches;
  private final Keeping keeping;
  private final Asking asking;
  private final AtomicReference<Standpoint> arriving = new AtomicReference<>();
  private final Crowd crowd;
  private final Map<Screen, Resume> waiting = new LinkedHashMap<>();
  private volatile Standpoint known;
  private Object memory;
  private Foretold foretold = Foretold.NONE;
  private long renewedAt;
  private long drawnEpoch = -1;

  /** Audiences that can't be told what is known: what their screens show must not pass for live. */
  private final Set<Audience> undrawn = EnumSet.noneOf(Audience.class);

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
    this.crowd = new Crowd(owner.morning());
    for (Audience audience : Audience.values()) {
      streams.put(
          audience,
          new AudienceStream(
              owner.morning(), audience, tools.pace(), firstN.getOrDefault(audience, 0L)));
    }
    this.figures =
        new Figures(tools.sight(), tools.lane(), tools.pool(), tools.pace(), new Taker());
    this.keeping = new Keeping(tools);
    this.asking = new Asking(tools, () -> closed ? null : known);
    this.searches = new Searches(tools, this::found);
    this.lastFrameAt = tools.clock().monotonicMs() - tools.pace().frameMs();
  }

  @Override
  public MorningId morning() {
    return owner.morning();
  }

  Owner owner() {
    return owner;
  }

  @Override
  public Standpoint known() {
    return known;
  }

  @Override
  public Journaling journal() {
    Standpoint at = known;
    if (at == null) {
      return Journaling.OPENING;
    }
    if (at.readOnly()) {
      return Journaling.READ_ONLY;
    }
    boolean fresh = tools.clock().monotonicMs() - at.confirmedAt() <= tools.pace().confirmedMs();
    return fresh ? Journaling.ANSWERS : Journaling.SILENT;
  }

  @Override
  public void open() {
    unwatch = owner.watch(this::arrived);
    beatLater();
    gridLater();
  }

  @Override
  public void close() {
    closed = true;
    figures.close();
    searches.close();
    unwatch.run();
    crowd.clear();
    waiting.clear();
  }

  /** Where the next channel of this morning must begin its numbers. */
  Map<Audience, Long> nextN() {
    Map<Audience, Long> next = new EnumMap<>(Audience.class);
    streams.forEach((audience, stream) -> next.put(audience, stream.n() + 1));
    return next;
  }

  @Override
  public void join(Screen screen, Resume resume) {
    if (drawnEpoch < 0) {
      waiting.put(screen, resume);
      return;
    }
    crowd.add(screen);
    AudienceStream stream = streams.get(screen.audience());
    boolean same = resume != null && resume.morning().equals(morning());
    List<Buffer> missed = same ? stream.since(resume.epoch(), resume.n()) : null;
    if (missed == null) {
      screen.view(stream.view());
    } else {
      missed.forEach(screen::frame);
    }
    if (alive(screen.audience())) {
      screen.beat(beatOf(stream), tools.clock().monotonicMs());
    }
  }

  @Override
  public void leave(Screen screen) {
    crowd.remove(screen);
    waiting.remove(screen);
  }

  @Override
  public void view(Screen screen) {
    if (crowd.has(screen)) {
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
    asking.look(newest);
    if (before == null || newest.epoch() > before.epoch()) {
      if (foretold.of() > newest.state().seq()) {
        foretold = Foretold.NONE;
      }
      begin();
      searches.news();
      figures.want(newest.state(), tools.clock().morningMs());
    } else if (newest.state().seq() != before.state().seq()) {
      searches.news();
      figures.want(newest.state(), tools.clock().morningMs());
      changed();
    }
    if (before != null && before.readOnly() != newest.readOnly()) {
      beat();
    }
  }

  private void begin() {
    Standpoint now = known;
    Sight.Seen seen = look(now);
    if (seen == null) {
      return;
    }
    streams.forEach(
        (audience, stream) ->
            drawn(
                audience,
                () -> {
                  stream.begin(now.epoch(), seen.parts(), now.state().seq(), foretold.of());
                  return null;
                }));
    if (!undrawn.isEmpty()) {
      return;
    }
    drawnEpoch = now.epoch();
    lastFrameAt = tools.clock().monotonicMs();
    Map<Audience, Buffer> views = new EnumMap<>(Audience.class);
    streams.forEach((audience, stream) -> views.put(audience, stream.view()));
    crowd.tell(views, Screen::view);
    Map<Screen, Resume> came = new LinkedHashMap<>(waiting);
    waiting.clear();
    came.forEach((screen, resume) -> crowd.guarded(() -> join(screen, resume)));
  }

  private Sight.Seen look(Standpoint now) {
    try {
      Sight.Seen seen =
          tools.sight().see(morning(), memory, now.state(), foretold, tools.clock().morningMs());
      memory = seen.memory();
      return seen;
    } catch (RuntimeException | StackOverflowError e) {
      cantDraw(EnumSet.allOf(Audience.class), e);
      return null;
    }
  }

  /** What an audience is told, or null if nothing, or if that can't be made. */
  private Buffer drawn(Audience audience, Supplier<Buffer> making) {
    try {
      Buffer made = making.get();
      undrawn.remove(audience);
      return made;
    } catch (RuntimeException | StackOverflowError e) {
      cantDraw(EnumSet.of(audience), e);
      return null;
    }
  }

  /** What can't be drawn must not pass for live: no beat until it can. */
  private void cantDraw(Set<Audience> whom, Throwable why) {
    if (undrawn.addAll(whom)) {
      LOG.error("morning {} can't be drawn for {}; those go stale", morning(), whom, why);
    }
  }

  private final class Taker implements Figures.Taker {
    @Override
    public void take(Forecast forecast, long seq) {
      told(foretold.with(forecast, Math.min(seq, known.state().seq()), false));
      if (seq == known.state().seq()) {
        searches.figured(known.state(), forecast);
      }
    }

    @Override
    public void failed() {
      told(foretold.with(foretold.forecast(), foretold.of(), true));
    }

    private void told(Foretold newest) {
      if (!closed) {
        renewedAt = tools.clock().monotonicMs();
        foretold = newest;
        changed();
      }
    }
  }

  private void found(Ideas ideas) {
    if (!closed) {
      foretold = foretold.with(ideas);
      changed();
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
    long at = tools.clock().monotonicMs();
    Sight.Seen seen = look(now);
    if (seen == null) {
      return;
    }
    Map<Audience, Buffer> frames = new EnumMap<>(Audience.class);
    for (Map.Entry<Audience, AudienceStream> entry : streams.entrySet()) {
      AudienceStream stream = entry.getValue();
      Buffer frame =
          drawn(
              entry.getKey(),
              () -> stream.advance(seen.parts(), now.state().seq(), foretold.of(), at));
      if (frame != null) {
        frames.put(entry.getKey(), frame);
        lastFrameAt = at;
      }
    }
    crowd.tell(frames, Screen::frame);
    if (now.owned() && journal() == Journaling.ANSWERS) {
      keeping.shown(now, seen.memory(), foretold);
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
    gridLater();
    Standpoint now = known;
    if (now != null) {
      long grid = tools.pace().gridMs();
      figures.want(now.state(), tools.clock().morningMs() / grid * grid);
    }
  }

  private void beatLater() {
    tools
        .lane()
        .after(
            tools.pace().beatMs(),
            () -> {
              if (!closed) {
                beatLater();
                again();
                age();
                searches.age();
                beat();
              }
            });
  }

  /** What could not be drawn is tried again once a second. */
  private void again() {
    if (known != null && !undrawn.isEmpty()) {
      draw();
    }
  }

  /** Whatever keeps newer ones from coming: figures of long ago must not pass for today's. */
  private void age() {
    boolean aged =
        foretold.forecast() != null
            && !foretold.old()
            && tools.clock().monotonicMs() - renewedAt >= tools.pace().figuresMs();
    if (aged) {
      LOG.warn("{} got no new figures; those shown are called old", morning());
      foretold = foretold.with(foretold.forecast(), foretold.of(), true);
      changed();
    }
  }

  /**
   * Rule 2: only by the owner, and only while the journal confirms its epoch or it says that the
   * journal does not answer; never for those who could not be told what it knows.
   */
  private boolean alive(Audience audience) {
    Standpoint now = known;
    return drawnEpoch >= 0
        && drawnEpoch == now.epoch()
        && !undrawn.contains(audience)
        && now.owned()
        && (now.readOnly()
            || tools.clock().monotonicMs() - now.confirmedAt() <= tools.pace().confirmedMs());
  }

  private void beat() {
    Map<Audience, Buffer> beats = new EnumMap<>(Audience.class);
    streams.forEach(
        (audience, stream) -> {
          if (alive(audience)) {
            beats.put(audience, beatOf(stream));
          }
        });
    long madeAt = tools.clock().monotonicMs();
    crowd.tell(beats, (screen, beat) -> screen.beat(beat, madeAt));
  }

  private Buffer beatOf(AudienceStream stream) {
    Clock clock = tools.clock();
    Standpoint now = known;
    long confirmedAt = clock.realMs() - (clock.monotonicMs() - now.confirmedAt());
    return stream.beat(clock.morningMs(), clock.rate(), confirmedAt, now.readOnly());
  }
}
