package sunup.units;

/**
 * An amount of a drug.
 *
 * @param mg 0 or more
 */
public record Mass(double mg) {
  public Mass {
    Numbers.atLeast(0, mg, "amount");
  }

  /** Below 1 mg in micrograms, written in full; never in g. */
  @Override
  public String toString() {
    return mg > 0 && mg < 1 ? Unit.MICROGRAMS.text(Unit.MICROGRAMS.fromBase(mg)) : Unit.MG.text(mg);
  }
}
