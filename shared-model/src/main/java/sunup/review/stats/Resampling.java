package sunup.review.stats;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/**
 * The bootstrap over clusters: whole mornings are drawn with replacement, so that cases of one
 * morning stay together (A. C. Davison and D. V. Hinkley, Bootstrap Methods and their Application,
 * 1997, ch. 3 - from memory). The interval is between the percentiles of what came out.
 */
public final class Resampling {
  /** So many mornings' drawings. */
  public static final int DRAWS = 2_000;

  private Resampling() {}

  /**
   * @param clusters how many there are
   * @param statistic of how often each cluster was drawn; NaN where it has no value
   * @return null for fewer than two clusters, or if one drawing in twenty has no value
   */
  public static Interval interval(
      int clusters, ToDoubleFunction<int[]> statistic, double level, long seed) {
    if (clusters < 2) {
      return null;
    }
    SplittableRandom random = new SplittableRandom(seed);
    double[] values = new double[DRAWS];
    int n = 0;
    for (int d = 0; d < DRAWS; d++) {
      int[] times = new int[clusters];
      for (int i = 0; i < clusters; i++) {
        times[random.nextInt(clusters)]++;
      }
      double value = statistic.applyAsDouble(times);
      if (!Double.isNaN(value)) {
        values[n++] = value;
      }
    }
    if (n < DRAWS - DRAWS / 20) {
      return null;
    }
    double[] kept = Arrays.copyOf(values, n);
    double tail = (1 - level) / 2;
    return new Interval(Quantiles.ofUnsorted(kept, tail), Quantiles.ofUnsorted(kept, 1 - tail));
  }
}
