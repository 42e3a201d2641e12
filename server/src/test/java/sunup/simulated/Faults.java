package sunup.simulated;

import java.util.SplittableRandom;

/** What goes wrong and how often, drawn from a seed. */
public final class Faults {
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
}
