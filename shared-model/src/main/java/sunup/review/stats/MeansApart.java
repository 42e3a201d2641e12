package sunup.review.stats;

/**
 * One mean less another, of clusters that they don't share: two periods. Its variance is the larger
 * of two: each side's own (B. L. Welch, Biometrika 34 (1947) 28-35, degrees of freedom by F. E.
 * Satterthwaite, Biometrics Bulletin 2 (1946) 110-114), or the one that both sides have together.
 * The first alone takes what never happened on a short side for sure; the second alone takes a side
 * that scatters more for as steady as the other.
 *
 * @param value first less second
 * @param variance of it; 0 where nothing varies
 * @param degrees of freedom of Student's t
 */
public record MeansApart(double value, double variance, double degrees) {
  /** Sides of one size have both variances alike, but for rounding: Welch's degrees count then. */
  private static final double ROUNDING = 1e-9;

  /** Asked for two clusters or more on each side. */
  public static MeansApart of(MeanOfClusters one, MeanOfClusters other) {
    double value = one.mean() - other.mean();
    MeansApart own = own(value, one, other);
    MeansApart together = together(value, one, other);
    return own.variance * (1 + ROUNDING) >= together.variance ? own : together;
  }

  /** By each side's own variance: Welch's. */
  static MeansApart own(double value, MeanOfClusters one, MeanOfClusters other) {
    double v = one.variance();
    double w = other.variance();
    double both = v + w;
    double degrees =
        both == 0
            ? 1
            : both * both / (v * v / (one.clusters() - 1) + w * w / (other.clusters() - 1));
    return new MeansApart(value, both, degrees);
  }

  private static MeansApart together(double value, MeanOfClusters one, MeanOfClusters other) {
    double degrees = one.clusters() + other.clusters() - 2.0;
    double scatter = (one.offs() + other.offs()) / degrees;
    return new MeansApart(value, scatter * (perCluster(one) + perCluster(other)), degrees);
  }

  private static double perCluster(MeanOfClusters of) {
    return of.clusters() / (of.n() * of.n());
  }

  /**
   * @param level for example 0.95
   */
  public Interval interval(double level) {
    double t = Chances.studentQuantile((1 + level) / 2, degrees);
    double reach = t * Math.sqrt(variance);
    return new Interval(value - reach, value + reach);
  }

  /** The chance of so large a difference, either way, if there is none: as the interval has it. */
  public double p() {
    if (variance == 0) {
      return 1;
    }
    return Math.min(1, 2 * Chances.studentLower(-Math.abs(value) / Math.sqrt(variance), degrees));
  }
}
