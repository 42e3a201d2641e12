package sunup.bedside;

import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * A body weight.
 *
 * @param kg above 0
 */
public record Weight(double kg) {
  public Weight {
    Numbers.above0(kg, "weight");
  }

  public static Weight of(double value, Unit unit) {
    return new Weight(unit.toBase(value));
  }
}
