package sunup.review.trial;

import sunup.review.Comparison.Difference;
import sunup.review.Comparison.Verdict;
import sunup.review.stats.Chances;
import sunup.review.stats.Interval;
import sunup.review.stats.MeanOfClusters;

/**
 * Calibration in the large: whether as many starts came on time as was said. Starts of one morning
 * go together, so the difference is the mean of clusters, and its interval Student's.
 *
 * @param said mean chance of a start on time
 * @param came share that came on time
 * @param off said less came: above 0 too hopeful, below 0 too gloomy
 */
public record InTheLarge(double said, double came, Difference off) {
  /** Fewer mornings are too few to say. */
  public static final int LEAST_MORNINGS = 10;

  private static final double LEVEL = 0.95;

  /**
   * @param off of the sums of said less came by morning, over the forecasts
   * @param came how many came on time
   * @param chance sum of p (1 - p) over the forecasts: as much do they scatter if what was said is
   *     right. Where hardly any start was late, what came scatters less by chance, and a board that
   *     is right would seem wrong.
   */
  static InTheLarge of(MeanOfClusters off, double came, double chance) {
    double share = came / off.n();
    double least = chance / (off.n() * off.n());
    return new InTheLarge(off.mean() + share, share, judged(off, 0, least));
  }

  /**
   * A mean of mornings beside what it would be if nothing were amiss.
   *
   * @param none that value
   * @param leastVariance of the mean
   * @return the mean less that value
   */
  static Difference judged(MeanOfClusters of, double none, double leastVariance) {
    if (of.clusters() < LEAST_MORNINGS) {
      return Difference.TOO_FEW;
    }
    double variance = Math.max(leastVariance, of.variance());
    Interval mean = of.interval(LEVEL, Double.NEGATIVE_INFINITY, variance);
    double value = of.mean() - none;
    double error = Math.sqrt(variance);
    double t = Math.abs(value) / error;
    double p =
        error == 0
            ? (value == 0 ? 1 : 0)
            : Math.min(1, 2 * Chances.studentLower(-t, of.clusters() - 1));
    Interval interval = new Interval(mean.lower() - none, mean.upper() - none);
    return new Difference(Verdict.NONE_SEEN, value, null, interval, p, p).adjusted(p);
  }
}
