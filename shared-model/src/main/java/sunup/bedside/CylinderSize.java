package sunup.bedside;

import java.util.Arrays;
import java.util.Optional;
import sunup.units.Unit;

/**
 * Sizes of oxygen cylinders and how gauge pressure becomes litres. US sizes: factors in L/psi as
 * printed in respiratory-care texts (D 0.16, E 0.28, M 1.56, G 2.41, H and K 3.14). They don't
 * agree with the capacities on labels (E: 0.28 x 2200 = 616, label 660), so neither is worked out
 * from the other. UK E: 680 L at 137 bar, in proportion to the gauge (Anesthesia & Analgesia
 * 2004;99:307). Other UK sizes have no source here and are left out.
 */
public enum CylinderSize {
  US_D("US D", 0.16),
  US_E("US E", 0.28),
  US_M("US M", 1.56),
  US_G("US G", 2.41),
  US_H("US H", 3.14),
  US_K("US K", 3.14),
  UK_E("UK E", Unit.BAR.fromBase(680 / 137.0));

  private final String word;
  private final double litresPerPsi;

  CylinderSize(String word, double litresPerPsi) {
    this.word = word;
    this.litresPerPsi = litresPerPsi;
  }

  public String word() {
    return word;
  }

  /** L for each psi on the gauge. */
  public double litresPerPsi() {
    return litresPerPsi;
  }

  static Optional<CylinderSize> named(String word) {
    return Arrays.stream(values()).filter(s -> s.word.equals(word)).findFirst();
  }
}
