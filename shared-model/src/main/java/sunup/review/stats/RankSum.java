package sunup.review.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * Wilcoxon's rank sum test in the form of Mann and Whitney, and the shift of Hodges and Lehmann (M.
 * Hollander and D. A. Wolfe, Nonparametric Statistical Methods, 1973, ch. 4). Exact while both have
 * at most 50 values and none are equal; else the normal approximation with the correction for ties
 * and for continuity.
 *
 * @param w pairs with x above y, equal ones counting one half
 * @param exact true if the chances are exact
 * @param pGreater chance of so large a w or larger if both come from one distribution
 * @param pLess of so small a w or smaller
 * @param pBoth twice the smaller of both, at most 1
 * @param shift median of all x - y
 * @param interval of the shift, or null where it is not exact
 */
public record RankSum(
    double w,
    boolean exact,
    double pGreater,
    double pLess,
    double pBoth,
    double shift,
    Interval interval) {
  private static final int EXACT_MAX = 50;

  /**
   * @return null if one of them is empty
   */
  public static RankSum of(List<Double> x, List<Double> y, double level) {
    if (x.isEmpty() || y.isEmpty()) {
      return null;
    }
    double w = 0;
    List<Double> differences = new ArrayList<>();
    for (double a : x) {
      for (double b : y) {
        w += a > b ? 1 : a == b ? 0.5 : 0;
        differences.add(a - b);
      }
    }
    differences.sort(null);
    double shift = Quantiles.of(differences, 0.5);
    List<Double> all = new ArrayList<>(x);
    all.addAll(y);
    boolean ties = all.stream().distinct().count() < all.size();
    if (ties || x.size() > EXACT_MAX || y.size() > EXACT_MAX) {
      return approximate(w, x.size(), y.size(), all, shift);
    }
    double[] upTo = upTo(x.size(), y.size());
    int at = (int) w;
    double less = upTo[at];
    double greater = at == 0 ? 1 : 1 - upTo[at - 1];
    return new RankSum(
        w,
        true,
        greater,
        less,
        Math.min(1, 2 * Math.min(greater, less)),
        shift,
        interval(differences, upTo, level));
  }

  private static Interval interval(List<Double> differences, double[] upTo, double level) {
    int k = 0;
    while (k < upTo.length - 1 && upTo[k] <= (1 - level) / 2) {
      k++;
    }
    k = Math.max(1, k);
    return k > differences.size() / 2
        ? null
        : new Interval(differences.get(k - 1), differences.get(differences.size() - k));
  }

  /** P(W <= k) for each k: counts of ways by adding one value after the other. */
  private static double[] upTo(int n, int m) {
    double[][] ways = new double[n + 1][n * m + 1];
    ways[0][0] = 1;
    for (int rank = 1; rank <= n + m; rank++) {
      for (int j = Math.min(rank, n); j >= 1; j--) {
        int above = rank - j;
        if (above > m) {
          continue;
        }
        for (int s = n * m; s >= above; s--) {
          ways[j][s] += ways[j - 1][s - above];
        }
      }
    }
    double[] sums = new double[n * m + 1];
    double sum = 0;
    for (int s = 0; s <= n * m; s++) {
      sum += ways[n][s];
      sums[s] = sum;
    }
    for (int s = 0; s <= n * m; s++) {
      sums[s] /= sum;
    }
    return sums;
  }

  private static RankSum approximate(double w, int n, int m, List<Double> all, double shift) {
    List<Double> sorted = all.stream().sorted().toList();
    double ties = 0;
    int from = 0;
    for (int i = 1; i <= sorted.size(); i++) {
      if (i == sorted.size() || !sorted.get(i).equals(sorted.get(from))) {
        double t = i - from;
        ties += t * t * t - t;
        from = i;
      }
    }
    double total = n + m;
    double variance = n * (double) m / 12 * (total + 1 - ties / (total * (total - 1)));
    if (variance <= 0) {
      return new RankSum(w, false, 1, 1, 1, shift, null);
    }
    double deviation = Math.sqrt(variance);
    double off = w - n * (double) m / 2;
    double greater = Chances.normalUpper((off - 0.5) / deviation);
    double less = Chances.normalUpper((-off - 0.5) / deviation);
    return new RankSum(
        w, false, greater, less, Math.min(1, 2 * Math.min(greater, less)), shift, null);
  }
}
