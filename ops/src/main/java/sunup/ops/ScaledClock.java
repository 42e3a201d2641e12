package sunup.ops;

import sunup.suites.Clock;

/**
 * A clock whose morning runs from a given moment at a given rate, on real time that never goes
 * back. At rate 1 from the real time it is the clock of a real morning.
 */
final class ScaledClock implements Clock {
  private final RealTime real;
  private final long morningFrom;
  private final long since;
  private final double rate;

  /** The machine's own two clocks. */
  interface RealTime {
    long epochMs();

    long monotonicMs();

    RealTime MACHINE =
        new RealTime() {
          @Override
          public long epochMs() {
            return System.currentTimeMillis();
          }

          @Override
          public long monotonicMs() {
            return System.nanoTime() / 1_000_000;
          }
        };
  }

  /**
   * @param morningFrom the morning's time now, epoch milliseconds
   * @param rate morning seconds per real second
   */
  ScaledClock(RealTime real, long morningFrom, double rate) {
    this.real = real;
    this.morningFrom = morningFrom;
    this.rate = rate;
    this.since = real.monotonicMs();
  }

  @Override
  public long realMs() {
    return real.epochMs();
  }

  @Override
  public long monotonicMs() {
    return real.monotonicMs();
  }

  @Override
  public long morningMs() {
    return morningFrom + Math.round((real.monotonicMs() - since) * rate);
  }

  @Override
  public double rate() {
    return rate;
  }
}
