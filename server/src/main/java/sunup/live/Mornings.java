package sunup.live;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Standpoint;
import sunup.wire.Audience;

/**
 * Which morning the screens of a suite see: today's, by the morning's time in the site's zone. When
 * the date changes they all get the next morning's view.
 */
public final class Mornings {
  private static final Logger LOG = LoggerFactory.getLogger(Mornings.class);

  /** Mornings whose frame numbers are remembered after their date. */
  private static final int REMEMBERED_MAX = 16;

  /** Days for which a morning takes commands after its own. */
  private static final int DAYS_BACK_MAX = 8;

  /** Days before its own on which a morning may be planned. */
  private static final int DAYS_AHEAD_MAX = 14;

  private final SuiteId suite;
  private final ZoneId zone;
  private final Owners owners;
  private final Executor blocking;
  private final MorningChannel.Tools tools;
  private final Map<Screen, MorningChannel.Resume> screens = new LinkedHashMap<>();
  private final Map<MorningId, Map<Audience, Long>> numbers = new LinkedHashMap<>();
  private volatile MorningChannel current;
  private boolean opening;
  private boolean closed;

  /**
   * @param owners asked on {@code blocking}
   * @param pool runs forecasts
   */
  public Mornings(
      SuiteId suite,
      ZoneId zone,
      Owners owners,
      Clock clock,
      Lane lane,
      Sight sight,
      Executor pool,
      Executor blocking,
      Pace pace) {
    this.suite = suite;
    this.zone = zone;
    this.owners = owners;
    this.blocking = blocking;
    this.tools = new MorningChannel.Tools(clock, lane, sight, pool, pace);
  }

  public void open() {
    tools.lane().run(this::check);
  }

  public void close() {
    tools
        .lane()
        .run(
            () -> {
              closed = true;
              if (current != null) {
                current.close();
              }
            });
  }

  /** The morning of the clock's date. */
  public MorningId today() {
    Instant now = Instant.ofEpochMilli(tools.clock().morningMs());
    return new MorningId(suite, LocalDate.ofInstant(now, zone));
  }

  /** True once today's morning has an owner that told its state. May be called from any thread. */
  public boolean ready() {
    return standpoint() != null;
  }

  /**
   * The last standpoint of the morning that screens see, or null. May be called from any thread.
   */
  public Standpoint standpoint() {
    MorningChannel channel = current;
    return channel == null ? null : channel.known();
  }

  /** The morning's time, epoch milliseconds. */
  public long nowMs() {
    return tools.clock().morningMs();
  }

  Clock clock() {
    return tools.clock();
  }

  /**
   * Finds who decides commands of a morning.
   *
   * @param morning null for the one that screens see
   * @param taker gets the owner, or null if there is none now
   */
  void owner(MorningId morning, Consumer<Owner> taker) {
    MorningChannel channel = current;
    if (channel != null && (morning == null || morning.equals(channel.morning()))) {
      taker.accept(channel.owner());
      return;
    }
    if (morning == null || !takes(morning)) {
      taker.accept(null);
      return;
    }
    try {
      blocking.execute(() -> taker.accept(ask(morning)));
    } catch (RejectedExecutionException full) {
      taker.accept(null);
    }
  }

  void join(Screen screen, MorningId resumed, Long epoch, Long n) {
    tools
        .lane()
        .run(
            () -> {
              MorningChannel.Resume resume =
                  resumed == null || epoch == null || n == null
                      ? null
                      : new MorningChannel.Resume(resumed, epoch, n);
              screens.put(screen, resume);
              if (current != null) {
                current.join(screen, resume);
              }
            });
  }

  void leave(Screen screen) {
    tools
        .lane()
        .run(
            () -> {
              screens.remove(screen);
              if (current != null) {
                current.leave(screen);
              }
            });
  }

  void view(Screen screen) {
    tools
        .lane()
        .run(
            () -> {
              if (current != null) {
                current.view(screen);
              }
            });
  }

  /** True for a morning of this suite that is near enough to take commands at all. */
  public boolean takes(MorningId morning) {
    long days = ChronoUnit.DAYS.between(morning.date(), today().date());
    return morning.suite().equals(suite) && days <= DAYS_BACK_MAX && days >= -DAYS_AHEAD_MAX;
  }

  private Owner ask(MorningId morning) {
    try {
      return owners.owner(morning);
    } catch (RuntimeException e) {
      LOG.warn("no owner for {} now: {}", morning, e.toString());
      return null;
    }
  }

  private void check() {
    if (closed) {
      return;
    }
    tools.lane().after(tools.pace().beatMs(), this::check);
    MorningId today = today();
    if (!opening && (current == null || !current.morning().equals(today))) {
      opening = true;
      try {
        blocking.execute(
            () -> {
              Owner owner = ask(today);
              tools.lane().run(() -> asked(owner));
            });
      } catch (RejectedExecutionException full) {
        opening = false;
      }
    }
  }

  private void asked(Owner owner) {
    opening = false;
    if (owner == null || closed) {
      return;
    }
    MorningChannel last = current;
    if (last != null) {
      numbers.put(last.morning(), last.close());
      if (numbers.size() > REMEMBERED_MAX) {
        numbers.remove(numbers.keySet().iterator().next());
      }
    }
    MorningChannel next =
        new MorningChannel(owner, tools, numbers.getOrDefault(owner.morning(), Map.of()));
    try {
      next.open();
    } catch (IllegalStateException full) {
      // Nobody may watch it now: tried again at the next check, and the screens go stale.
      LOG.error("{} can't be shown now: {}", owner.morning(), full.getMessage());
      next.close();
      current = null;
      return;
    }
    current = next;
    // A screen that said hello before there was an owner may still resume; the others start anew.
    screens.forEach((screen, resume) -> next.join(screen, last == null ? resume : null));
  }
}
