package sunup.suites;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.RefusalCode;
import sunup.journal.Appended;
import sunup.journal.Head;

/**
 * The one writer of a morning. Decides on a state that runs ahead, and answers and tells only what
 * the journal has made durable. Whatever goes wrong with an append, it throws the state away, takes
 * a new epoch, reads the journal again and goes on from there; commands whose outcome nobody knew
 * then meet their receipts.
 */
final class SuiteActor implements Owner {
  /** Commands that wait or are under way; beyond it a command is answered {@code Later}. */
  static final int INBOX_LIMIT = 1_024;

  /** Commands written and not yet durable; the others wait in the inbox. */
  static final int IN_FLIGHT_LIMIT = 128;

  /** Without a confirmed epoch, or with an append unanswered, for so long: read-only. */
  static final long CONFIRM_LIMIT_MS = 2_000;

  /** Between two tries to reach a journal that is away. */
  static final long RETRY_MS = 1_000;

  /** How long an owner that was fenced leaves the morning to the other one. */
  static final long HOLD_OFF_MS = 3_000;

  /** After a write failed for sure, commands go one by one until one is durable, or so long. */
  static final long SUSPECT_MS = 5_000;

  private static final Logger LOG = LoggerFactory.getLogger(SuiteActor.class);
  private static final String AWAY = "The journal does not answer. It is kept and sent again.";
  private static final String FENCED = "Another node has this morning now. Send it again.";
  private static final String BUSY = "The board has more to do than it can. Send it again.";
  private static final String ENDING = "The board is being shut down. Send it again.";

  private enum Stage {
    STARTING,
    OPEN,
    RECOVERING,
    FENCED,
    REFUSED,
    CLOSED
  }

  private final MorningId morning;
  private final Means means;
  private final Opening opening;
  private final AtomicInteger waiting = new AtomicInteger();
  private final Deque<Pending> parked = new ArrayDeque<>();
  private final Deque<InFlight> inFlight = new ArrayDeque<>();
  private final List<Pending> held = new ArrayList<>();
  private final Watchers watchers;
  private Stage stage = Stage.STARTING;
  private Decisions decisions;
  private Morning state;
  private Head head = Head.NONE;
  private long confirmedAt;
  private boolean away;
  private boolean stale;
  private long suspectUntil;
  private Runnable whenStill;
  private volatile String trouble;
  private volatile boolean ended;

  SuiteActor(MorningId morning, Means means, Opening opening) {
    this.morning = morning;
    this.means = means;
    this.opening = opening;
    this.watchers = new Watchers(morning);
  }

  private record Pending(Submission submission, Consumer<Reply> answer) {}

  private static final class InFlight {
    final Pending pending;
    final Decisions.Attempt attempt;
    final long since;
    final List<Pending> same = new ArrayList<>();

    InFlight(Pending pending, Decisions.Attempt attempt, long since) {
      this.pending = pending;
      this.attempt = attempt;
      this.since = since;
    }
  }

  @Override
  public MorningId morning() {
    return morning;
  }

  /** Begins to take the morning over. */
  void start() {
    means.executor().execute(this::open);
  }

  /** Why the morning can't be owned at all, or null. From any thread. */
  String trouble() {
    return trouble;
  }

  @Override
  public void submit(Submission submission, Consumer<Reply> answer) {
    if (ended) {
      answer.accept(new Reply.Later(ENDING));
      return;
    }
    if (waiting.incrementAndGet() > INBOX_LIMIT) {
      waiting.decrementAndGet();
      answer.accept(new Reply.Later(BUSY));
      return;
    }
    Pending pending = new Pending(submission, answer);
    means.executor().execute(() -> take(pending));
  }

  /**
   * @throws IllegalStateException if {@link Watchers#LIMIT} watch already
   */
  @Override
  public Runnable watch(Consumer<Standpoint> watcher) {
    watchers.admit();
    means.executor().execute(() -> watchers.add(watcher, state == null ? null : standpoint()));
    return () -> means.executor().execute(() -> watchers.remove(watcher));
  }

  private void take(Pending pending) {
    switch (stage) {
      case OPEN -> {
        if (readOnly() && suspectUntil == 0) {
          answer(pending, new Reply.Later(AWAY));
        } else {
          parked.add(pending);
          goOn();
        }
      }
      case STARTING, RECOVERING -> {
        if (away || (stage == Stage.RECOVERING && readOnly())) {
          answer(pending, new Reply.Later(AWAY));
        } else {
          parked.add(pending);
        }
      }
      case FENCED -> answer(pending, new Reply.Later(FENCED));
      case REFUSED -> answer(pending, new Reply.Later(trouble));
      case CLOSED -> answer(pending, new Reply.Later(ENDING));
    }
  }

  /** Decides what waits, as far as there is room to write. */
  private void goOn() {
    while (stage == Stage.OPEN && !parked.isEmpty() && inFlight.size() < IN_FLIGHT_LIMIT) {
      decide(parked.poll());
    }
  }

  private void decide(Pending pending) {
    Submission submission = pending.submission();
    if (decisions.over()) {
      String words = RefusalCode.MORNING_CLOSED.say(null);
      answer(pending, new Reply.Refused(RefusalCode.MORNING_CLOSED, words));
      return;
    }
    for (InFlight under : inFlight) {
      if (under.pending.submission().id().equals(submission.id())) {
        // The same command is under way: it is answered when that one is.
        under.same.add(pending);
        return;
      }
    }
    Reply before = decisions.answered(submission);
    if (before != null) {
      answer(pending, before);
    } else if (decisions.full() || (suspectUntil != 0 && !inFlight.isEmpty())) {
      answer(pending, new Reply.Later(suspectUntil != 0 ? AWAY : BUSY));
    } else {
      Decisions.Attempt attempt = decisions.decide(submission);
      if (attempt == null) {
        answer(pending, new Reply.Later(Reply.Later.MIXED));
        return;
      }
      InFlight under = new InFlight(pending, attempt, means.clock().monotonicMs());
      inFlight.add(under);
      means
          .journal()
          .append(
              attempt.append(),
              outcome -> means.executor().execute(() -> appended(under, outcome)));
    }
  }

  private void appended(InFlight under, Appended outcome) {
    inFlight.remove(under);
    if (outcome instanceof Appended.Durable && stage != Stage.RECOVERING) {
      durable(under);
    } else if (outcome instanceof Appended.NotWritten not) {
      suspectUntil = means.clock().monotonicMs() + SUSPECT_MS;
      answerAll(under, new Reply.Later(not.words()));
      leave(Stage.RECOVERING, not.words());
    } else if (stage == Stage.OPEN && outcome instanceof Appended.Fenced) {
      hold(under);
      leave(Stage.FENCED, "another node has it");
    } else {
      // In doubt, or written behind one that was: the receipts will say.
      hold(under);
      leave(Stage.RECOVERING, "a commit ended in doubt");
    }
    goOn();
    afterLast();
  }

  private void durable(InFlight under) {
    suspectUntil = 0;
    decisions.durable();
    state = under.attempt.after();
    head = under.attempt.head();
    answer(under.pending, under.attempt.reply());
    if (stage == Stage.OPEN) {
      publish();
      for (Pending same : under.same) {
        decide(same);
      }
    } else {
      under.same.forEach(same -> answer(same, new Reply.Later(FENCED)));
    }
  }

  private void hold(InFlight under) {
    held.add(under.pending);
    held.addAll(under.same);
  }

  private void leave(Stage next, String why) {
    if (stage == Stage.OPEN) {
      LOG.warn("{}: leaves epoch {}: {}", morning, head.epoch(), why);
      stage = next;
      if (next == Stage.FENCED || suspectUntil != 0) {
        publish();
      }
    }
  }

  /** What comes when nothing is under way any more. */
  private void afterLast() {
    if (!inFlight.isEmpty()) {
      return;
    }
    switch (stage) {
      case RECOVERING -> opening.again(head.epoch(), this::opened);
      case FENCED -> {
        releaseAll(FENCED);
        if (means.company() == null) {
          means.timers().after(HOLD_OFF_MS, this::open);
        } else {
          means.company().gone(morning);
        }
      }
      case CLOSED -> {
        releaseAll(ENDING);
        if (whenStill != null) {
          ended = true;
          Runnable then = whenStill;
          whenStill = null;
          then.run();
        }
      }
      default -> {}
    }
  }

  private void open() {
    if (stage == Stage.STARTING || stage == Stage.FENCED) {
      stage = Stage.STARTING;
      opening.first(this::opened);
    }
  }

  private void opened(Opening.Result result) {
    if (stage != Stage.STARTING && stage != Stage.RECOVERING) {
      return;
    }
    if (result instanceof Opening.Opened opened) {
      go(opened);
    } else if (result instanceof Opening.Refused refused) {
      LOG.error("{}: not owned: {}", morning, refused.words());
      trouble = refused.words();
      stage = Stage.REFUSED;
      releaseAll(refused.words());
      publish();
      if (means.company() != null) {
        means.company().gone(morning);
      }
    } else if (result instanceof Opening.Lost
        && (stage == Stage.RECOVERING || means.company() != null)) {
      stage = Stage.FENCED;
      publish();
      afterLast();
    } else {
      String words = result instanceof Opening.Away gone ? gone.words() : FENCED;
      LOG.warn("{}: tries again: {}", morning, words);
      away = true;
      while (!parked.isEmpty()) {
        answer(parked.poll(), new Reply.Later(words));
      }
      publish();
      means.timers().after(RETRY_MS, this::retry);
    }
  }

  private void retry() {
    if (stage == Stage.RECOVERING) {
      opening.again(head.epoch(), this::opened);
    } else {
      open();
    }
  }

  private void go(Opening.Opened opened) {
    stage = Stage.OPEN;
    away = false;
    head = opened.head();
    state = opened.state();
    confirmedAt = means.clock().monotonicMs();
    decisions = new Decisions(morning, means, opened);
    for (int at = held.size() - 1; at >= 0; at--) {
      parked.addFirst(held.get(at));
    }
    held.clear();
    LOG.info("{}: owned in epoch {} at event {}", morning, head.epoch(), head.seq());
    publish();
    goOn();
    if (stale) {
      reload(-1);
    }
  }

  /**
   * What the journal said about the morning's epoch.
   *
   * @param epoch the epoch that stood, or null if the morning was not known
   * @param askedAt when it was asked, monotonic milliseconds
   */
  void confirm(Long epoch, long askedAt) {
    if (stage != Stage.OPEN || epoch == null || epoch < head.epoch()) {
      return;
    }
    if (epoch > head.epoch()) {
      leave(Stage.FENCED, "another node has it");
      afterLast();
      return;
    }
    confirmedAt = Math.max(confirmedAt, askedAt);
    publish();
  }

  /** Looks at the clock; to be called a few times a second. */
  void tick() {
    if (suspectUntil != 0
        && stage == Stage.OPEN
        && inFlight.isEmpty()
        && means.clock().monotonicMs() > suspectUntil) {
      suspectUntil = 0;
    }
    if (readOnly()) {
      publish();
    }
  }

  /** Reads the morning again if it has more events than {@code read}; tells how many it has. */
  long reload(long read) {
    boolean more = head.seq() > read;
    stale = stage != Stage.OPEN && (stale || more);
    if (more && stage == Stage.OPEN) {
      stage = Stage.RECOVERING;
      afterLast();
    }
    return head.seq();
  }

  /** Takes nothing more; {@code then} is run when all that was under way is answered. */
  void close(Runnable then) {
    stage = Stage.CLOSED;
    whenStill = then;
    publish();
    afterLast();
  }

  private void releaseAll(String words) {
    for (Pending pending : held) {
      answer(pending, new Reply.Later(words));
    }
    held.clear();
    while (!parked.isEmpty()) {
      answer(parked.poll(), new Reply.Later(words));
    }
  }

  private boolean readOnly() {
    InFlight oldest = inFlight.peek();
    long now = means.clock().monotonicMs();
    return !owned()
        || away
        || suspectUntil != 0
        || now - confirmedAt > CONFIRM_LIMIT_MS
        || (oldest != null && now - oldest.since > CONFIRM_LIMIT_MS);
  }

  private boolean owned() {
    return stage == Stage.OPEN || stage == Stage.RECOVERING;
  }

  private Standpoint standpoint() {
    return new Standpoint(morning, head.epoch(), state, confirmedAt, readOnly(), owned());
  }

  private void publish() {
    if (state != null) {
      watchers.tell(standpoint());
    }
  }

  private void answerAll(InFlight under, Reply reply) {
    answer(under.pending, reply);
    under.same.forEach(same -> answer(same, reply));
  }

  private void answer(Pending pending, Reply reply) {
    waiting.decrementAndGet();
    try {
      pending.answer().accept(reply);
    } catch (RuntimeException e) {
      LOG.error("{}: an answer could not be taken", morning, e);
    }
  }
}
