package sunup.review.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
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
    return between(values, n, level);
  }

  /**
   * Intervals of several ratios of sums, all by the same drawings.
   *
   * @param clusters sums of each cluster, each with {@code columns} numbers, one after the other
   * @param ratios column above and column below of each
   * @return one each; null as in {@link #interval}
   */
  public static List<Interval> ratios(
      double[] clusters, int columns, int[][] ratios, double level, long seed) {
    int count = clusters.length / columns;
    List<Interval> intervals = new ArrayList<>();
    if (count < 2) {
      intervals.addAll(Collections.nCopies(ratios.length, null));
      return intervals;
    }
    SplittableRandom random = new SplittableRandom(seed);
    double[][] values = new double[ratios.length][DRAWS];
    int[] n = new int[ratios.length];
    double[] sums = new double[columns];
    for (int d = 0; d < DRAWS; d++) {
      Arrays.fill(sums, 0);
      for (int i = 0; i < count; i++) {
        int at = random.nextInt(count) * columns;
        for (int c = 0; c < columns; c++) {
          sums[c] += clusters[at + c];
        }
      }
      for (int r = 0; r < ratios.length; r++) {
        if (sums[ratios[r][1]] != 0) {
          values[r][n[r]++] = sums[ratios[r][0]] / sums[ratios[r][1]];
        }
      }
    }
    for (int r = 0; r < ratios.length; r++) {
      intervals.add(between(values[r], n[r], level));
    }
    return intervals;
  }

  private static Interval between(double[] values, int n, double level) {
    if (n < DRAWS - DRAWS / 20) {
      return null;
    }
    double[] kept = Arrays.copyOf(values, n);
    double tail = (1 - level) / 2;
    return new Interval(Quantiles.ofUnsorted(kept, tail), Quantiles.ofUnsorted(kept, 1 - tail));
  }
}
