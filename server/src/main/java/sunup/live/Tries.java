package sunup.live;

import java.util.List;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.Morning;
import sunup.suites.Clock;
import sunup.trying.CantTry;
import sunup.trying.SideBySide;
import sunup.wire.Tried;
import sunup.wire.TryChange;

/**
 * Works out changed copies of mornings for those who ask, slice by slice behind all forecasts and
 * never while they crowd the threads. Reads a state that it is given and writes nothing.
 */
public final class Tries {
  /** Copies that are worked out, or wait for it, at the same time on this node. */
  public static final int AT_ONCE = 4;

  static final int TRIALS = 2_000;

  /** Of a copy that took too long, what is shown is of so many trials at least. */
  static final int LEAST_TRIALS = 256;

  static final int SLICE_TRIALS = 64;

  /** How long a slice waits before it asks again whether there is room. */
  static final int CROWDED_MS = 100;

  /** Real time after which what there is must do. */
  static final int LONGEST_MS = 10_000;

  private static final Logger LOG = LoggerFactory.getLogger(Tries.class);

  /** Gets exactly one answer, in the lane; none if it was given up. */
  public interface Taker {
    void tried(Tried both);

    /** The board would refuse one of the changes. */
    void cant(CantTry why);

    /** There is no room for it now. */
    void busy();

    void failed();
  }

  /** One copy; what the pool writes is read in the lane after it was handed over. */
  private static final class Job {
    final Morning morning;
    final List<TryChange> changes;
    final long now;
    final long until;
    final Taker taker;
    volatile boolean givenUp;
    SideBySide both;
    boolean last;
    Tried tried;
    CantTry cant;
    boolean failed;

    Job(Morning morning, List<TryChange> changes, long now, long until, Taker taker) {
      this.morning = morning;
      this.changes = changes;
      this.now = now;
      this.until = until;
      this.taker = taker;
    }
  }

  private final Clock clock;
  private final Lane lane;
  private final Pool pool;

  /** In the lane only. */
  private int running;

  public Tries(Clock clock, Lane lane, Pool pool) {
    this.clock = clock;
    this.lane = lane;
    this.pool = pool;
  }

  /**
   * Begins to work out a copy. From any thread.
   *
   * @param now the morning's time to forecast from
   * @return gives it up; may be run at any time, from any thread
   */
  public Runnable begin(Morning morning, List<TryChange> changes, long now, Taker taker) {
    Job job = new Job(morning, changes, now, clock.monotonicMs() + LONGEST_MS, taker);
    lane.run(
        () -> {
          if (running >= AT_ONCE) {
            taker.busy();
          } else {
            running++;
            slice(job);
          }
        });
    return () -> job.givenUp = true;
  }

  private void slice(Job job) {
    boolean overdue = clock.monotonicMs() >= job.until;
    boolean enough = job.both != null && job.both.trials() >= LEAST_TRIALS;
    if (job.givenUp) {
      running--;
    } else if (overdue && !enough) {
      end(job, Taker::busy);
    } else if (!overdue && pool.crowded()) {
      lane.after(CROWDED_MS, () -> slice(job));
    } else {
      job.last = overdue;
      execute(job);
    }
  }

  private void execute(Job job) {
    try {
      pool.execute(
          () -> {
            job.failed = true;
            try {
              advance(job);
              job.failed = false;
            } catch (CantTry e) {
              job.cant = e;
              job.failed = false;
            } catch (RuntimeException e) {
              LOG.error("a copy of {} could not be worked out", job.morning.id(), e);
            } finally {
              // Also after an Error: else its place would be taken for ever.
              lane.run(() -> sliced(job));
            }
          });
    } catch (RejectedExecutionException full) {
      lane.after(CROWDED_MS, () -> slice(job));
    }
  }

  private static void advance(Job job) throws CantTry {
    if (job.givenUp) {
      return;
    }
    if (job.both == null) {
      job.both = new SideBySide(job.morning, job.changes, job.now, TRIALS);
    }
    if (!job.last) {
      job.both.advance(Math.min(TRIALS, job.both.trials() + SLICE_TRIALS));
    }
    if (job.last || job.both.trials() == TRIALS) {
      job.tried = job.both.result();
    }
  }

  private void sliced(Job job) {
    if (job.failed) {
      end(job, Taker::failed);
    } else if (job.cant != null) {
      end(job, taker -> taker.cant(job.cant));
    } else if (job.tried != null) {
      end(job, taker -> taker.tried(job.tried));
    } else {
      slice(job);
    }
  }

  private void end(Job job, Consumer<Taker> answer) {
    running--;
    if (!job.givenUp) {
      answer.accept(job.taker);
    }
  }
}
