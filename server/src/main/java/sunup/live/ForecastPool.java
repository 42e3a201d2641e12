package sunup.live;

import java.util.concurrent.ThreadPoolExecutor;
import sunup.suites.Clock;

/**
 * The threads that forecasts and searches of all mornings share. What only makes figures finer or
 * looks for moves gets a share of their time at most: the rest of the machine has touches to take,
 * frames to write and, with several nodes, to be heard in time.
 */
public final class ForecastPool implements Pool {
  /** The usual share of the threads' time beyond which it calls itself crowded. */
  public static final double SPARE_SHARE = 0.5;

  /** How long busy time counts: it fades by this time constant. */
  private static final double FADES_MS = 5_000;

  private final Clock clock;
  private final ThreadPoolExecutor threads;
  private final double spareShare;
  private double busyMs;
  private long fadedAt;

  /**
   * @param threads run it and hold what waits; what is more than they hold is refused by {@link
   *     java.util.concurrent.RejectedExecutionException}
   * @param spareShare 0 to 1: the share of the threads' time beyond which it is crowded
   */
  public ForecastPool(Clock clock, ThreadPoolExecutor threads, double spareShare) {
    this.clock = clock;
    this.threads = threads;
    this.spareShare = spareShare;
    this.fadedAt = clock.monotonicMs();
  }

  @Override
  public void execute(Runnable work) {
    threads.execute(
        () -> {
          long from = clock.monotonicMs();
          try {
            work.run();
          } finally {
            worked(clock.monotonicMs() - from);
          }
        });
  }

  @Override
  public boolean crowded() {
    return !threads.getQueue().isEmpty() || busyShare() > spareShare;
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
  }
}
