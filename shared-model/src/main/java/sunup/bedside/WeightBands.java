package sunup.bedside;

import java.util.List;

/**
 * Weights that are usual for an age, wide on purpose: outside them the weight is asked again, never
 * refused. First settings, common practice. No band is as wide as tenfold, so a weight inside one
 * leaves it when its point slips.
 */
final class WeightBands {
  /**
   * A band of ages.
   *
   * @param fromYears from this age on
   * @param lowKg usual from here
   * @param highKg usual up to here
   */
  record Band(double fromYears, double lowKg, double highKg) {
    boolean holds(Weight weight) {
      return weight.kg() >= lowKg && weight.kg() <= highKg;
    }
  }

  static final List<Band> BANDS =
      List.of(
          new Band(0, 2, 8),
          new Band(0.25, 4, 14),
          new Band(1, 6, 20),
          new Band(3, 10, 35),
          new Band(6, 14, 65),
          new Band(10, 20, 110),
          new Band(14, 30, 160),
          new Band(18, 38, 200));

  private WeightBands() {}

  static Band of(Age age) {
    Band found = BANDS.get(0);
    for (Band band : BANDS) {
      if (age.years() >= band.fromYears()) {
        found = band;
      }
    }
    return found;
  }
}
