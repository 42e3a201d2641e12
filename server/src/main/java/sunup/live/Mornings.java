package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.access.Page;
import sunup.board.Actor;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Standpoint;
import sunup.suites.Submission;
import sunup.wire.Audience;

/**
 * Which morning the screens of a suite see: the one that is on, which is that of today's date by
 * the morning's time in the site's zone. When the date changes they all get the next morning's
 * view. A desk may choose another date: the draft of tomorrow is worked on while today's morning
 * runs.
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
  private final Map<Screen, Seat> screens = new LinkedHashMap<>();

  /** Changed in the lane only; of each morning that a screen sees, and of the one that is on. */
  private final Map<MorningId, Shown> shown = new ConcurrentHashMap<>();

  /** When another node last asked for a morning that is owned here. */
  private final Map<MorningId, Long> followed = new HashMap<>();

  private final Followers followers = new Followers();

  private final Set<MorningId> opening = new HashSet<>();
  private final Map<MorningId, Map<Audience, Long>> numbers = new LinkedHashMap<>();

  /** Of the morning that is on; of the last one until the next has an owner. */
  private volatile Shown current;

  private boolean closed;

  /** What a screen wants to see, and what it sees. */
  private static final class Seat {
    final MorningId chosen;
    Channel.Resume resume;
    Channel at;

    /**
     * @param chosen null for the morning that is on
     */
    Seat(MorningId chosen, Channel.Resume resume) {
      this.chosen = chosen;
      this.resume = resume;
    }
  }

  /**
   * @param owners asked on {@code blocking}
   * @param pool runs forecasts
   * @param log keeps what was said
   * @param nudges tells people who look at no screen
   */
  public Mornings(
      SuiteId suite,
      ZoneId zone,
      Owners owners,
      Clock clock,
      Lane lane,
      Sight sight,
      Pool pool,
      Executor blocking,
      Pace pace,
      SaidLog log,
      Nudges nudges) {
    this.suite = suite;
    this.zone = zone;
    this.owners = owners;
    this.blocking = blocking;
    this.tools = new MorningChannel.Tools(clock, lane, sight, pool, pace, log, nudges);
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
              shown.values().forEach(Shown::close);
            });
  }

  public SuiteId suite() {
    return suite;
  }

  /** The morning of the clock's date. */
  public MorningId today() {
    Instant now = Instant.ofEpochMilli(tools.clock().morningMs());
    return new MorningId(suite, LocalDate.ofInstant(now, zone));
  }

  /** The last standpoint of the morning that is on, or null. May be called from any thread. */
  public Standpoint standpoint() {
    return standpoint(null);
  }

  /**
   * The last standpoint of this morning if any screen sees it, else of the one that is on; or null.
   */
  Standpoint standpoint(MorningId morning) {
    Shown one = morning == null ? null : shown.get(morning);
    one = one == null ? current : one;
    Channel channel = one == null ? null : one.channel();
    return channel == null ? null : channel.known();
  }

  /** Judges by the owner's state in which role a command is given. */
  public static Submission judged(Submission given, Morning state) {
    Actor as = given.actor();
    return given.page() == null
        ? given
        : Page.named(given.page())
            .map(page -> given.by(page.actor(as.screen(), as.person(), state)))
            .orElse(given);
  }

  /** How the journal of the morning that is on stands, in a word. From any thread. */
  public String journal() {
    return journaling().name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** True while screens here are told what is. May be called from any thread. */
  public boolean tells() {
    return journaling() == Channel.Journaling.ANSWERS;
  }

  private Channel.Journaling journaling() {
    Shown one = current;
    Channel channel = one == null ? null : one.channel();
    return channel == null ? Channel.Journaling.OPENING : channel.journal();
  }

  /**
   * Another node wants to be told what screens are told of a morning that is owned here. Nothing is
   * told if it is not: it asks again. From any thread.
   *
   * @param views whether it wants everything anew
   */
  public void follow(MorningId morning, String node, Feed feed, boolean views) {
    tools
        .lane()
        .run(
            () -> {
              long now = tools.clock().monotonicMs();
              if (takes(morning)) {
                followed.put(morning, now);
                openAndClose();
              }
              Shown one = shown.get(morning);
              if (one != null && one.channel() instanceof MorningChannel mine) {
                followers.follow(mine, node, feed, views, now);
              }
            });
  }

  /**
   * What another node told this one of a morning that it owns. From any thread.
   *
   * @param fresh whether a heartbeat still proves life; asked at the last moment, since this node
   *     may have stood still with the message in its hands
   */
  public void told(
      MorningId morning,
      String node,
      Audience audience,
      Feed.Kind kind,
      Buffer message,
      BooleanSupplier fresh) {
    tools
        .lane()
        .run(
            () -> {
              Shown one = shown.get(morning);
              if (one != null
                  && one.channel() instanceof RelayChannel relay
                  && relay.line().node().equals(node)
                  && (kind != Feed.Kind.BEAT || fresh.getAsBoolean())) {
                relay.told(audience, kind, message);
              }
            });
  }

  /** The morning's time, epoch milliseconds. */
  public long nowMs() {
    return tools.clock().morningMs();
  }

  Pace pace() {
    return tools.pace();
  }

  /**
   * Finds who decides commands of a morning.
   *
   * @param morning null for the one that is on
   * @param taker gets the owner, or null if there is none now
   */
  void owner(MorningId morning, Consumer<Owner> taker) {
    Shown one = morning == null ? current : shown.get(morning);
    if (one != null) {
      taker.accept(one.owner());
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

  /**
   * @param chosen the morning that the screen wants to see whatever the date, or null for the one
   *     that is on
   */
  void join(Screen screen, MorningId chosen, MorningId resumed, Long epoch, Long n) {
    tools
        .lane()
        .run(
            () -> {
              Channel.Resume resume =
                  resumed == null || epoch == null || n == null
                      ? null
                      : new Channel.Resume(resumed, epoch, n);
              Seat seat = new Seat(chosen, resume);
              screens.put(screen, seat);
              take(screen, seat);
              openAndClose();
            });
  }

  void leave(Screen screen) {
    tools
        .lane()
        .run(
            () -> {
              Seat seat = screens.remove(screen);
              if (seat != null && seat.at != null) {
                seat.at.leave(screen);
              }
            });
  }

  void view(Screen screen) {
    tools
        .lane()
        .run(
            () -> {
              Seat seat = screens.get(screen);
              if (seat != null && seat.at != null) {
                seat.at.view(screen);
              }
            });
  }

  /** The morning of a date of this suite. */
  MorningId on(LocalDate date) {
    return new MorningId(suite, date);
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
    long now = tools.clock().monotonicMs();
    followers.sweep(now);
    followed.values().removeIf(at -> now - at > Followers.LEASE_MS);
    shown.values().forEach(Shown::again);
    openAndClose();
  }

  /** Each morning that somebody wants to see is shown, and no other. */
  private void openAndClose() {
    if (closed) {
      return;
    }
    Set<MorningId> wanted = new LinkedHashSet<>();
    wanted.add(today());
    wanted.addAll(followed.keySet());
    for (Seat seat : screens.values()) {
      if (seat.chosen != null) {
        wanted.add(seat.chosen);
      }
    }
    Shown on = shown.get(today());
    if (on != null && on != current) {
      // Also if a desk had chosen it before its date came.
      current = on;
      screens.forEach(this::take);
    }
    for (MorningId morning : wanted) {
      if (!shown.containsKey(morning) && opening.add(morning)) {
        open(morning);
      }
    }
    for (Shown one : List.copyOf(shown.values())) {
      if (!wanted.contains(one.morning()) && one != current) {
        shown.remove(one.morning());
        numbers.put(one.morning(), one.close());
      }
    }
    while (numbers.size() > REMEMBERED_MAX) {
      numbers.remove(numbers.keySet().iterator().next());
    }
  }

  private void open(MorningId morning) {
    try {
      blocking.execute(
          () -> {
            Owner owner = ask(morning);
            tools.lane().run(() -> asked(morning, owner));
          });
    } catch (RejectedExecutionException full) {
      opening.remove(morning);
    }
  }

  private void asked(MorningId morning, Owner owner) {
    opening.remove(morning);
    if (owner == null || closed) {
      return;
    }
    Map<Audience, Long> firstN = numbers.getOrDefault(morning, Map.of());
    Shown one = new Shown(owner, tools, firstN, () -> screens.forEach(this::take));
    shown.put(morning, one);
    one.open(owners);
    openAndClose();
  }

  /** Sees to it that a screen sees what it wants, if that can be seen. */
  private void take(Screen screen, Seat seat) {
    Shown one = seat.chosen == null ? current : shown.get(seat.chosen);
    Channel next = one == null ? null : one.channel();
    if (next == seat.at) {
      return;
    }
    if (seat.at != null) {
      seat.at.leave(screen);
    }
    seat.at = next;
    if (next != null) {
      // A screen that said hello before there was an owner may still resume; later it starts anew.
      next.join(screen, seat.resume);
      seat.resume = null;
    }
  }
}
