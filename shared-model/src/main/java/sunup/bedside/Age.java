package sunup.bedside;

import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * An age.
 *
 * @param years 0 or more, with its part of a year
 */
public record Age(double years) {
  /** Below this age a second person is asked for with every dose; common practice, safer side. */
  static final double CHILD_YEARS = 18;

  public Age {
    Numbers.atLeast(0, years, "age");
  }

  public static Age of(double value, Unit unit) {
    return new Age(unit.toBase(value));
  }

  public static Age ofMonths(double months) {
    return of(months, Unit.MONTHS);
  }

  /** True below 18 years. */
  public boolean isChild() {
    return years < CHILD_YEARS;
  }
}
