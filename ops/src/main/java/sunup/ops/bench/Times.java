package sunup.ops.bench;

import java.util.Arrays;
import java.util.Locale;

/** Times of one measurement, in nanoseconds; not thread-safe. */
final class Times {
  private long[] nanos = new long[64];
  private int count;

  void add(long took) {
    if (count == nanos.length) {
      nanos = Arrays.copyOf(nanos, 2 * count);
    }
    nanos[count++] = took;
  }

  int count() {
    return count;
  }

  /** The q quantile (nearest rank), in nanoseconds; 0 if there is none. */
  long quantile(double q) {
    if (count == 0) {
      return 0;
    }
    long[] sorted = Arrays.copyOf(nanos, count);
    Arrays.sort(sorted);
    int rank = (int) Math.ceil(q * count);
    return sorted[Math.max(0, Math.min(count - 1, rank - 1))];
  }

  /** Count, median, 90 %, 99 % and largest, in milliseconds. */
  String line() {
    return String.format(
        Locale.ROOT,
        "n %d  median %.2f ms  p90 %.2f ms  p99 %.2f ms  max %.2f ms",
        count,
        quantile(0.5) / 1e6,
        quantile(0.9) / 1e6,
        quantile(0.99) / 1e6,
        quantile(1) / 1e6);
  }
}
