package sunup.review.facts;

import java.util.Collection;

/** The rule of few: what rests on fewer starts than {@link #LEAST_STARTS} is not shown. */
public final class Withheld {
  public static final int LEAST_STARTS = 10;

  private Withheld() {}

  /** True if so many starts are too few to show anything of them. */
  public static boolean isWithheld(int starts) {
    return starts < LEAST_STARTS;
  }

  /** The same of facts. */
  public static boolean isWithheld(Collection<FirstCaseFact> facts) {
    return isWithheld((int) facts.stream().filter(FirstCaseFact::hasStarted).count());
  }
}
