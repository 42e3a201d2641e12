package sunup.drugs;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * A controlled drug in its ampoule or vial. Amounts are exact decimals in micrograms: a count that
 * must come out leaves no room for rounding.
 *
 * @param name as on the approved list
 * @param unitMicrograms what one ampoule holds, micrograms, above 0
 */
public record ControlledDrug(String name, BigDecimal unitMicrograms) {
  public ControlledDrug {
    Objects.requireNonNull(unitMicrograms, "unitMicrograms");
    if (name == null || name.isBlank()) {
      throw new IllegalArgumentException("a controlled drug needs its name");
    }
    if (unitMicrograms.signum() <= 0) {
      throw new IllegalArgumentException("an ampoule holds more than nothing");
    }
    // One way to write each amount, so that equal drugs are equal.
    unitMicrograms = plain(unitMicrograms);
  }

  public static ControlledDrug ofMg(String name, String mg) {
    return new ControlledDrug(name, new BigDecimal(mg).movePointRight(3));
  }

  public static ControlledDrug ofMicrograms(String name, String micrograms) {
    return new ControlledDrug(name, new BigDecimal(micrograms));
  }

  static BigDecimal plain(BigDecimal amount) {
    BigDecimal stripped = amount.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }

  /** In micrograms below 1 mg, else in mg; no trailing zero. */
  public static String text(BigDecimal micrograms) {
    boolean small = micrograms.abs().compareTo(BigDecimal.valueOf(1000)) < 0;
    return small
        ? plain(micrograms).toPlainString() + " micrograms"
        : plain(micrograms.movePointLeft(3)).toPlainString() + " mg";
  }
}
