package sunup.forecast;

/**
 * Exponential and natural logarithm in plain IEEE 754 arithmetic: the same bits on every machine
 * (as {@link StrictMath}'s), but without a call and short enough to be inlined. Both are tested
 * against {@link StrictMath} to stay within two units in the last place.
 */
final class Elementary {
  /** Steps of the table: e^x = 2^(n / STEPS) e^r with r at most half a step. */
  private static final int STEPS = 64;

  private static final int STEP_BITS = 6;
  private static final double[] POWERS = new double[STEPS];
  private static final double PER_STEP = STEPS / StrictMath.log(2);

  /** ln 2 / STEPS in two parts; multiples of the first below 2^20 are exact. */
  private static final double STEP_HIGH =
      Double.longBitsToDouble(Double.doubleToRawLongBits(StrictMath.log(2) / STEPS) & -1L << 24);

  private static final double STEP_LOW =
      (StrictMath.log(2) / STEPS - STEP_HIGH) + 2.3190468138462996e-17 / STEPS;

  /** Adding and taking off this rounds to a whole number. */
  private static final double ROUND = 0x1.8p52;

  /** Beyond these the result is not an ordinary number. */
  private static final double MOST = 700;

  private static final double LN2_HIGH =
      Double.longBitsToDouble(Double.doubleToRawLongBits(StrictMath.log(2)) & -1L << 24);
  private static final double LN2_LOW = (StrictMath.log(2) - LN2_HIGH) + 2.3190468138462996e-17;
  private static final double ROOT_HALF = Math.sqrt(0.5);

  static {
    for (int k = 0; k < STEPS; k++) {
      POWERS[k] = StrictMath.pow(2, (double) k / STEPS);
    }
  }

  private Elementary() {}

  /** e^x. */
  static double exp(double x) {
    if (!(x > -MOST && x < MOST)) {
      return StrictMath.exp(x);
    }
    double whole = x * PER_STEP + ROUND;
    int n = (int) Double.doubleToRawLongBits(whole);
    double steps = whole - ROUND;
    double r = (x - steps * STEP_HIGH) - steps * STEP_LOW;
    double r2 = r * r;
    double tail = (0.5 + r * (1.0 / 6)) + r2 * (1.0 / 24 + r * (1.0 / 120));
    double power = POWERS[n & (STEPS - 1)];
    double scale = Double.longBitsToDouble((long) ((n >> STEP_BITS) + 1023) << 52);
    return (power + power * (r + r2 * tail)) * scale;
  }

  /** ln x; x must be positive, finite and not subnormal. */
  static double log(double x) {
    long bits = Double.doubleToRawLongBits(x);
    int k = (int) (bits >> 52) - 1022;
    double m = Double.longBitsToDouble((bits & 0xfffffffffffffL) | 0x3fe0000000000000L);
    if (m < ROOT_HALF) {
      m *= 2;
      k--;
    }
    // ln m = 2 artanh s with s = (m - 1) / (m + 1), at most 0.172
    double f = m - 1;
    double s = f / (2 + f);
    double t = s * s;
    double u = t * t;
    double even = 1.0 / 3 + u * (1.0 / 7 + u * (1.0 / 11 + u * (1.0 / 15 + u * (1.0 / 19))));
    double odd = 1.0 / 5 + u * (1.0 / 9 + u * (1.0 / 13 + u * (1.0 / 17 + u * (1.0 / 21))));
    double series = t * even + u * odd;
    // 2 s = f - s f, exactly enough to keep the last digits
    double fine = s * (2 * series - f) + k * LN2_LOW;
    return k * LN2_HIGH + (f + fine);
  }
}
