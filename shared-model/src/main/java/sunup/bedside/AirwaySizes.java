package sunup.bedside;

import java.util.List;
import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * Sizes of tubes, blades, supraglottic airways, oral airways and suction catheters, each with its
 * neighbours. What is at hand and what fits go first; a figure only says what to lay out.
 */
public final class AirwaySizes {
  /** Formulas by age hold from here, years; Motoyama's is given from 2 years on. */
  static final double FORMULA_FROM_YEARS = 2;

  /** Up to here; common practice. */
  static final double FORMULA_TO_YEARS = 12;

  /** Adult sizes from here, years; common practice. */
  static final double ADULT_YEARS = 16;

  /** 1 Fr is a third of a mm of outer width. */
  static final double FRENCH_PER_MM = 3;

  /** Suction catheters as they are made, Fr; common practice. */
  private static final int[] CATHETERS = {5, 6, 8, 10, 12, 14, 16};

  private AirwaySizes() {}

  /**
   * A laryngeal mask size.
   *
   * @param size as printed on it
   * @param toKg largest weight, inclusive: "1: up to 5 kg" is the only end that the source writes
   *     out, so all ends are read like it
   * @param cuffMl largest volume of the cuff
   */
  record Mask(String size, double toKg, double cuffMl) {}

  static final List<Mask> MASKS =
      List.of(
          new Mask("1", 5, 4),
          new Mask("1.5", 10, 7),
          new Mask("2", 20, 10),
          new Mask("2.5", 30, 14),
          new Mask("3", 50, 20),
          new Mask("4", 70, 30),
          new Mask("5", 100, 40),
          new Mask("6", Double.POSITIVE_INFINITY, 50));

  /**
   * Inner width of an uncuffed tube, mm, before rounding: age / 4 + 4 (Cole), 2 to 12 years.
   *
   * @throws IllegalArgumentException outside
   */
  public static double uncuffedMm(Age age) {
    return age(age) / 4 + 4;
  }

  /**
   * Inner width of a cuffed tube, mm, before rounding: 3 below 1 year, 3.5 below 2 years, then age
   * / 4 + 3.5 (Motoyama), to 12 years. Khine's age / 4 + 3 is not used: in 204 children 72 % needed
   * a larger one, and its study advises + 3.5.
   *
   * @throws IllegalArgumentException outside
   */
  public static double cuffedMm(Age age) {
    if (age.years() < 1) {
      return 3;
    }
    return age.years() < FORMULA_FROM_YEARS ? 3.5 : age(age) / 4 + 3.5;
  }

  private static double age(Age age) {
    if (age.years() < FORMULA_FROM_YEARS || age.years() > FORMULA_TO_YEARS) {
      throw new IllegalArgumentException("no formula at " + Unit.YEARS.text(age.years()));
    }
    return age.years();
  }

  /** Tubes come in half mm; at a tie the smaller one, as a cuff or the next size mends that. */
  public static Bore made(double mm) {
    return new Bore(Math.ceil(Numbers.near(mm * 2, 9) - 0.5) / 2);
  }

  /** Depth at the lips, cm: age / 2 + 12, from 2 to 12 years. */
  public static double depthCm(Age age) {
    return age(age) / 2 + 12;
  }

  /** Depth at the lips, cm: three times the inner width in mm. */
  public static double depthCm(Bore tube) {
    return 3 * tube.mm();
  }

  /** Depth of an adult's tube by height, cm: height / 7 - 2.5. */
  public static double depthCm(Height height) {
    return height.cm() / 7 - 2.5;
  }

  /** Number of the first mask whose range holds the weight, from the smallest. */
  static int mask(Weight weight) {
    int i = 0;
    while (weight.kg() > MASKS.get(i).toKg()) {
      i++;
    }
    return i;
  }

  /** Largest catheter made that is smaller than twice the inner width of the tube, Fr. */
  public static int catheterByDouble(Bore tube) {
    return largest(2 * tube.mm(), false);
  }

  /** Largest catheter made whose outer width is at most half the inner width of the tube, Fr. */
  public static int catheterByHalf(Bore tube) {
    return largest(tube.mm() / 2 * FRENCH_PER_MM, true);
  }

  /** 0 if none is small enough. */
  private static int largest(double limit, boolean inclusive) {
    int found = 0;
    for (int french : CATHETERS) {
      if (inclusive ? french <= limit + 1e-9 : french < limit - 1e-9) {
        found = french;
      }
    }
    return found;
  }
}
