package sunup.live;

import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.Morning;
import sunup.forecast.Forecast;

/**
 * Runs a morning's forecasts off the lane: one at a time, the newest state wins, first few trials,
 * then many if nothing newer waits. Its methods are called in the lane, and it calls back there.
 */
final class Figures {
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

  private final Sight sight;
  private final Lane lane;
  private final Executor pool;
  private final Pace pace;
  private final Taker taker;
  private boolean running;
  private boolean closed;
  private Want next;

  Figures(Sight sight, Lane lane, Executor pool, Pace pace, Taker taker) {
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
    if (running) {
      next = new Want(state, now);
    } else {
      run(new Want(state, now), pace.trialsFirst());
    }
  }

  /** Begins nothing more. */
  void close() {
    closed = true;
  }

  private void run(Want want, int trials) {
    if (closed) {
      return;
    }
    running = true;
    try {
      pool.execute(
          () -> {
            Runnable end = () -> failed(want, trials);
            try {
              Forecast forecast = sight.forecast(want.state(), want.now(), trials);
              end = () -> finished(want, trials, forecast);
            } catch (RuntimeException e) {
              LOG.error("the forecast failed; the figures shown stay and are called old", e);
            } finally {
              // Also after an Error: else no forecast would ever run again.
              lane.run(end);
            }
          });
    } catch (RejectedExecutionException full) {
      running = false;
      LOG.warn("no room for a forecast now; the next event or grid moment asks again");
    }
  }

  /** A refinement that failed leaves what the first trials gave. */
  private void failed(Want want, int trials) {
    running = false;
    if (trials <= pace.trialsFirst()) {
      taker.failed();
    }
    goOn(want, trials, null);
  }

  private void finished(Want want, int trials, Forecast result) {
    running = false;
    taker.take(result, want.state().seq());
    goOn(want, trials, result);
  }

  private void goOn(Want want, int trials, Forecast result) {
    if (running) {
      return;
    }
    if (next != null) {
      Want newest = next;
      next = null;
      run(newest, pace.trialsFirst());
    } else if (result != null && trials < pace.trialsFull()) {
      run(want, pace.trialsFull());
    }
  }
}
