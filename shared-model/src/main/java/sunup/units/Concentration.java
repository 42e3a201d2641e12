package sunup.units;

/**
 * How much of a drug is in a mL. Arithmetic of percent and ratios: 1 % is 10 mg/mL (lidocaine
 * label), 1:1000 is 1 mg/mL (epinephrine label), so 1:200,000 is 5 micrograms/mL.
 *
 * @param mgPerMl above 0
 */
public record Concentration(double mgPerMl) {
  public Concentration {
    Numbers.above0(mgPerMl, "concentration");
  }

  public static Concentration of(double value, Unit unit) {
    return new Concentration(unit.toBase(value));
  }

  /** So much drug made up to so much volume. */
  public static Concentration of(Mass drug, Volume madeUpTo) {
    return new Concentration(drug.mg() / Numbers.above0(madeUpTo.ml(), "volume"));
  }

  public double percent() {
    return Unit.PERCENT.fromBase(mgPerMl);
  }

  /** The n of 1:n. */
  public double oneIn() {
    return Unit.ONE_IN.fromBase(mgPerMl);
  }

  public double microgramsPerMl() {
    return Unit.MICROGRAMS_PER_ML.fromBase(mgPerMl);
  }

  /** The volume that holds this amount. */
  public Volume holding(Mass mass) {
    return new Volume(mass.mg() / mgPerMl);
  }

  /** The amount in this volume. */
  public Mass in(Volume volume) {
    return new Mass(mgPerMl * volume.ml());
  }

  /** After so much of it is made up to the larger volume. */
  public Concentration madeUp(Volume drawn, Volume madeUpTo) {
    Numbers.above0(drawn.ml(), "drawn volume");
    if (madeUpTo.ml() < drawn.ml()) {
      throw new IllegalArgumentException("the whole can't be less than what is drawn into it");
    }
    return of(in(drawn), madeUpTo);
  }

  /** Below 1 mg/mL in micrograms, written in full. */
  @Override
  public String toString() {
    return mgPerMl < 1
        ? Unit.MICROGRAMS_PER_ML.text(microgramsPerMl())
        : Unit.MG_PER_ML.text(mgPerMl);
  }
}
