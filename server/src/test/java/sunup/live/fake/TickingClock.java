package sunup.live.fake;

import java.util.concurrent.TimeUnit;
import sunup.suites.Clock;

/** The machine's clocks, with the morning's time begun at {@link ManualClock#START}. */
public final class TickingClock implements Clock {
  private final long begun = System.nanoTime();

  @Override
  public long realMs() {
    return System.currentTimeMillis();
  }

  @Override
  public long monotonicMs() {
    return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun);
  }

  @Override
  public long morningMs() {
    return ManualClock.START + monotonicMs();
  }

  @Override
  public double rate() {
    return 1;
  }
}
