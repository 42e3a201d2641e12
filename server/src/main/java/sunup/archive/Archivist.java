package sunup.archive;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.LearnedTimes;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.Recorded;
import sunup.board.SuiteId;
import sunup.codec.Maybe;
import sunup.journal.Answer;
import sunup.journal.EventCodec;
import sunup.journal.Journal;
import sunup.journal.Stored;
import sunup.journal.UnreadableEvent;
import sunup.review.facts.FactsBuilder;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.ForecastReplay;
import sunup.review.facts.Replayed;
import sunup.review.learn.Closing;
import sunup.review.learn.LessonsReader;
import sunup.review.replay.PastWall;

/**
 * Keeps the facts in step with the journal. It looks which mornings became longer since their facts
 * were made and makes those anew, so that it does not matter who closed a morning, on which node,
 * or whether this one was up then. Whoever adds a delay reason days later is counted, too.
 */
public final class Archivist implements AutoCloseable {
  /** The first look waits until the screens are served. */
  static final long FIRST_MS = 10_000;

  /** Between two looks, in real time. */
  static final long EVERY_MS = 60_000;

  /** The journal may take so long to answer. */
  private static final long ANSWER_MS = 30_000;

  /** Past mornings that are kept as they were answered. */
  static final int PASTS_KEPT = 4;

  /** Of the forecasts that are made again for the trial of the board. */
  private static final int TRIALS = 256;

  private static final Logger LOG = LoggerFactory.getLogger(Archivist.class);

  private final Journal journal;
  private final EventCodec codec;
  private final FactStore store;
  private final Remade remade;
  private final ForecastLog log;
  private final Brought brought;
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread made = new Thread(task, "sunup-archive");
            made.setDaemon(true);
            return made;
          });

  /** Mornings that are not closed, or can't be read, and how long they were then. The thread's. */
  private final Map<MorningId, Long> passed = new HashMap<>();

  /**
   * How long each was at the last look. One that grows is left alone until a look finds it as it
   * was: an open morning is not read through every minute. The thread's.
   */
  private final Map<MorningId, Long> seen = new HashMap<>();

  private final Map<SuiteId, LearnedTimes> learned = new ConcurrentHashMap<>();

  /** Past mornings as they were answered. */
  private final Pasts pasts = new Pasts(PASTS_KEPT);

  private volatile Progress progress = new Progress(false, 0, 0, 0, null);
  private volatile boolean closed;

  /**
   * How far it is.
   *
   * @param working true while it makes facts
   * @param done looks at mornings in this round
   * @param of looks that it needs: of several mornings two each, the quick one of all first
   * @param unreadable mornings whose facts could not be made
   * @param trouble what stood in the way of the last round, or null
   */
  public record Progress(
      boolean working, int done, int of, int unreadable, @Maybe String trouble) {}

  /**
   * @param codec reads the journal's events
   * @param log what the board said
   * @param brought the history that suites brought
   */
  public Archivist(
      Journal journal, EventCodec codec, FactStore store, ForecastLog log, Brought brought) {
    this.journal = journal;
    this.codec = codec;
    this.store = store;
    this.remade = new Remade(store);
    this.log = log;
    this.brought = brought;
  }

  /** Looks now and then, until it is closed. */
  public void start() {
    ScheduledFuture<?> unused =
        thread.scheduleWithFixedDelay(this::round, FIRST_MS, EVERY_MS, TimeUnit.MILLISECONDS);
  }

  /** Looks now. */
  public void look() {
    thread.execute(this::round);
  }

  public Progress progress() {
    return progress;
  }

  /** Throws away what was made from the journal and makes it again; {@link #progress} tells. */
  public void remake() {
    progress = new Progress(true, 0, 0, 0, null);
    thread.execute(
        () -> {
          passed.clear();
          try {
            store.forget(FactStore.Source.JOURNAL);
          } catch (FactStore.Trouble e) {
            progress = new Progress(false, 0, 0, 0, e.getMessage());
            return;
          }
          round();
        });
  }

  private void round() {
    int bad = 0;
    try {
      bring();
      List<Map.Entry<MorningId, Long>> longer = longer();
      // Of many, first all that is quick: charts need not wait for forecasts that are made again.
      int steps = longer.size() > 1 ? 2 * longer.size() : longer.size();
      for (int i = 0; i < steps - longer.size() && !closed; i++) {
        progress = new Progress(true, i, steps, bad, null);
        bad += make(longer.get(i), false) ? 0 : 1;
      }
      if (steps > 1) {
        learn(longer);
      }
      for (int i = 0; i < longer.size() && !closed; i++) {
        progress = new Progress(true, steps - longer.size() + i, steps, bad, null);
        Map.Entry<MorningId, Long> one = longer.get(i);
        if (!one.getValue().equals(passed.get(one.getKey()))) {
          bad += make(one, true) ? 0 : 1;
        }
      }
      if (steps <= 1) {
        learn(longer);
      }
      progress = new Progress(false, steps, steps, bad, null);
    } catch (RuntimeException | TimeoutException e) {
      if (!closed) {
        LOG.warn("the review's facts could not be made now: {}", e.getMessage());
        progress = new Progress(false, 0, 0, bad, e.getMessage());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Of the suites that have something new, and after a start of all. */
  private void learn(List<Map.Entry<MorningId, Long>> longer) {
    Set<SuiteId> suites =
        longer.stream().map(e -> e.getKey().suite()).collect(Collectors.toCollection(HashSet::new));
    if (learned.isEmpty()) {
      store.made().keySet().forEach(morning -> suites.add(morning.suite()));
    }
    for (SuiteId suite : suites) {
      Closing closing = store.figures().closing(suite);
      if (closing.next() != null) {
        learned.put(suite, closing.next());
      }
    }
  }

  /**
   * What a suite's closed mornings taught, for its next opening: at once and from any thread; null
   * if nothing, or before the first look.
   */
  public LearnedTimes learned(SuiteId suite) {
    return learned.get(suite);
  }

  /** Takes the history that was brought since, here or at another node. */
  void bring() {
    Map<SuiteId, Integer> here = store.brought();
    for (Map.Entry<SuiteId, Integer> e : brought.numbers().entrySet()) {
      if (!e.getValue().equals(here.get(e.getKey()))) {
        store.history(e.getKey(), e.getValue(), brought.of(e.getKey()));
      }
    }
  }

  /**
   * Replaces the history of a suite. When this returns it is on the disk, and in this node's
   * archive if that can be written now.
   *
   * @return how many rows the archive took
   */
  public long history(SuiteId suite, List<FirstCaseFact> facts) {
    return store.history(suite, brought.replace(suite, facts), facts);
  }

  /** Those that became longer, by date. */
  private List<Map.Entry<MorningId, Long>> longer() throws InterruptedException, TimeoutException {
    Map<MorningId, Long> lengths = ask(journal::lengths);
    Map<MorningId, Long> known = new HashMap<>(passed);
    known.putAll(store.made());
    List<Map.Entry<MorningId, Long>> longer = new ArrayList<>();
    for (Map.Entry<MorningId, Long> e : lengths.entrySet()) {
      boolean grew = !e.getValue().equals(known.get(e.getKey()));
      boolean grows = seen.containsKey(e.getKey()) && !e.getValue().equals(seen.get(e.getKey()));
      if (grew && !grows) {
        longer.add(e);
      }
    }
    seen.clear();
    seen.putAll(lengths);
    longer.sort(
        Comparator.comparing((Map.Entry<MorningId, Long> e) -> e.getKey().date())
            .thenComparing(e -> e.getKey().suite().value()));
    return longer;
  }

  /**
   * False if they can't be made.
   *
   * @param one a morning and how long it is
   * @param whole false without the forecasts of moments that nobody kept: the facts then count as
   *     made of nothing, so that they are made whole whatever comes between
   */
  private boolean make(Map.Entry<MorningId, Long> one, boolean whole)
      throws InterruptedException, TimeoutException {
    MorningId morning = one.getKey();
    Stored stored = ask(then -> journal.load(morning, then));
    try {
      List<Recorded> events = events(stored);
      if (!FactsBuilder.isClosed(events)) {
        passed.put(morning, one.getValue());
        return true;
      }
      List<ForecastNote> said = whole ? said(morning, events) : log.of(morning);
      List<FirstCaseFact> facts = FactsBuilder.build(events, said);
      Morning end = Replayed.of(events).end();
      FactStore.Taught taught =
          new FactStore.Taught(
              LessonsReader.read(events), List.copyOf(end.sheets().values()), end.learned());
      store.replace(morning, whole ? stored.events().size() : 0, facts, taught);
      passed.remove(morning);
      return true;
    } catch (UnreadableEvent | FactStore.Trouble e) {
      LOG.warn("no facts of {}: {}", morning, e.getMessage());
    } catch (RuntimeException e) {
      LOG.error("no facts of {}", morning, e);
    }
    passed.put(morning, one.getValue());
    return false;
  }

  private List<Recorded> events(Stored stored) throws UnreadableEvent {
    List<Recorded> events = new ArrayList<>();
    for (Stored.Event event : stored.events()) {
      events.add(codec.decode(event.bytes(), stored.privates()));
    }
    return events;
  }

  /** What the board said; of a moment without a kept note, what today's model says of it. */
  private List<ForecastNote> said(MorningId morning, List<Recorded> events)
      throws InterruptedException {
    return remade.with(
        morning, log.of(morning), known -> ForecastReplay.notes(events, TRIALS, known));
  }

  /**
   * A closed morning to be played again, or null if there is none. For threads that may wait.
   *
   * @throws FactStore.Trouble if it can't be read now
   */
  public PastWall past(MorningId morning) {
    try {
      List<Recorded> events = events(ask(then -> journal.load(morning, then)));
      return FactsBuilder.isClosed(events)
          ? pasts.of(morning, events.size(), () -> PastWall.of(events, said(morning, events)))
          : null;
    } catch (UnreadableEvent | TimeoutException | IllegalStateException e) {
      throw new FactStore.Trouble("The morning can't be read: " + e.getMessage(), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new FactStore.Trouble("The board is closing.", e);
    }
  }

  private static <T> T ask(Consumer<Consumer<Answer<T>>> question)
      throws InterruptedException, TimeoutException {
    CompletableFuture<Answer<T>> answer = new CompletableFuture<>();
    question.accept(answer::complete);
    try {
      Answer<T> told = answer.get(ANSWER_MS, TimeUnit.MILLISECONDS);
      if (told instanceof Answer.Known<T> known) {
        return known.value();
      }
      throw new IllegalStateException(((Answer.Away<T>) told).words());
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Ends after the morning under way; to be called before the journal is closed. */
  @Override
  public void close() {
    closed = true;
    thread.shutdown();
    try {
      if (!thread.awaitTermination(ANSWER_MS, TimeUnit.MILLISECONDS)) {
        LOG.warn("the review's facts were still being made at the end");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    store.close();
    brought.close();
  }
}
