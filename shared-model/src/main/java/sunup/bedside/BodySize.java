package sunup.bedside;

import java.util.ArrayList;
import java.util.List;
import sunup.units.Numbers;
import sunup.units.Unit;

/** Ideal, lean and adjusted body weight, and body surface, of adults. */
public final class BodySize {
  private static final double FIVE_FEET_IN = 60;

  private BodySize() {}

  /** kg for each square metre of height. */
  public static double bmi(Weight weight, Height height) {
    double metres = height.cm() / 100;
    return weight.kg() / (metres * metres);
  }

  /**
   * Devine: 50 kg (men) or 45.5 kg (women), and 2.3 kg for each inch above 60.
   *
   * @throws IllegalArgumentException below 60 inches, where the formula says nothing
   */
  public static Weight ideal(boolean female, Height height) {
    double inches = Numbers.near(Unit.IN.fromBase(height.cm()), 9);
    if (inches < FIVE_FEET_IN) {
      throw new IllegalArgumentException("the formula begins at 60 inches (152.4 cm)");
    }
    return new Weight((female ? 45.5 : 50) + 2.3 * (inches - FIVE_FEET_IN));
  }

  /** Janmahasatian 2005: 9270 W / (6680 + 216 BMI) for men, / (8780 + 244 BMI) for women. */
  public static Weight lean(boolean female, Weight weight, Height height) {
    double bmi = bmi(weight, height);
    return new Weight(9270 * weight.kg() / (female ? 8780 + 244 * bmi : 6680 + 216 * bmi));
  }

  /**
   * Ideal + 0.4 x (actual - ideal).
   *
   * @throws IllegalArgumentException if the actual weight is below the ideal one
   */
  public static Weight adjusted(Weight actual, Weight ideal) {
    if (actual.kg() < ideal.kg()) {
      throw new IllegalArgumentException("actual weight is below ideal weight");
    }
    return new Weight(ideal.kg() + 0.4 * (actual.kg() - ideal.kg()));
  }

  /** Mosteller 1987: square root of cm x kg / 3600, in square metres. */
  public static double surface(Weight weight, Height height) {
    return Math.sqrt(height.cm() * weight.kg() / 3600);
  }

  static List<Figure> figures() {
    Card weights =
        new Card(
            "body-weights",
            "Body weights",
            1,
            "ideal = 50 (men) or 45.5 (women) + 2.3 x (inches - 60); lean = 9270 W / (6680 + 216"
                + " BMI) men, / (8780 + 244 BMI) women; adjusted = ideal + 0.4 x (actual - ideal)",
            "Devine (ideal); Janmahasatian and others, Clin Pharmacokinet 2005 (lean); clinical"
                + " pharmacy texts (adjusted, 0.4)",
            "from 16 years; ideal weight from 152.4 cm (60 in)",
            "Which weight a drug goes by depends on the drug; none is chosen here.",
            false,
            List.of(Input.AGE, Input.SEX, Input.HEIGHT, Input.WEIGHT));
    Card surface =
        new Card(
            "body-surface",
            "Body surface",
            1,
            "square root of (cm x kg / 3600)",
            "Mosteller, N Engl J Med 1987",
            "height 20 to 250 cm, weight 0.3 to 400 kg",
            "An estimate.",
            false,
            List.of(Input.AGE, Input.HEIGHT, Input.WEIGHT));
    return List.of(
        new Figure(weights, "", BodySize::weights),
        new Figure(
            surface,
            "",
            given -> {
              double m2 = surface(given.weight(), given.height());
              String worked =
                  "square root of ("
                      + Numbers.text(Numbers.near(given.height().cm(), 1))
                      + " x "
                      + Numbers.text(Numbers.near(given.weight().kg(), 2))
                      + " / 3600)";
              return Figure.Result.of(
                  worked, new Line.Plain("surface", Numbers.text(Numbers.near(m2, 2)) + " m2"));
            }));
  }

  private static Figure.Result weights(Given given) throws Outside {
    if (given.age().years() < AirwaySizes.ADULT_YEARS) {
      throw new Outside("age", "these formulas are for adults, here from 16 years");
    }
    Weight actual = given.weight();
    boolean female = given.female();
    List<Line> lines = new ArrayList<>();
    lines.add(
        new Line.Plain(
            "body mass index",
            Numbers.text(Numbers.near(bmi(actual, given.height()), 1)) + " kg/m2"));
    lines.add(kg("lean", lean(female, actual, given.height())));
    double inches = Numbers.near(Unit.IN.fromBase(given.height().cm()), 9);
    List<String> cautions = new ArrayList<>();
    if (inches < FIVE_FEET_IN) {
      cautions.add("no ideal or adjusted weight: the formula begins at 152.4 cm (60 in)");
    } else {
      Weight ideal = ideal(female, given.height());
      lines.add(kg("ideal", ideal));
      if (actual.kg() < ideal.kg()) {
        cautions.add("no adjusted weight: the actual weight is below the ideal one");
      } else {
        lines.add(kg("adjusted", adjusted(actual, ideal)));
      }
    }
    return new Figure.Result(
        Numbers.text(Numbers.near(inches, 1)) + " in, " + Unit.KG.text(actual.kg()),
        cautions,
        lines);
  }

  private static Line kg(String label, Weight weight) {
    return new Line.Plain(label, Unit.KG.text(Numbers.near(weight.kg(), 1)));
  }
}
