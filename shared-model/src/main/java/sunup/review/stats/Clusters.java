package sunup.review.stats;

import java.util.List;

/**
 * Shares counted in clusters: the starts of one morning go together (one slow pharmacy delays six
 * of them), so that they tell less than as many mornings would.
 *
 * @param x how many of them
 * @param n of how many
 * @param clusters of how many mornings
 * @param effect how many times the variance of independent starts the share has, at least 1 (L.
 *     Kish, Survey Sampling, 1965; the variance is that of a ratio, W. G. Cochran, Sampling
 *     Techniques, 3rd ed. 1977, 6.3); 1 where it can't be told: one morning, or a share of 0 or 1
 */
public record Clusters(double x, double n, int clusters, double effect) {
  /** One cluster: {@code x} of {@code n}. */
  public record Cluster(double x, double n) {}

  /** Counts the clusters together. */
  public static Clusters of(List<Cluster> clusters) {
    double x = clusters.stream().mapToDouble(Cluster::x).sum();
    double n = clusters.stream().mapToDouble(Cluster::n).sum();
    int m = clusters.size();
    double p = n == 0 ? 0 : x / n;
    double squares = 0;
    for (Cluster c : clusters) {
      double off = c.x() - p * c.n();
      squares += off * off;
    }
    return of(x, n, m, squares);
  }

  /**
   * The same from sums over all clusters, as a database adds them up.
   *
   * @param clusters how many
   * @param xx sum of x squared
   * @param xn sum of x times n
   * @param nn sum of n squared
   */
  public static Clusters ofSums(double x, double n, int clusters, double xx, double xn, double nn) {
    double p = n == 0 ? 0 : x / n;
    return of(x, n, clusters, Math.max(0, xx - 2 * p * xn + p * p * nn));
  }

  private static Clusters of(double x, double n, int m, double squares) {
    double p = n == 0 ? 0 : x / n;
    if (m < 2 || p <= 0 || p >= 1) {
      return new Clusters(x, n, m, 1);
    }
    double variance = (double) m / (m - 1) * squares / (n * n);
    return new Clusters(x, n, m, Math.max(1, variance / (p * (1 - p) / n)));
  }

  /** Wilson's interval as if the starts were independent. */
  public Interval plain(double level) {
    return Proportions.wilson(x, n, level);
  }

  /** Wilson's interval at the effective number of starts, n / effect. */
  public Interval adjusted(double level) {
    return Proportions.wilson(x / effect, n / effect, level);
  }

  /** Newcombe's interval of this share less the other one, both at their effective numbers. */
  public Interval less(Clusters other, double level) {
    return Proportions.difference(
        x / effect, n / effect, other.x / other.effect, other.n / other.effect, level);
  }
}
