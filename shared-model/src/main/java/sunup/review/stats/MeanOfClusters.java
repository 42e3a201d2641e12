package sunup.review.stats;

/**
 * A mean of what comes in clusters: late minutes of starts that go together by morning. The mean is
 * the ratio of two sums over mornings, its variance that of a ratio (W. G. Cochran, Sampling
 * Techniques, 3rd ed. 1977, 6.3; no finite population), its interval by Student's t with a degree
 * of freedom less than there are mornings. Sums over mornings are all that it needs.
 *
 * @param clusters how many
 * @param x sum over all of what is averaged
 * @param n sum over all of what it is averaged over
 * @param xx sum of x squared
 * @param xn sum of x times n
 * @param nn sum of n squared
 */
public record MeanOfClusters(int clusters, double x, double n, double xx, double xn, double nn) {
  public double mean() {
    return x / n;
  }

  /** Of the mean; asked for two clusters or more. */
  public double variance() {
    return (double) clusters / (clusters - 1) * offs() / (n * n);
  }

  /** Sum of the squares of x - mean n. */
  double offs() {
    double mean = mean();
    return Math.max(0, xx - 2 * mean * xn + mean * mean * nn);
  }

  /**
   * @param level for example 0.95
   * @param least no mean can be less
   * @return null for fewer than two clusters
   */
  public Interval interval(double level, double least) {
    return clusters < 2 || n <= 0 ? null : interval(level, least, variance());
  }

  /** The same with a variance that is known otherwise. Asked for two clusters or more. */
  public Interval interval(double level, double least, double variance) {
    double t = Chances.studentQuantile((1 + level) / 2, clusters - 1);
    double reach = t * Math.sqrt(variance);
    return new Interval(Math.max(least, mean() - reach), mean() + reach);
  }
}
