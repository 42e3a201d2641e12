package sunup.ops.bench;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Time that is part of what is measured: the rate of a load, a rest. */
final class Pacing {
  private Pacing() {}

  /** Returns when {@link System#nanoTime} has reached it. */
  static void until(long nanos) {
    for (long left = nanos - System.nanoTime(); left > 0; left = nanos - System.nanoTime()) {
      LockSupport.parkNanos(left);
    }
  }

  static void rest(long time, TimeUnit unit) {
    until(System.nanoTime() + unit.toNanos(time));
  }
}
