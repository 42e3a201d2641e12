package sunup.simulated;

import sunup.suites.Clock;

/** A node's clock over simulated time, possibly off, and movable by hand. */
public final class SimulatedClock implements Clock {
  /** 2026-11-30 05:00 UTC. */
  public static final long START = 1_796_014_800_000L;

  private final SimulatedTime time;
  private final long began;
  private long offBy;

  public SimulatedClock(SimulatedTime time, long offBy) {
    this(time, offBy, 0);
  }

  /**
   * @param began where the monotonic time of this machine stands when the simulation begins
   */
  SimulatedClock(SimulatedTime time, long offBy, long began) {
    this.time = time;
    this.offBy = offBy;
    this.began = began;
  }

  /** The hands jump ahead; monotonic time does not. */
  public void jump(long ms) {
    offBy += ms;
  }

  @Override
  public long realMs() {
    return START + time.now() + offBy;
  }

  @Override
  public long monotonicMs() {
    return began + time.now();
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
