package sunup.forecast;

/**
 * The beta distribution on [0, 1], for the three-point durations of textbook cases. The regularised
 * incomplete beta function by its continued fraction (modified Lentz), as in Abramowitz and Stegun,
 * Handbook of Mathematical Functions (1964), 26.5.8; the quantile by bisection.
 */
final class BetaPert {
  private static final int BISECTIONS = 52;
  private static final int TERMS = 300;
  private static final double TINY = 1e-300;

  private final double a;
  private final double b;
  private final double front;

  BetaPert(double a, double b) {
    this.a = a;
    this.b = b;
    this.front = StrictMath.exp(logGamma(a + b) - logGamma(a) - logGamma(b));
  }

  double quantile(double u) {
    double low = 0;
    double high = 1;
    for (int i = 0; i < BISECTIONS; i++) {
      double mid = (low + high) / 2;
      if (lower(mid) < u) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return (low + high) / 2;
  }

  double lower(double x) {
    if (x <= 0) {
      return 0;
    }
    if (x >= 1) {
      return 1;
    }
    double scale = front * StrictMath.pow(x, a) * StrictMath.pow(1 - x, b);
    return x < (a + 1) / (a + b + 2)
        ? scale * fraction(a, b, x) / a
        : 1 - scale * fraction(b, a, 1 - x) / b;
  }

  private static double fraction(double a, double b, double x) {
    double c = 1;
    double d = 1 / guard(1 - (a + b) * x / (a + 1));
    double h = d;
    for (int m = 1; m <= TERMS; m++) {
      double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
      d = 1 / guard(1 + even * d);
      c = guard(1 + even / c);
      h *= d * c;
      double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
      d = 1 / guard(1 + odd * d);
      c = guard(1 + odd / c);
      double step = d * c;
      h *= step;
      if (Math.abs(step - 1) < 1e-15) {
        break;
      }
    }
    return h;
  }

  private static double guard(double v) {
    return Math.abs(v) < TINY ? TINY : v;
  }

  /** Stirling's series after shifting the argument to 10 or more. */
  private static double logGamma(double x) {
    double shift = 0;
    double y = x;
    while (y < 10) {
      shift += StrictMath.log(y);
      y += 1;
    }
    double r = 1 / (y * y);
    double series = (1.0 / 12 - r * (1.0 / 360 - r * (1.0 / 1260 - r / 1680))) / y;
    return (y - 0.5) * StrictMath.log(y) - y + 0.5 * StrictMath.log(2 * Math.PI) + series - shift;
  }
}
