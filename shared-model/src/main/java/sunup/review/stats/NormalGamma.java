package sunup.review.stats;

import java.util.List;

/**
 * What is known of a normal quantity whose mean and variance are not known: the
 * normal-inverse-gamma distribution (P. D. Hoff, A First Course in Bayesian Statistical Methods,
 * 2009, pp. 73-76). The order in which values are learned does not matter.
 *
 * @param mu where the mean is believed to be
 * @param kappa how many values that belief is worth
 * @param alpha half of how many values the variance's belief is worth
 * @param beta half of their sum of squares
 */
public record NormalGamma(double mu, double kappa, double alpha, double beta) {
  /** After more values. */
  public NormalGamma learned(List<Double> values) {
    int n = values.size();
    if (n == 0) {
      return this;
    }
    double mean = Quantiles.mean(values);
    double squares = values.stream().mapToDouble(y -> (y - mean) * (y - mean)).sum();
    double off = mean - mu;
    return new NormalGamma(
        (kappa * mu + n * mean) / (kappa + n),
        kappa + n,
        alpha + n / 2.0,
        beta + squares / 2 + kappa * n * off * off / (2 * (kappa + n)));
  }

  /** Degrees of freedom of the predictive Student-t of one more value. */
  public double degrees() {
    return 2 * alpha;
  }

  /** Its scale; its location is {@link #mu()}. */
  public double scale() {
    return Math.sqrt(beta * (kappa + 1) / (alpha * kappa));
  }

  /** The u-quantile of one more value, the predictive distribution taken whole. */
  public double quantile(double u) {
    return mu + scale() * Chances.studentQuantile(u, degrees());
  }
}
