package sunup.live;

import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import sunup.suites.Clock;

/**
 * The threads that forecasts and searches of all mornings share. What only makes figures finer or
 * looks for moves gets a share of their time at most: the rest of the machine has touches to take,
 * frames to write and, with several nodes, to be heard in time. The first figures of a morning are
 * helped by cores that have nothing to do.
 */
public final class ForecastPool implements Pool {
  /** The usual share of the threads' time beyond which it calls itself crowded. */
  public static final double SPARE_SHARE = 0.5;

  /** How long busy time counts: it fades by this time constant. */
  private static final double FADES_MS = 5_000;

  private static final long IDLE_SECONDS = 10;

  private final Clock clock;
  private final ThreadPoolExecutor threads;
  private final int cores;

  /** Begin what they are given at once, or refuse it. */
  private final ThreadPoolExecutor helpers;

  private final double spareShare;
  private double busyMs;
  private long fadedAt;

  /**
   * @param threads run it and hold what waits; what is more than they hold is refused by {@link
   *     RejectedExecutionException}
   * @param cores so many may be at work at once where one morning's first figures are shared
   * @param spareShare 0 to 1: the share of the threads' time beyond which it is crowded
   */
  public ForecastPool(Clock clock, ThreadPoolExecutor threads, int cores, double spareShare) {
    this.clock = clock;
    this.threads = threads;
    this.cores = cores;
    this.helpers =
        new ThreadPoolExecutor(
            0,
            cores,
            IDLE_SECONDS,
            TimeUnit.SECONDS,
            new SynchronousQueue<>(),
            task -> {
              Thread made = new Thread(task, "sunup-forecast-help");
              made.setDaemon(true);
              return made;
            });
    this.spareShare = spareShare;
    this.fadedAt = clock.monotonicMs();
  }

  @Override
  public void execute(Runnable work) {
    threads.execute(() -> timed(work));
  }

  /**
   * {@inheritDoc} A first answer so comes sooner by all cores, but not where forecasts already take
   * more than the usual share of time: what helps is counted too.
   */
  @Override
  public void together(Runnable work) {
    Joined joined = new Joined(work);
    int others = crowded() ? 0 : cores - threads.getActiveCount() - helpers.getActiveCount();
    try {
      for (int n = 0; n < others; n++) {
        helpers.execute(() -> timed(joined::join));
      }
    } catch (RejectedExecutionException busy) {
      // Others are helped; what is left is done without.
    }
    try {
      work.run();
    } finally {
      joined.end();
    }
    joined.check();
  }

  private void timed(Runnable work) {
    long from = clock.monotonicMs();
    try {
      work.run();
    } finally {
      worked(clock.monotonicMs() - from);
    }
  }

  @Override
  public boolean crowded() {
    return !threads.getQueue().isEmpty() || busyShare() > spareShare;
  }

  /** True if a forecast is wanted: one is under way or waits. */
  public boolean busy() {
    return threads.getActiveCount() > 0 || !threads.getQueue().isEmpty();
  }

  private synchronized void worked(long ms) {
    fade();
    busyMs += ms;
  }

  private synchronized double busyShare() {
    fade();
    return busyMs / FADES_MS / threads.getCorePoolSize();
  }

  private void fade() {
    long now = clock.monotonicMs();
    busyMs *= Math.exp((fadedAt - now) / FADES_MS);
    fadedAt = now;
  }

  /** Begins nothing more. */
  public void close() {
    threads.shutdownNow();
    helpers.shutdownNow();
  }

  /** Work that others may join until the first is through with it. */
  private static final class Joined {
    private final Runnable work;
    private int inside;
    private boolean over;
    private RuntimeException failed;

    Joined(Runnable work) {
      this.work = work;
    }

    private synchronized boolean enters() {
      inside += over ? 0 : 1;
      return !over;
    }

    private synchronized void leaves(RuntimeException why) {
      failed = why != null ? why : failed;
      inside--;
      notifyAll();
    }

    void join() {
      if (!enters()) {
        return;
      }
      RuntimeException why = new IllegalStateException("a helping thread came to no end");
      try {
        work.run();
        why = null;
      } catch (RuntimeException e) {
        why = e;
      } finally {
        leaves(why);
      }
    }

    /**
     * Nobody joins any more; those inside are waited for, since they write to what is read next.
     */
    synchronized void end() {
      over = true;
      boolean interrupted = false;
      while (inside > 0) {
        try {
          wait();
        } catch (InterruptedException e) {
          interrupted = true;
        }
      }
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }

    synchronized void check() {
      if (failed != null) {
        throw failed;
      }
    }
  }
}
