package sunup.bedside;

import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * A body height.
 *
 * @param cm above 0
 */
public record Height(double cm) {
  public Height {
    Numbers.above0(cm, "height");
  }

  public static Height of(double value, Unit unit) {
    return new Height(unit.toBase(value));
  }
}
