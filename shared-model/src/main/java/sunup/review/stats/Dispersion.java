package sunup.review.stats;

import java.util.List;

/**
 * Whether counts vary more than chance alone would have them (G. B. Wetherill and D. W. Brown,
 * Statistical Process Control, 1991, pp. 212-218): n - 1 times the observed over the theoretical
 * variance, against chi-square with n - 1 degrees of freedom.
 *
 * @param ratio observed over theoretical variance; 1 by chance alone
 * @param statistic (n - 1) times the ratio
 * @param degrees n - 1
 * @param p chance of so much or more if nothing but chance is at work
 */
public record Dispersion(double ratio, double statistic, int degrees, double p) {
  private static Dispersion of(double statistic, int points) {
    int degrees = points - 1;
    return new Dispersion(
        statistic / degrees, statistic, degrees, Chances.chiSquareUpper(statistic, degrees));
  }

  /**
   * Shares: the sum over points of (p_i - mean)^2 / (mean (1 - mean) / n_i). With equal n it is the
   * statistic above.
   *
   * @return null for fewer than two points with cases, or if all or none of the cases count
   */
  public static Dispersion ofShares(List<Integer> x, List<Integer> n) {
    double cases = n.stream().mapToInt(Integer::intValue).sum();
    double mean = cases == 0 ? 0 : x.stream().mapToInt(Integer::intValue).sum() / cases;
    int points = (int) n.stream().filter(k -> k > 0).count();
    if (points < 2 || mean <= 0 || mean >= 1) {
      return null;
    }
    double sum = 0;
    for (int i = 0; i < n.size(); i++) {
      if (n.get(i) > 0) {
        double off = (double) x.get(i) / n.get(i) - mean;
        sum += off * off * n.get(i) / (mean * (1 - mean));
      }
    }
    return of(sum, points);
  }

  /**
   * Counts of which the mean is the theoretical variance (Poisson).
   *
   * @return null for fewer than two, or if all are 0
   */
  public static Dispersion ofCounts(List<Integer> counts) {
    double mean = counts.stream().mapToInt(Integer::intValue).average().orElse(0);
    if (counts.size() < 2 || mean == 0) {
      return null;
    }
    double sum = counts.stream().mapToDouble(c -> (c - mean) * (c - mean) / mean).sum();
    return of(sum, counts.size());
  }
}
