package sunup.ops.bench;

import java.util.Arrays;

/** The starts of every room in every trial, in milliseconds; how many events the library ran. */
final class Played {
  private final double[][] starts;
  private final long events;

  Played(double[][] starts, long events) {
    this.starts = starts;
    this.events = events;
  }

  long events() {
    return events;
  }

  /** The share of trials in which a room has started by then. */
  double share(int room, long moment) {
    return Arrays.stream(starts[room]).filter(s -> s <= (double) moment).count()
        / (double) starts[room].length;
  }

  double meanLate(int room, long target) {
    return Arrays.stream(starts[room])
        .map(s -> Math.max(0, s - (double) target))
        .average()
        .orElseThrow();
  }

  double varianceLate(int room, long target) {
    double mean = meanLate(room, target);
    return Arrays.stream(starts[room])
        .map(s -> Math.max(0, s - (double) target) - mean)
        .map(x -> x * x)
        .average()
        .orElseThrow();
  }
}
