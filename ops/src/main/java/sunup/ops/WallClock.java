package sunup.ops;

import sunup.suites.Clock;

/** The clock of a real morning: this machine's time. */
record WallClock(ScaledClock.RealTime real) implements Clock {
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
    return real.epochMs();
  }

  @Override
  public double rate() {
    return 1;
  }
}
