package sunup.drugs;

import java.util.List;
import java.util.Objects;
import sunup.units.Concentration;
import sunup.units.Mass;
import sunup.units.Volume;

/**
 * A syringe of a case's list.
 *
 * @param name as on the approved list
 * @param drugClass gives colour and stripes
 * @param concentration what is in a mL
 * @param volume what is in the syringe
 * @param drawnAtMs when it was drawn, ms
 * @param lapsesAtMs from this moment on it has lapsed, ms
 */
public record DrawnDrug(
    String name,
    DrugClass drugClass,
    Concentration concentration,
    Volume volume,
    long drawnAtMs,
    long lapsesAtMs) {
  public DrawnDrug {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(drugClass, "drugClass");
    Objects.requireNonNull(concentration, "concentration");
    Objects.requireNonNull(volume, "volume");
    if (lapsesAtMs <= drawnAtMs) {
      throw new IllegalArgumentException("a syringe must lapse after it was drawn");
    }
  }

  /** Drawn now, under these limits; the shortest counts. */
  public static DrawnDrug of(
      String name,
      DrugClass drugClass,
      Concentration concentration,
      Volume volume,
      long drawnAtMs,
      List<UseLimit> limits) {
    long lapses = UseLimit.lapsesAt(drawnAtMs, limits);
    return new DrawnDrug(name, drugClass, concentration, volume, drawnAtMs, lapses);
  }

  /** How much of the drug is in it. */
  public Mass amount() {
    return concentration.in(volume);
  }

  public boolean hasLapsed(long nowMs) {
    return nowMs >= lapsesAtMs;
  }

  /** Name with its capitals, amount, volume and concentration together, as a label shows them. */
  public String text() {
    return Lettering.shown(name) + " " + amount() + " = " + volume + " of " + concentration;
  }
}
