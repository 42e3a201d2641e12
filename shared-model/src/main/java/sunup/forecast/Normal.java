package sunup.forecast;

/**
 * The standard normal distribution. Only arithmetic and {@link StrictMath}, so that the bits are
 * the same on every machine.
 */
@SuppressWarnings("FloatingPointLiteralPrecision") // coefficients with their published digits
public final class Normal {
  private Normal() {}

  private static final double A0 = 3.3871328727963666080e0;
  private static final double A1 = 1.3314166789178437745e+2;
  private static final double A2 = 1.9715909503065514427e+3;
  private static final double A3 = 1.3731693765509461125e+4;
  private static final double A4 = 4.5921953931549871457e+4;
  private static final double A5 = 6.7265770927008700853e+4;
  private static final double A6 = 3.3430575583588128105e+4;
  private static final double A7 = 2.5090809287301226727e+3;
  private static final double B0 = 1.0;
  private static final double B1 = 4.2313330701600911252e+1;
  private static final double B2 = 6.8718700749205790830e+2;
  private static final double B3 = 5.3941960214247511077e+3;
  private static final double B4 = 2.1213794301586595867e+4;
  private static final double B5 = 3.9307895800092710610e+4;
  private static final double B6 = 2.8729085735721942674e+4;
  private static final double B7 = 5.2264952788528545610e+3;

  private static final double[] C = {
    1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0,
    3.64784832476320460504e0, 1.27045825245236838258e0, 2.41780725177450611770e-1,
    2.27238449892691845833e-2, 7.74545014278341407640e-4
  };
  private static final double[] D = {
    1.0,
    2.05319162663775882187e0,
    1.67638483018380384940e0,
    6.89767334985100004550e-1,
    1.48103976427480074590e-1,
    1.51986665636164571966e-2,
    5.47593808499534494600e-4,
    1.05075007164441684324e-9
  };
  private static final double[] E = {
    6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0,
    2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
    2.71155556874348757815e-5, 2.01033439929228813265e-7
  };
  private static final double[] F = {
    1.0,
    5.99832206555887937690e-1,
    1.36929880922735805310e-1,
    1.48753612908506148525e-2,
    7.86869131145613259100e-4,
    1.84631831751005468180e-5,
    1.42151175831644588870e-7,
    2.04426310338993978564e-15
  };

  /**
   * The z with P(Z <= z) = u, for 0 < u < 1. M. J. Wichura, "Algorithm AS 241: the percentage
   * points of the normal distribution", Applied Statistics 37 (1988), 477-484, PPND16.
   */
  public static double quantile(double u) {
    return isTail(u) ? tail(u) : central(u);
  }

  static boolean isTail(double u) {
    return Math.abs(u - 0.5) > 0.425;
  }

  /** The quantiles of so many u that are no tails; of tails something else. */
  static void central(double[] u, double[] z, int n) {
    for (int k = 0; k < n; k++) {
      z[k] = central(u[k]);
    }
  }

  private static double central(double u) {
    double q = u - 0.5;
    double r = 0.180625 - q * q;
    double above = ((((((A7 * r + A6) * r + A5) * r + A4) * r + A3) * r + A2) * r + A1) * r + A0;
    double below = ((((((B7 * r + B6) * r + B5) * r + B4) * r + B3) * r + B2) * r + B1) * r + B0;
    return q * (above / below);
  }

  /** The quantile of a u in a tail. */
  static double tail(double u) {
    double q = u - 0.5;
    double r = Math.sqrt(-Elementary.log(q < 0 ? u : 1 - u));
    double z = r <= 5 ? ratio(C, D, r - 1.6) : ratio(E, F, r - 5);
    return q < 0 ? -z : z;
  }

  private static double ratio(double[] a, double[] b, double r) {
    double p =
        ((((((a[7] * r + a[6]) * r + a[5]) * r + a[4]) * r + a[3]) * r + a[2]) * r + a[1]) * r
            + a[0];
    double q =
        ((((((b[7] * r + b[6]) * r + b[5]) * r + b[4]) * r + b[3]) * r + b[2]) * r + b[1]) * r
            + b[0];
    return p / q;
  }

  /** The z with P(Z > z) = q; exact also where q is so small that 1 - q is 1. */
  static double upperQuantile(double q) {
    return -quantile(q);
  }

  /**
   * P(Z > z). J. F. Hart et al., Computer Approximations (1968), algorithm 5666, in the form of G.
   * West, "Better approximations to cumulative normal functions", Wilmott (2005).
   */
  public static double upper(double z) {
    double x = Math.abs(z);
    double tail;
    if (x > 37) {
      tail = 0;
    } else {
      double e = StrictMath.exp(-x * x / 2);
      if (x < 7.07106781186547) {
        double n = 3.52624965998911e-2 * x + 0.700383064443688;
        n = n * x + 6.37396220353165;
        n = n * x + 33.912866078383;
        n = n * x + 112.079291497871;
        n = n * x + 221.213596169931;
        n = n * x + 220.206867912376;
        double d = 8.83883476483184e-2 * x + 1.75566716318264;
        d = d * x + 16.064177579207;
        d = d * x + 86.7807322029461;
        d = d * x + 296.564248779674;
        d = d * x + 637.333633378831;
        d = d * x + 793.826512519948;
        d = d * x + 440.413735824752;
        tail = e * n / d;
      } else {
        double d = x + 0.65;
        d = x + 4 / d;
        d = x + 3 / d;
        d = x + 2 / d;
        d = x + 1 / d;
        tail = e / d / 2.506628274631;
      }
    }
    return z > 0 ? tail : 1 - tail;
  }

  /** P(Z <= z). */
  public static double lower(double z) {
    return upper(-z);
  }
}
