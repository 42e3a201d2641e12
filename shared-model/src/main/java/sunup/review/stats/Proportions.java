package sunup.review.stats;

/**
 * Intervals of shares and of their differences. None for nothing counted: null, never 0.
 *
 * <p>Counts may be broken: where starts of one morning go together, share and count are those of an
 * effective number ({@link Clusters}).
 */
public final class Proportions {
  private Proportions() {}

  /**
   * Wilson's score interval (R. G. Newcombe, Two-sided confidence intervals for the single
   * proportion, Stat Med 17 (1998) 857-872, method 3).
   *
   * @param x how many of them
   * @param n of how many
   * @param level for example 0.95
   * @return null if n is 0
   */
  public static Interval wilson(double x, double n, double level) {
    if (!(x >= 0 && x <= n)) {
      throw new IllegalArgumentException("a share needs 0 <= x <= n, not " + x + " of " + n);
    }
    if (n == 0) {
      return null;
    }
    double z = Chances.normalQuantile((1 + level) / 2);
    double p = x / n;
    double middle = 2 * x + z * z;
    double reach = z * Math.sqrt(z * z + 4 * x * (1 - p));
    double below = 2 * (n + z * z);
    return new Interval(
        x == 0 ? 0 : Math.max(0, (middle - reach) / below),
        x == n ? 1 : Math.min(1, (middle + reach) / below));
  }

  /**
   * The difference x1/n1 - x2/n2 by two Wilson intervals (R. G. Newcombe, Interval estimation for
   * the difference between independent proportions, Stat Med 17 (1998) 873-890, method 10).
   *
   * @return null if one of the counts is 0
   */
  public static Interval difference(double x1, double n1, double x2, double n2, double level) {
    Interval one = wilson(x1, n1, level);
    Interval two = wilson(x2, n2, level);
    if (one == null || two == null) {
      return null;
    }
    double p1 = x1 / n1;
    double p2 = x2 / n2;
    double down = Math.hypot(p1 - one.lower(), two.upper() - p2);
    double up = Math.hypot(one.upper() - p1, p2 - two.lower());
    return new Interval(p1 - p2 - down, p1 - p2 + up);
  }
}
