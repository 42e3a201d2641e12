package sunup.live.fake;

import java.util.concurrent.atomic.AtomicLong;
import sunup.suites.Clock;

/** The machine's clocks, with a morning's time that goes ahead by a word. */
public final class AheadClock implements Clock {
  private final Clock real = new TickingClock();
  private final AtomicLong ahead = new AtomicLong();

  /** From now on the morning's time is so much later. */
  public void goOn(long ms) {
    ahead.addAndGet(ms);
  }

  @Override
  public long realMs() {
    return real.realMs();
  }

  @Override
  public long monotonicMs() {
    return real.monotonicMs();
  }

  @Override
  public long morningMs() {
    return real.morningMs() + ahead.get();
  }

  @Override
  public double rate() {
    return 1;
  }
}
