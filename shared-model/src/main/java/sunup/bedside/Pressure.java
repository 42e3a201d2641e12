package sunup.bedside;

import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * What a gauge shows: pressure above that of the room.
 *
 * @param psi 0 or more
 */
public record Pressure(double psi) {
  public Pressure {
    Numbers.atLeast(0, psi, "pressure");
  }

  public static Pressure of(double value, Unit unit) {
    return new Pressure(unit.toBase(value));
  }

  public double bar() {
    return Unit.BAR.fromBase(psi);
  }

  public double kPa() {
    return Unit.KPA.fromBase(psi);
  }

  /** What is above the other pressure; never below 0. */
  Pressure above(Pressure other) {
    return new Pressure(Math.max(0, psi - other.psi));
  }
}
