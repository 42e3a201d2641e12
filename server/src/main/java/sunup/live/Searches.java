package sunup.live;

import java.util.concurrent.RejectedExecutionException;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.Morning;
import sunup.forecast.Forecast;
import sunup.moves.Ideas;
import sunup.suites.Clock;

/**
 * Looks for moves beside a morning's figures: seldom, one search at a time, each slice of it behind
 * the forecasts that wait, given up when an event comes. Its methods are called in the lane, and it
 * calls back there.
 */
final class Searches {
  /** Least real time from the end of one search to the next. */
  static final int EVERY_MS = 15_000;

  /** The same after one that was given up. */
  static final int AGAIN_MS = 5_000;

  /** Real time after which moves that were found must not pass for today's. */
  static final int KEPT_MS = 60_000;

  /** How long a slice waits before it asks again whether there is room. */
  static final int CROWDED_MS = 100;

  private static final Logger LOG = LoggerFactory.getLogger(Searches.class);

  /** One search; {@code search} and {@code failed} belong to the pool until it is handed over. */
  private static final class Job {
    final Morning state;
    final Forecast of;
    volatile boolean overtaken;
    Sight.Searching search;
    boolean more = true;
    boolean failed;

    Job(Morning state, Forecast of) {
      this.state = state;
      this.of = of;
    }
  }

  private final Sight sight;
  private final Clock clock;
  private final Lane lane;
  private final Pool pool;
  private final Consumer<Ideas> taker;
  private Job running;
  private long notBefore = Long.MIN_VALUE;
  private long foundAt;
  private boolean found;
  private boolean closed;

  Searches(MorningChannel.Tools tools, Consumer<Ideas> taker) {
    this.sight = tools.sight();
    this.clock = tools.clock();
    this.lane = tools.lane();
    this.pool = tools.pool();
    this.taker = taker;
  }

  /** Figures of this very state came: a search may begin. */
  void figured(Morning state, Forecast of) {
    if (closed || running != null || of == null || clock.monotonicMs() < notBefore) {
      return;
    }
    running = new Job(state, of);
    slice(running);
  }

  /** An event came: what is being looked for is of yesterday. */
  void news() {
    if (running != null) {
      running.overtaken = true;
    }
  }

  /** Moves that nobody could look for again must not stay. */
  void age() {
    if (found && clock.monotonicMs() - foundAt >= KEPT_MS) {
      found = false;
      taker.accept(Ideas.NONE);
    }
  }

  void close() {
    closed = true;
    news();
  }

  /**
   * Each slice is a task of its own, so that forecasts that wait go first; while the pool is
   * crowded none begins.
   */
  private void slice(Job job) {
    if (pool.crowded() && !job.overtaken && !closed) {
      lane.after(CROWDED_MS, () -> slice(job));
      return;
    }
    try {
      pool.execute(
          () -> {
            job.failed = true;
            try {
              advance(job);
              job.failed = false;
            } catch (RuntimeException e) {
              LOG.error("the search for moves failed; none are shown from it", e);
            } finally {
              lane.run(() -> sliced(job));
            }
          });
    } catch (RejectedExecutionException full) {
      LOG.debug("no room for a search for moves now; later figures begin another");
      ended(AGAIN_MS);
    }
  }

  private void advance(Job job) {
    if (job.overtaken) {
      return;
    }
    if (job.search == null) {
      job.search = sight.searching(job.state, job.of);
      job.more = job.search != null;
    } else {
      job.more = job.search.advance();
    }
  }

  private void sliced(Job job) {
    if (job.failed || job.search == null) {
      ended(EVERY_MS);
    } else if (job.overtaken) {
      ended(AGAIN_MS);
    } else if (job.more) {
      slice(job);
    } else {
      ended(EVERY_MS);
      found = true;
      foundAt = clock.monotonicMs();
      taker.accept(job.search.result());
    }
  }

  private void ended(int pause) {
    running = null;
    notBefore = clock.monotonicMs() + pause;
  }
}
