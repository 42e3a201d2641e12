package sunup.live.fake;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for a condition. */
public final class Waiting {
  private static final long SECONDS_MAX = 20;
  private static final long POLL_NANOS = 1_000_000;

  private Waiting() {}

  public static void until(BooleanSupplier condition) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS_MAX);
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("waited " + SECONDS_MAX + " s in vain");
      }
      LockSupport.parkNanos(POLL_NANOS);
    }
  }
}
