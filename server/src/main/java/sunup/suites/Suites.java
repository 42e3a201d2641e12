package sunup.suites;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntFunction;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.LearnedTimes;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.journal.Answer;
import sunup.journal.EventCodec;
import sunup.journal.EventTypes;
import sunup.journal.Journal;
import sunup.journal.SqliteJournal;

/** The mornings of this node and their owners. May be called from any thread. */
public final class Suites implements AutoCloseable {
  /** Mornings that are owned at the same time; beyond it {@link #owner} fails. */
  public static final int MORNING_LIMIT = 1_000;

  /** How often private values that are due are erased. */
  static final long ERASE_EVERY_MS = 600_000;

  /** How long what {@link #prepare} read is kept. */
  static final long PREPARED_MS = 10_000;

  private static final long CLOSE_LIMIT_MS = 10_000;
  private static final Logger LOG = LoggerFactory.getLogger(Suites.class);

  private final Means means;
  private final EpochWatch watch;
  private final Map<MorningId, SuiteActor> actors = new LinkedHashMap<>();
  private final Map<MorningId, Opening> prepared = new HashMap<>();

  /** How many events a morning had when it was read after an erasing; the executor's only. */
  private final Map<MorningId, Long> forgotten = new HashMap<>();

  private RealLoop loop;

  /** Only the executor's, as is the next. */
  private boolean ended;

  /** Cancels it. */
  private Runnable nextErasing = () -> {};

  private boolean closed;

  /**
   * Over a journal and an executor of the caller's.
   *
   * @param executor runs one task after another, in order
   * @param timers call on that executor
   * @param random gives as many random bytes as asked for
   */
  public Suites(
      Journal journal,
      Decider decider,
      Clock clock,
      Executor executor,
      Timers timers,
      IntFunction<byte[]> random) {
    this(
        journal,
        decider,
        clock,
        executor,
        timers,
        random,
        EventTypes.ofProgram(),
        null,
        suite -> null);
  }

  /**
   * Where several nodes share the journal.
   *
   * @param types of events that this program reads
   * @param company the other nodes; null to come back by itself to a morning that was lost
   * @param learned what a suite's closed mornings taught, at once, or null: an opening freezes it
   */
  public Suites(
      Journal journal,
      Decider decider,
      Clock clock,
      Executor executor,
      Timers timers,
      IntFunction<byte[]> random,
      EventTypes types,
      Company company,
      Function<SuiteId, LearnedTimes> learned) {
    EventCodec codec = new EventCodec(random, types);
    this.means =
        new Means(
            journal, decider, clock, executor, timers, codec, random, types, company, learned);
    this.watch = new EpochWatch(means, this::all);
    executor.execute(
        () -> {
          watch.start();
          erase();
        });
  }

  /**
   * Opens the journal in a data folder, in real time, on a thread of its own.
   *
   * @throws IOException if the folder can't be used; the message says what to do
   */
  public static Suites open(Path dataFolder, Decider decider, Clock clock) throws IOException {
    return open(SqliteJournal.open(dataFolder), decider, clock);
  }

  /** Over a journal, which it closes at its end, in real time, on a thread of its own. */
  public static Suites open(Journal journal, Decider decider, Clock clock) {
    return open(journal, decider, clock, EventTypes.ofProgram(), null, suite -> null);
  }

  /**
   * The same where several nodes share the journal.
   *
   * @param types of events that this program reads
   * @param company the other nodes, or null
   * @param learned what a suite's closed mornings taught, at once, or null: an opening freezes it
   */
  public static Suites open(
      Journal journal,
      Decider decider,
      Clock clock,
      EventTypes types,
      Company company,
      Function<SuiteId, LearnedTimes> learned) {
    RealLoop loop = new RealLoop("suites");
    SecureRandom secure = new SecureRandom();
    IntFunction<byte[]> random =
        count -> {
          byte[] bytes = new byte[count];
          secure.nextBytes(bytes);
          return bytes;
        };
    Suites suites =
        new Suites(journal, decider, clock, loop, loop, random, types, company, learned);
    suites.loop = loop;
    return suites;
  }

  /**
   * The owner of a morning, at once; it begins to take the morning over if it has not. Until it
   * has, commands wait and those who watch are told nothing. A morning that nobody ever planned is
   * an empty one.
   *
   * @throws IllegalStateException if {@link #MORNING_LIMIT} mornings are owned, or it is closed
   */
  public Owner owner(MorningId morning) {
    synchronized (actors) {
      if (closed) {
        throw new IllegalStateException("the board is being shut down");
      }
      SuiteActor actor = actors.get(morning);
      if (actor == null) {
        if (actors.size() >= MORNING_LIMIT) {
          throw new IllegalStateException(
              "no more than " + MORNING_LIMIT + " mornings can be open; close old ones");
        }
        Opening read = prepared.remove(morning);
        actor = new SuiteActor(morning, means, read == null ? new Opening(morning, means) : read);
        actors.put(morning, actor);
        actor.start();
      }
      return actor;
    }
  }

  /** Why the morning can't be owned by this program at all; empty if it can, or nobody tried. */
  public Optional<String> trouble(MorningId morning) {
    synchronized (actors) {
      SuiteActor actor = actors.get(morning);
      return actor == null ? Optional.empty() : Optional.ofNullable(actor.trouble());
    }
  }

  /** Lets go of a morning; {@code then} is run when all that was under way is answered. */
  public void release(MorningId morning, Runnable then) {
    SuiteActor actor;
    synchronized (actors) {
      actor = actors.remove(morning);
    }
    means.executor().execute(actor == null ? then : () -> actor.close(then));
  }

  /**
   * Reads a morning that will soon be this node's, so that little is left to read when it is.
   *
   * @param then run on the executor when it was read, or can't be now
   */
  public void prepare(MorningId morning, Runnable then) {
    Opening opening = new Opening(morning, means);
    opening.look(
        result -> {
          synchronized (actors) {
            if (result instanceof Opening.Opened && !closed && !actors.containsKey(morning)) {
              prepared.put(morning, opening);
              means.timers().after(PREPARED_MS, () -> forget(morning, opening));
            }
          }
          then.run();
        });
  }

  private static boolean due(MorningId morning, long now) {
    return now >= new Terms(morning).eraseAfter();
  }

  private void forget(MorningId morning, Opening opening) {
    synchronized (actors) {
      prepared.remove(morning, opening);
    }
  }

  /** The mornings that the journal has, by suite and date. */
  public void mornings(Consumer<Answer<List<MorningId>>> then) {
    means.journal().mornings(then);
  }

  /** The epochs of mornings as the journal has them. */
  public void epochs(Collection<MorningId> mornings, Consumer<Answer<Map<MorningId, Long>>> then) {
    means.journal().epochs(mornings, then);
  }

  /**
   * A morning as the journal has it, without owning it.
   *
   * @param then gets it, or nothing if it can't be read now; on the executor
   */
  public void look(MorningId morning, Consumer<Optional<Standpoint>> then) {
    long askedAt = means.clock().monotonicMs();
    new Opening(morning, means)
        .look(
            result -> {
              Standpoint read = null;
              if (result instanceof Opening.Opened opened) {
                long epoch = opened.head().epoch();
                read = new Standpoint(morning, epoch, opened.state(), askedAt, false, false);
              }
              then.accept(Optional.ofNullable(read));
            });
  }

  private Collection<SuiteActor> all() {
    synchronized (actors) {
      return List.copyOf(actors.values());
    }
  }

  private void erase() {
    long now = means.clock().morningMs();
    means.journal().erase(now, answer -> means.executor().execute(() -> erased(answer, now)));
  }

  /**
   * What is due by now is erased, by this node or before by another, which tells nobody: so each
   * node reads its mornings again whose values are due, once, and again if something came since.
   */
  private void erased(Answer<Set<MorningId>> answer, long now) {
    if (answer instanceof Answer.Known<Set<MorningId>> known) {
      synchronized (actors) {
        prepared.keySet().removeIf(m -> known.value().contains(m) || due(m, now));
      }
      Map<MorningId, Long> before = Map.copyOf(forgotten);
      forgotten.clear();
      for (SuiteActor actor : all()) {
        MorningId morning = actor.morning();
        if (known.value().contains(morning)) {
          forgotten.put(morning, actor.reload(-1));
        } else if (due(morning, now)) {
          forgotten.put(morning, actor.reload(before.getOrDefault(morning, -1L)));
        }
      }
    }
    if (!ended) {
      nextErasing = means.timers().after(ERASE_EVERY_MS, this::erase);
    }
  }

  /**
   * In order: takes no more commands, answers what is under way, closes the journal. Not to be
   * called on the executor.
   */
  @Override
  public void close() {
    synchronized (actors) {
      if (closed) {
        return;
      }
      closed = true;
    }
    Collection<SuiteActor> open = all();
    CountDownLatch still = new CountDownLatch(open.size());
    means
        .executor()
        .execute(
            () -> {
              watch.end();
              ended = true;
              nextErasing.run();
              open.forEach(actor -> actor.close(still::countDown));
            });
    try {
      if (!still.await(CLOSE_LIMIT_MS, TimeUnit.MILLISECONDS)) {
        LOG.warn("{} mornings had commands under way at the end", still.getCount());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    means.journal().close();
    if (loop != null) {
      loop.close();
    }
  }
}
