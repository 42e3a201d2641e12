package sunup.live;

import java.util.concurrent.RejectedExecutionException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.Morning;
import sunup.forecast.Forecast;

/**
 * Runs a morning's forecasts off the lane: one at a time, the newest state wins, first few trials
 * by all cores that are free, then many by one if nothing newer waits. The many are run in slices
 * and given up when an event comes, so that its figures need not wait for their end; when other
 * mornings wait for their first figures, they end where they are. Its methods are called in the
 * lane, and it calls back there.
 */
final class Figures {
  /** Trials between two looks at whether an event came. */
  static final int SLICE_TRIALS = 64;

  private static final Logger LOG = LoggerFactory.getLogger(Figures.class);

  /** Gets what came out. */
  interface Taker {
    /**
     * @param forecast null if there is nothing to forecast
     */
    void take(Forecast forecast, long seq);

    /** None could be computed of this state: what was there before is all there is. */
    void failed();
  }

  private record Want(Morning state, long now) {}

  /** One want on its way; what the pool writes is read in the lane after it was handed over. */
  private static final class Job {
    final Want want;
    volatile boolean overtaken;
    Sight.Figuring figuring;
    Forecast result;
    boolean failed;

    Job(Want want) {
      this.want = want;
    }
  }

  private final Sight sight;
  private final Lane lane;
  private final Pool pool;
  private final Pace pace;
  private final Taker taker;
  private Job running;
  private boolean closed;
  private Want next;

  Figures(Sight sight, Lane lane, Pool pool, Pace pace, Taker taker) {
    this.sight = sight;
    this.lane = lane;
    this.pool = pool;
    this.pace = pace;
    this.taker = taker;
  }

  /**
   * Wants figures of this state at this moment; what was wanted before and not begun is dropped.
   */
  void want(Morning state, long now) {
    Want wanted = new Want(state, now);
    if (running == null) {
      first(wanted);
      return;
    }
    next = wanted;
    if (state.seq() != running.want.state().seq()) {
      running.overtaken = true;
    }
  }

  /** Begins nothing more. */
  void close() {
    closed = true;
    if (running != null) {
      running.overtaken = true;
    }
  }

  private void first(Want want) {
    if (closed) {
      return;
    }
    Job job = new Job(want);
    run(job, () -> few(job), () -> firstDone(job));
  }

  /** On the pool. */
  private void few(Job job) {
    job.figuring = sight.figuring(job.want.state(), job.want.now(), pace.trialsFull());
    if (job.figuring != null) {
      pool.together(job.figuring.sharing(pace.trialsFirst()));
      pool.together(job.figuring.reading());
      job.result = job.figuring.result();
    }
  }

  private void firstDone(Job job) {
    if (job.failed) {
      taker.failed();
    } else {
      taker.take(job.result, job.want.state().seq());
    }
    if (next != null) {
      goOn();
    } else if (!job.failed
        && job.result != null
        && pace.trialsFirst() < pace.trialsFull()
        && !pool.crowded()
        && !closed) {
      job.result = null;
      run(job, () -> many(job), () -> manyDone(job));
    }
  }

  /** On the pool. */
  private void many(Job job) {
    int done = pace.trialsFirst();
    while (!job.overtaken && !pool.crowded() && done < pace.trialsFull()) {
      done = Math.min(done + SLICE_TRIALS, pace.trialsFull());
      job.figuring.advance(done);
    }
    if (!job.overtaken) {
      job.result = job.figuring.result();
    }
  }

  /** A refinement that failed leaves what the first trials gave. */
  private void manyDone(Job job) {
    if (!job.failed && job.result != null) {
      taker.take(job.result, job.want.state().seq());
    }
    goOn();
  }

  private void goOn() {
    Want newest = next;
    next = null;
    if (newest != null && running == null) {
      first(newest);
    }
  }

  private void run(Job job, Runnable work, Runnable then) {
    running = job;
    try {
      pool.execute(
          () -> {
            job.failed = true;
            try {
              work.run();
              job.failed = false;
            } catch (RuntimeException e) {
              LOG.error("the forecast failed; the figures shown stay and are called old", e);
            } finally {
              // Also after an Error: else no forecast would ever run again.
              lane.run(
                  () -> {
                    running = null;
                    then.run();
                  });
            }
          });
    } catch (RejectedExecutionException full) {
      running = null;
      LOG.warn("no room for a forecast now; the next event or grid moment asks again");
    }
  }
}
