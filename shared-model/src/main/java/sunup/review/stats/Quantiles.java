package sunup.review.stats;

import java.util.Arrays;
import java.util.Collection;

/** Quantiles and means of what was counted. */
public final class Quantiles {
  private Quantiles() {}

  /**
   * The q-quantile: between the order statistics around position (n - 1) q + 1, in proportion (R.
   * J. Hyndman and Y. Fan, Sample quantiles in statistical packages, Am Stat 50 (1996) 361-365,
   * definition 7). Its value at one half is the usual median.
   *
   * @return null of nothing
   */
  public static Double of(Collection<? extends Number> values, double q) {
    double[] sorted = values.stream().mapToDouble(Number::doubleValue).sorted().toArray();
    return sorted.length == 0 ? null : Double.valueOf(ofSorted(sorted, q));
  }

  static double ofSorted(double[] sorted, double q) {
    double at = (sorted.length - 1) * q;
    int below = (int) Math.floor(at);
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
  }

  static double ofUnsorted(double[] values, double q) {
    double[] copy = values.clone();
    Arrays.sort(copy);
    return ofSorted(copy, q);
  }

  /** The mean, or null of nothing. */
  public static Double mean(Collection<? extends Number> values) {
    return values.isEmpty()
        ? null
        : Double.valueOf(values.stream().mapToDouble(Number::doubleValue).sum() / values.size());
  }
}
