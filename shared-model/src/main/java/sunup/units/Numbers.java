package sunup.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers as they are rounded and written: no trailing zero, a zero before the point, commas in
 * thousands. What ten or more digits of a sum left behind is rounded off first, so that 140 minutes
 * are not cut to 139.
 */
public final class Numbers {
  private static final MathContext EXACT = new MathContext(12);
  private static final int PLACES_MAX = 4;

  private Numbers() {}

  public static double down(double value, int places) {
    return to(value, places, RoundingMode.FLOOR);
  }

  public static double up(double value, int places) {
    return to(value, places, RoundingMode.CEILING);
  }

  public static double near(double value, int places) {
    return to(value, places, RoundingMode.HALF_UP);
  }

  /** Without what a sum leaves behind its twelve digits. */
  public static double exact(double value) {
    return new BigDecimal(value).round(EXACT).doubleValue();
  }

  private static double to(double value, int places, RoundingMode mode) {
    return new BigDecimal(value).round(EXACT).setScale(places, mode).doubleValue();
  }

  /** Places after the point that three digits and no more need; 1 from 1 on, 0 from 100 on. */
  public static int places(double value) {
    double size = Math.abs(value);
    return size >= 100 ? 0 : size >= 1 ? 1 : size >= 0.1 ? 2 : 3;
  }

  /** The number with as many as four places after the point. */
  public static String text(double value) {
    // A value too small for four places keeps three digits, so that nothing is shown as 0 but 0.
    BigDecimal shown =
        Math.abs(value) < 0.01
            ? new BigDecimal(value).round(new MathContext(3))
            : new BigDecimal(value).round(EXACT).setScale(PLACES_MAX, RoundingMode.HALF_UP);
    String plain = shown.stripTrailingZeros().toPlainString();
    int point = plain.indexOf('.');
    String whole = point < 0 ? plain : plain.substring(0, point);
    return whole.replaceAll("(?<=\\d)(?=(\\d{3})+$)", ",")
        + (point < 0 ? "" : plain.substring(point));
  }

  /**
   * @throws IllegalArgumentException if the value is not a number above {@code least} or equal to
   *     it
   */
  public static double atLeast(double least, double value, String what) {
    if (!(value >= least) || value == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException(
          what + " must be a number of at least " + text(least) + ", not " + value);
    }
    return value;
  }

  /**
   * @throws IllegalArgumentException if the value is not a number above 0
   */
  public static double above0(double value, String what) {
    if (!(value > 0) || value == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException(what + " must be a number above 0, not " + value);
    }
    return value;
  }
}
