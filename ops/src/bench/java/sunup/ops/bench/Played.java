package sunup.ops.bench;

import java.util.Arrays;

/**
 * The starts of every room in every trial, in milliseconds; how many events the library ran, and
 * what they took without its starting and its end: nanoseconds that passed and of the processor.
 */
final class Played {
  private final double[][] starts;
  private final long events;
  private final long passed;
  private final long taken;

  Played(double[][] starts, long events, long passed, long taken) {
    this.starts = starts;
    this.events = events;
    this.passed = passed;
    this.taken = taken;
  }

  long passed() {
    return passed;
  }

  long taken() {
    return taken;
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
