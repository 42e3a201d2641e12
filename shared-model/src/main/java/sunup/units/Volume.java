package sunup.units;

/**
 * A volume of liquid.
 *
 * @param ml 0 or more
 */
public record Volume(double ml) {
  public Volume {
    Numbers.atLeast(0, ml, "volume");
  }

  /** Rounded to what a syringe shows: 0.1 mL from 1 mL on, 0.01 below. */
  public static int places(double ml) {
    return ml >= 1 ? 1 : ml >= 0.1 ? 2 : 3;
  }

  @Override
  public String toString() {
    return Unit.ML.text(ml);
  }
}
