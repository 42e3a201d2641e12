package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.suites.Clock;
import sunup.suites.Standpoint;
import sunup.wire.Audience;

/**
 * The screens of this node for a morning that another node owns: passes on what comes from there,
 * each message as one shared buffer. Makes no frame and no heartbeat of its own.
 */
final class RelayChannel implements Channel {
  private static final long SOON_MS = 200;

  private final MorningId morning;
  private final Line line;
  private final Clock clock;
  private final Lane lane;
  private final Pace pace;
  private final Map<Audience, RelayStream> streams = new EnumMap<>(Audience.class);
  private final Crowd crowd;
  private final Map<Screen, Resume> waiting = new LinkedHashMap<>();
  private volatile long beatAt = Long.MIN_VALUE;
  private volatile boolean readOnly;
  private boolean viewsWanted = true;
  private boolean closed;

  RelayChannel(MorningId morning, Line line, Clock clock, Lane lane, Pace pace) {
    this.morning = morning;
    this.line = line;
    this.clock = clock;
    this.lane = lane;
    this.pace = pace;
    this.crowd = new Crowd(morning);
    for (Audience audience : Audience.values()) {
      streams.put(audience, new RelayStream(pace));
    }
  }

  Line line() {
    return line;
  }

  @Override
  public MorningId morning() {
    return morning;
  }

  @Override
  public void open() {
    ask();
  }

  /** Says once a second that it goes on listening; sooner while the owner has not begun to tell. */
  private void ask() {
    if (!closed) {
      line.follow(viewsWanted);
      lane.after(beatAt == Long.MIN_VALUE ? SOON_MS : pace.beatMs(), this::ask);
    }
  }

  /** Asks at once for what was lost; at most once until it comes or a second has passed. */
  private void askViews() {
    if (!viewsWanted) {
      viewsWanted = true;
      line.follow(true);
    }
  }

  @Override
  public void close() {
    closed = true;
    crowd.clear();
    waiting.clear();
  }

  @Override
  public void join(Screen screen, Resume resume) {
    RelayStream stream = streams.get(screen.audience());
    boolean same = resume != null && resume.morning().equals(morning);
    List<Buffer> missed = same ? stream.since(resume.epoch(), resume.n()) : null;
    if (missed != null) {
      crowd.add(screen);
      missed.forEach(screen::frame);
      return;
    }
    if (stream.empty()) {
      waiting.put(screen, resume);
      return;
    }
    crowd.add(screen);
    view(screen);
  }

  @Override
  public void leave(Screen screen) {
    crowd.remove(screen);
    waiting.remove(screen);
  }

  @Override
  public void view(Screen screen) {
    List<Buffer> all = streams.get(screen.audience()).all();
    if (all == null) {
      crowd.remove(screen);
      waiting.put(screen, null);
      askViews();
      return;
    }
    screen.view(all.get(0));
    all.subList(1, all.size()).forEach(screen::frame);
  }

  /** What the owner's node told this one. */
  void told(Audience audience, Feed.Kind kind, Buffer message) {
    if (closed) {
      return;
    }
    RelayStream stream = streams.get(audience);
    RelayStream.Head head = RelayStream.head(message);
    switch (kind) {
      case VIEW -> {
        viewsWanted = false;
        if (stream.takeView(head, message)) {
          crowd.tell(Map.of(audience, message), Screen::view);
        }
        admit(audience);
      }
      case FRAME -> {
        if (stream.takeFrame(head, message, clock.monotonicMs())) {
          crowd.tell(Map.of(audience, message), Screen::frame);
          if (stream.grown()) {
            askViews();
          }
        } else if (head.epoch() > stream.epoch() || head.n() > stream.n()) {
          askViews();
        }
      }
      case BEAT -> {
        if (stream.empty() || head.epoch() != stream.epoch() || head.n() > stream.n()) {
          askViews();
        } else {
          beatAt = clock.monotonicMs();
          readOnly = head.readOnly();
          long madeAt = beatAt;
          crowd.tell(Map.of(audience, message), (screen, beat) -> screen.beat(beat, madeAt));
        }
      }
    }
  }

  /** Screens that came before there was a view. */
  private void admit(Audience audience) {
    Map<Screen, Resume> came = new LinkedHashMap<>(waiting);
    came.forEach(
        (screen, resume) -> {
          if (screen.audience() == audience) {
            waiting.remove(screen);
            join(screen, resume);
          }
        });
  }

  @Override
  public Standpoint known() {
    return null;
  }

  @Override
  public Journaling journal() {
    if (beatAt == Long.MIN_VALUE) {
      return Journaling.OPENING;
    }
    if (clock.monotonicMs() - beatAt > pace.confirmedMs() + pace.beatMs()) {
      return Journaling.SILENT;
    }
    return readOnly ? Journaling.READ_ONLY : Journaling.ANSWERS;
  }
}
