package sunup.ops.bench;

import java.util.concurrent.atomic.AtomicLongArray;

/** How times are spread, within 3 %; for many threads. */
final class Spread {
  private static final int FINE = 32;
  private final AtomicLongArray counts = new AtomicLongArray(64 * FINE);

  void add(long nanos) {
    counts.incrementAndGet(bucket(Math.max(1, nanos)));
  }

  private static int bucket(long value) {
    int high = 63 - Long.numberOfLeadingZeros(value);
    int low = high < 5 ? 0 : (int) (value >>> (high - 5)) - FINE;
    return high * FINE + low;
  }

  long count() {
    long all = 0;
    for (int at = 0; at < counts.length(); at++) {
      all += counts.get(at);
    }
    return all;
  }

  /** Milliseconds, the q quantile; 0 if there is none. */
  double quantileMs(double q) {
    long wanted = (long) Math.ceil(q * count());
    long passed = 0;
    for (int at = 0; at < counts.length(); at++) {
      passed += counts.get(at);
      if (passed >= wanted && passed > 0) {
        int high = at / FINE;
        double low = Math.scalb(1.0 + (at % FINE + 0.5) / FINE, high);
        return low / 1e6;
      }
    }
    return 0;
  }

  void clear() {
    for (int at = 0; at < counts.length(); at++) {
      counts.set(at, 0);
    }
  }
}
