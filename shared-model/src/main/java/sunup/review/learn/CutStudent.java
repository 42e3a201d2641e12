package sunup.review.learn;

import sunup.review.stats.Chances;
import sunup.review.stats.NormalGamma;
import sunup.sheets.Hands;

/**
 * The predictive distribution of rule 4: Student's t in the logarithm of milliseconds, cut to its
 * central 99.9 % and renormalised, so that its mean after exp exists.
 */
public final class CutStudent {
  /** What is kept. */
  static final double CENTRAL = 0.999;

  /** Rule 4's weak prior: what the sheet's two numbers are worth. */
  static final double KAPPA = 6;

  static final double ALPHA = 3;

  private static final double MINUTE = 60_000;

  private CutStudent() {}

  /**
   * What a sheet's two numbers say before anything is learned: kappa 6, alpha 3, and beta such that
   * median and 90 % point of the predictive distribution are the sheet's.
   *
   * @param hands usual under one in ten, usual over 0
   */
  static NormalGamma prior(Hands hands) {
    double scale =
        StrictMath.log(hands.oneInTen() / hands.usual())
            / Chances.studentQuantile(whole(0.9), 2 * ALPHA);
    double beta = scale * scale * ALPHA * KAPPA / (KAPPA + 1);
    return new NormalGamma(StrictMath.log(hands.usual() * MINUTE), KAPPA, ALPHA, beta);
  }

  /** The place in the whole distribution of a place in the cut one. */
  private static double whole(double u) {
    return (1 - CENTRAL) / 2 + CENTRAL * u;
  }

  /** The u-quantile in milliseconds. */
  public static double quantileMs(NormalGamma of, double u) {
    return StrictMath.exp(of.quantile(whole(u)));
  }

  /** The mean in milliseconds: over 20,000 equal steps of chance. */
  public static double meanMs(NormalGamma of) {
    int steps = 20_000;
    double sum = 0;
    for (int i = 0; i < steps; i++) {
      sum += quantileMs(of, (i + 0.5) / steps);
    }
    return sum / steps;
  }

  /** Its two numbers as a sheet has them, in minutes to the hundredth. */
  static Hands hands(NormalGamma of) {
    double usual = hundredth(quantileMs(of, 0.5) / MINUTE);
    return new Hands(usual, Math.max(usual, hundredth(quantileMs(of, 0.9) / MINUTE)));
  }

  private static double hundredth(double minutes) {
    return Math.round(minutes * 100) / 100.0;
  }
}
