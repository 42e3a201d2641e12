package sunup.bedside;

import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * The inner width of a tube.
 *
 * @param mm above 0
 */
public record Bore(double mm) {
  public Bore {
    Numbers.above0(mm, "inner width");
  }

  public static Bore of(double value, Unit unit) {
    return new Bore(unit.toBase(value));
  }
}
