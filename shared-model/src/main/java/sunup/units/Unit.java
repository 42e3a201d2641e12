package sunup.units;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A unit as it stands on screens, and its way to the base unit of what it measures. "Micrograms" is
 * written in full, as its short forms are misread as mg.
 */
public enum Unit {
  KG("kg", Quantity.WEIGHT, 1),
  /** 1 lb = 0.45359237 kg, by definition (international pound, 1959). */
  LB("lb", Quantity.WEIGHT, 0.453_592_37),
  CM("cm", Quantity.HEIGHT, 1),
  /** 1 in = 2.54 cm, by definition. */
  IN("in", Quantity.HEIGHT, 2.54),
  YEARS("years", Quantity.AGE, 1),
  MONTHS("months", Quantity.AGE, 1 / 12.0),
  PSI("psi", Quantity.PRESSURE, 1),
  /**
   * 1 psi = 6.894 757 kPa, so 1 bar = 14.503 774 psi (NIST Special Publication 811, B.8). All its
   * digits follow from definitions: 1 lbf = 0.453 592 37 kg x 9.806 65 m/s2, 1 in = 0.0254 m, 1 bar
   * = 100 kPa.
   */
  BAR("bar", Quantity.PRESSURE, 100 / 6.894_757_293_168),
  KPA("kPa", Quantity.PRESSURE, 1 / 6.894_757_293_168),
  L_PER_MIN("L/min", Quantity.FLOW, 1),
  ML("mL", Quantity.VOLUME, 1),
  L("L", Quantity.VOLUME, 1000),
  MG("mg", Quantity.MASS, 1),
  MICROGRAMS("micrograms", Quantity.MASS, 0.001),
  MG_PER_ML("mg/mL", Quantity.CONCENTRATION, 1),
  MICROGRAMS_PER_ML("micrograms/mL", Quantity.CONCENTRATION, 0.001),
  /** g in 100 mL: 1 % = 10 mg/mL (lidocaine label). */
  PERCENT("%", Quantity.CONCENTRATION, 10),
  /** 1 : n is 1 g in n mL: 1:1000 = 1 mg/mL (epinephrine label). */
  ONE_IN("1:", Quantity.CONCENTRATION, 1000) {
    @Override
    public double toBase(double value) {
      return 1000 / value;
    }

    @Override
    public double fromBase(double base) {
      return 1000 / base;
    }
  },
  MM("mm", Quantity.BORE, 1),
  PERCENT_GAS("% gas", Quantity.GAS_SHARE, 1),
  PERCENT_OF("% of it", Quantity.SHARE, 1);

  private final String word;
  private final Quantity quantity;
  private final double base;

  Unit(String word, Quantity quantity, double base) {
    this.word = word;
    this.quantity = quantity;
    this.base = base;
  }

  @JsonValue
  public String word() {
    return word;
  }

  public Quantity quantity() {
    return quantity;
  }

  /** The value in the base unit of {@link #quantity}. */
  public double toBase(double value) {
    return value * base;
  }

  /** The value in this unit. */
  public double fromBase(double value) {
    return value / base;
  }

  /** A value in this unit as text, for example {@code 70 kg} or {@code 1:200,000}. */
  public String text(double value) {
    return this == ONE_IN ? word + Numbers.text(value) : Numbers.text(value) + " " + word;
  }

  /**
   * A reading of a gauge in another of the units of pressure, both as they are written. Rounded to
   * twelve digits: what the sum leaves behind them would take 5,000 kPa for less than 50 bar.
   *
   * @return empty if one of the two is no unit of pressure and they differ
   */
  public static OptionalDouble gauge(double value, String from, String to) {
    if (from.equals(to)) {
      return OptionalDouble.of(value);
    }
    Optional<Unit> read = named(from).filter(u -> u.quantity == Quantity.PRESSURE);
    Optional<Unit> wanted = named(to).filter(u -> u.quantity == Quantity.PRESSURE);
    if (read.isEmpty() || wanted.isEmpty()) {
      return OptionalDouble.empty();
    }
    double exact = wanted.get().fromBase(read.get().toBase(value));
    return OptionalDouble.of(Double.isFinite(exact) ? Numbers.exact(exact) : exact);
  }

  public static Optional<Unit> named(String word) {
    return Arrays.stream(values()).filter(u -> u.word.equals(word)).findFirst();
  }

  public static List<Unit> of(Quantity quantity) {
    return Arrays.stream(values()).filter(u -> u.quantity == quantity).toList();
  }
}
