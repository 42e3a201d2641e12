package sunup.simulated;

import java.util.List;
import java.util.SplittableRandom;

/** What goes wrong and how often, drawn from a seed. */
public final class Faults implements DiskFaults {
  private static final List<Doubt> DOUBTS = List.of(Doubt.values());

  private final SplittableRandom random;
  private final boolean any;
  private boolean on = true;

  private Faults(SplittableRandom random, boolean any) {
    this.random = random;
    this.any = any;
  }

  public static Faults of(SplittableRandom random) {
    return new Faults(random, true);
  }

  /** Nothing goes wrong and nothing takes time. */
  public static Faults none() {
    return new Faults(new SplittableRandom(0), false);
  }

  /** From now on nothing goes wrong. */
  public void stop() {
    on = false;
  }

  /** True in so many of a thousand cases. */
  boolean strikes(int ofThousand) {
    return any && random.nextInt(1000) < ofThousand && on;
  }

  /** Mostly short, seldom long, milliseconds. */
  long delay(long usual, long longest) {
    if (!any) {
      return 0;
    }
    return strikes(30) ? random.nextLong(longest) : random.nextLong(usual + 1);
  }

  int upTo(int bound) {
    return random.nextInt(bound);
  }

  @Override
  public boolean takeOverFails() {
    return strikes(60);
  }

  @Override
  public boolean takeOverInDoubt() {
    return strikes(60);
  }

  @Override
  public boolean writeFails() {
    return strikes(20);
  }

  @Override
  public Doubt commit() {
    return strikes(25) ? DOUBTS.get(upTo(DOUBTS.size())) : null;
  }

  @Override
  public long laterMs() {
    return 1L + upTo(400);
  }

  @Override
  public boolean commitOutlivesDeath() {
    return upTo(2) == 0;
  }

  @Override
  public boolean readFails() {
    return strikes(40);
  }

  @Override
  public long delay(Step step, long usual, long longest) {
    return delay(usual, longest);
  }
}
