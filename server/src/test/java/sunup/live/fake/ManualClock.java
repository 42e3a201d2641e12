package sunup.live.fake;

import java.util.concurrent.atomic.AtomicLong;
import sunup.suites.Clock;

/** A clock that goes only when told. Morning and real time begin at the same moment. */
public final class ManualClock implements Clock {
  /** 2026-11-25 06:30 UTC. */
  public static final long START = 1_795_588_200_000L;

  private final AtomicLong passed = new AtomicLong();
  private final AtomicLong jumped = new AtomicLong();

  public void pass(long ms) {
    passed.addAndGet(ms);
  }

  /** Moves the morning's time alone. */
  public void jump(long ms) {
    jumped.addAndGet(ms);
  }

  @Override
  public long realMs() {
    return START + passed.get();
  }

  @Override
  public long monotonicMs() {
    return passed.get();
  }

  @Override
  public long morningMs() {
    return START + passed.get() + jumped.get();
  }

  @Override
  public double rate() {
    return 1;
  }
}
