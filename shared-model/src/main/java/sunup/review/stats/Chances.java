package sunup.review.stats;

import sunup.forecast.Normal;

/**
 * Chances and quantiles of the distributions that the review needs. The incomplete gamma and beta
 * functions are computed by their power series and continued fractions (Abramowitz and Stegun,
 * Handbook of Mathematical Functions, 1964: 6.5.29, 6.5.31, 26.5.8; the fractions by Lentz's way).
 */
public final class Chances {
  private static final double TINY = 1e-300;
  private static final double EPSILON = 1e-15;
  private static final int ROUNDS = 10_000;

  private Chances() {}

  /** The z with P(Z <= z) = u, 0 < u < 1. */
  public static double normalQuantile(double u) {
    return Normal.quantile(u);
  }

  /** P(Z > z) of the standard normal distribution. */
  public static double normalUpper(double z) {
    return Normal.upper(z);
  }

  /** P(|Z| > |z|). */
  public static double normalBoth(double z) {
    return Math.min(1, 2 * Normal.upper(Math.abs(z)));
  }

  /** P(X > x) of the chi-square distribution with so many degrees of freedom. */
  public static double chiSquareUpper(double x, double degrees) {
    return x <= 0 ? 1 : gammaUpper(degrees / 2, x / 2);
  }

  /** P(T <= t) of Student's t. */
  public static double studentLower(double t, double degrees) {
    double tail = betaLower(degrees / 2, 0.5, degrees / (degrees + t * t)) / 2;
    return t > 0 ? 1 - tail : tail;
  }

  /** The t with P(T <= t) = u, 0 < u < 1, by halving. */
  public static double studentQuantile(double u, double degrees) {
    if (!(u > 0 && u < 1)) {
      throw new IllegalArgumentException("a quantile needs a chance between 0 and 1, not " + u);
    }
    if (u < 0.5) {
      return -studentQuantile(1 - u, degrees);
    }
    double low = 0;
    double high = 1;
    while (studentLower(high, degrees) < u && high < 1e150) {
      low = high;
      high *= 2;
    }
    for (int i = 0; i < 200 && high - low > 1e-14 * high; i++) {
      double middle = (low + high) / 2;
      if (studentLower(middle, degrees) < u) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Upper regularised incomplete gamma function Q(a, x). */
  static double gammaUpper(double a, double x) {
    if (x <= 0) {
      return 1;
    }
    double front = StrictMath.exp(a * StrictMath.log(x) - x - logGamma(a));
    if (x < a + 1) {
      double term = 1 / a;
      double sum = term;
      for (int n = 1; n < ROUNDS && term > sum * EPSILON; n++) {
        term *= x / (a + n);
        sum += term;
      }
      return 1 - front * sum;
    }
    double b = x + 1 - a;
    double c = 1 / TINY;
    double d = 1 / b;
    double f = d;
    for (int i = 1; i < ROUNDS; i++) {
      double an = -i * (i - a);
      b += 2;
      d = 1 / away(an * d + b);
      c = away(b + an / c);
      double step = c * d;
      f *= step;
      if (Math.abs(step - 1) < EPSILON) {
        break;
      }
    }
    return front * f;
  }

  /** Lower regularised incomplete beta function I_x(a, b). */
  static double betaLower(double a, double b, double x) {
    if (x <= 0 || x >= 1) {
      return x <= 0 ? 0 : 1;
    }
    if (x > (a + 1) / (a + b + 2)) {
      return 1 - betaLower(b, a, 1 - x);
    }
    double logFront =
        logGamma(a + b)
            - logGamma(a)
            - logGamma(b)
            + a * StrictMath.log(x)
            + b * StrictMath.log1p(-x);
    double c = 1;
    double d = 1 / away(1 - (a + b) * x / (a + 1));
    double f = d;
    for (int m = 1; m < ROUNDS; m++) {
      double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
      d = 1 / away(1 + even * d);
      c = away(1 + even / c);
      f *= c * d;
      double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
      d = 1 / away(1 + odd * d);
      c = away(1 + odd / c);
      double step = c * d;
      f *= step;
      if (Math.abs(step - 1) < EPSILON) {
        break;
      }
    }
    return StrictMath.exp(logFront) * f / a;
  }

  private static double away(double x) {
    return Math.abs(x) < TINY ? TINY : x;
  }

  /** ln Gamma(x), x > 0: Stirling's series, reached by the recurrence from below 15. */
  static double logGamma(double x) {
    double shift = 0;
    double y = x;
    while (y < 15) {
      shift += StrictMath.log(y);
      y += 1;
    }
    double r = 1 / (y * y);
    double series =
        (1.0 / 12 - r * (1.0 / 360 - r * (1.0 / 1260 - r * (1.0 / 1680 - r / 1188)))) / y;
    return (y - 0.5) * StrictMath.log(y) - y + 0.5 * StrictMath.log(2 * Math.PI) + series - shift;
  }
}
