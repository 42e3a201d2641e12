package sunup.bedside;

import java.util.List;
import sunup.units.Concentration;
import sunup.units.Mass;
import sunup.units.Numbers;
import sunup.units.Unit;
import sunup.units.Volume;

/** Lipid for local anaesthetic toxicity, and dantrolene for malignant hyperthermia. */
public final class Rescue {
  /** Lipid emulsion 20 %: 200 mg/mL. */
  static final Concentration LIPID = Concentration.of(20, Unit.PERCENT);

  /** Vial of 20 mg, made up with 60 mL. */
  static final Concentration DANTROLENE_20 = Concentration.of(new Mass(20), new Volume(60));

  /** Vial of 250 mg, made up with 5 mL. */
  static final Concentration DANTROLENE_250 = Concentration.of(new Mass(250), new Volume(5));

  private static final double FIXED_FROM_KG = 70;
  private static final double DANTROLENE_MG_PER_KG = 2.5;
  private static final double DANTROLENE_MOST_MG_PER_KG = 10;

  private Rescue() {}

  /**
   * First bolus of lipid 20 %: 1.5 mL/kg below 70 kg, 100 mL from 70 kg on. The checklist has "more
   * than 70" and "less than 70" only; at 70.0 kg it is the fixed dose here, the one that is quicker
   * to give (105 mL by weight). Between 66.67 and 70 kg the rule by weight gives more than the
   * fixed dose: that is the source.
   */
  public static Volume lipidBolus(Weight weight) {
    return new Volume(weight.kg() < FIXED_FROM_KG ? 1.5 * weight.kg() : 100);
  }

  /** 0.25 mL/kg/min below 70 kg, in mL/min; from 70 kg on it is 200 to 250 mL in 15 to 20 min. */
  public static double lipidMlPerMinute(Weight weight) {
    if (weight.kg() >= FIXED_FROM_KG) {
      throw new IllegalArgumentException(
          "from 70 kg on the infusion is 200 to 250 mL in 15-20 min");
    }
    return 0.25 * weight.kg();
  }

  /** 12 mL/kg in all. */
  public static Volume lipidMost(Weight weight) {
    return new Volume(12 * weight.kg());
  }

  /** 2.5 mg/kg. */
  public static Mass dantrolene(Weight weight) {
    return new Mass(DANTROLENE_MG_PER_KG * weight.kg());
  }

  /** Vials to open for an amount: rounded up. */
  public static int vials(Mass amount, Mass vial) {
    return (int) Numbers.up(amount.mg() / vial.mg(), 0);
  }

  static List<Figure> figures() {
    return List.of(lipid(), dantrolene());
  }

  private static Figure lipid() {
    Card card =
        new Card(
            "lipid",
            "Lipid 20 % for local anaesthetic toxicity",
            1,
            "below 70 kg: bolus 1.5 mL/kg over 2 to 3 min, then 0.25 mL/kg/min; from 70 kg: bolus"
                + " 100 mL, then 200 to 250 mL over 15 to 20 min; in all at most 12 mL/kg",
            "American Society of Regional Anesthesia, checklist 2017 (Neal, Woodward, Harrison, Reg"
                + " Anesth Pain Med 2018;43:150)",
            "The checklist says more and less than 70 kg; exactly 70 kg is the fixed dose here",
            "Call for help first. Adrenaline at most 1 microgram/kg each. Not propofol.",
            true,
            List.of(Input.AGE, Input.WEIGHT));
    return new Figure(card, "", Rescue::lipid);
  }

  private static Figure.Result lipid(Given given) {
    Weight weight = given.weight();
    boolean fixed = weight.kg() >= FIXED_FROM_KG;
    Volume bolus = lipidBolus(weight);
    Line infusion =
        fixed
            ? new Line.Plain(
                "then", "200 to 250 mL over 15 to 20 min = 40,000 to 50,000 mg of " + LIPID)
            : new Line.Plain(
                "then",
                Unit.ML.text(Numbers.near(lipidMlPerMinute(weight), 1))
                    + " each min = "
                    + Unit.MG.text(
                        Numbers.near(LIPID.in(new Volume(lipidMlPerMinute(weight))).mg(), 0))
                    + " each min of "
                    + LIPID);
    String kg = Unit.KG.text(Numbers.near(weight.kg(), 2));
    return Figure.Result.of(
        fixed ? "fixed from 70 kg; 12 mL/kg x " + kg : "1.5 mL/kg x " + kg + "; 12 mL/kg x " + kg,
        Line.Dose.of("bolus of lipid 20 %", LIPID.in(bolus), LIPID),
        infusion,
        Line.Dose.atMost("in all at most", LIPID.in(lipidMost(weight)), LIPID));
  }

  private static Figure dantrolene() {
    Card card =
        new Card(
            "dantrolene",
            "Dantrolene for malignant hyperthermia",
            2,
            "2.5 mg/kg; vials = mg / 20 or mg / 250, rounded up",
            "Malignant Hyperthermia Association of the United States: 2.5 mg/kg, stock 36 vials of"
                + " 20 mg (60 mL each) or 3 of 250 mg (5 mL). Label: from 1 mg/kg, 10 mg/kg in all."
                + " UK: 2 to 3 mg/kg",
            "any weight",
            "Call for help first. Repeat by what the patient does; above 10 mg/kg in all ask if"
                + " it is something else.",
            true,
            List.of(Input.AGE, Input.WEIGHT, Input.choice("vial", "vial", "20 mg", "250 mg")));
    return new Figure(card, "", Rescue::dantrolene);
  }

  private static Figure.Result dantrolene(Given given) {
    boolean small = given.word("vial").equals("20 mg");
    Mass vial = new Mass(small ? 20 : 250);
    Concentration concentration = small ? DANTROLENE_20 : DANTROLENE_250;
    Mass dose = dantrolene(given.weight());
    int vials = vials(dose, vial);
    String strength = vial + " in " + (small ? "60 mL" : "5 mL");
    Line.Dose line = Line.Dose.of("first dose", dose, concentration);
    Mass most = new Mass(DANTROLENE_MOST_MG_PER_KG * given.weight().kg());
    Line.Dose inAll = Line.Dose.atMost("in all, by the label", most, concentration);
    return Figure.Result.of(
        "2.5 mg/kg x " + Unit.KG.text(Numbers.near(given.weight().kg(), 2)),
        new Line.Dose(line.label(), line.mg(), line.ml(), strength),
        new Line.Plain("vials to open", vials + " of " + vial + ", made up as " + strength),
        new Line.Dose(inAll.label(), inAll.mg(), inAll.ml(), strength));
  }
}
