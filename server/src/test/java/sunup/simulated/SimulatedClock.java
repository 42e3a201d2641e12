package sunup.simulated;

import sunup.suites.Clock;

/** A node's clock over simulated time, possibly off. */
public record SimulatedClock(SimulatedTime time, long offBy) implements Clock {
  /** 2026-11-30 05:00 UTC. */
  public static final long START = 1_795_928_400_000L;

  @Override
  public long realMs() {
    return START + time.now() + offBy;
  }

  @Override
  public long monotonicMs() {
    return time.now();
  }

  @Override
  public long morningMs() {
    return realMs();
  }

  @Override
  public double rate() {
    return 1;
  }
}
