package sunup.bedside;

import java.util.List;
import sunup.units.Numbers;

/** Maintenance fluid by weight. */
public final class Maintenance {
  /** Above this weight, kg, the rule for children is not carried on; common practice. */
  static final double MOST_KG = 100;

  private Maintenance() {}

  /** mL/h: 4 for each of the first 10 kg, 2 for each of the next 10, 1 for each beyond. */
  public static double mlPerHour(Weight weight) {
    double kg = weight.kg();
    return 4 * Math.min(kg, 10) + 2 * Math.min(Math.max(kg - 10, 0), 10) + Math.max(kg - 20, 0);
  }

  static List<Figure> figures() {
    Card card =
        new Card(
            "maintenance",
            "Maintenance fluid, 4-2-1",
            1,
            "4 mL/kg/h for the first 10 kg, 2 for the next 10, 1 beyond",
            "Teaching texts of university hospitals, after Holliday and Segar",
            "from 1 month, up to 100 kg",
            "Maintenance only, without deficit and losses. Some pages misprint it (52 mL/h for 15"
                + " kg; the rule gives 50).",
            true,
            List.of(Input.AGE, Input.WEIGHT));
    return List.of(new Figure(card, "", Maintenance::rate));
  }

  private static Figure.Result rate(Given given) throws Outside {
    if (given.age().years() < LocalAnaesthetics.LEAST_MONTHS / 12) {
      throw new Outside("age", "the rule is not for newborns, here below 1 month");
    }
    double kg = given.weight().kg();
    if (kg > MOST_KG) {
      throw new Outside("weight", "the rule is not carried on above 100 kg");
    }
    String worked =
        "4 x "
            + Numbers.text(Numbers.near(Math.min(kg, 10), 2))
            + " + 2 x "
            + Numbers.text(Numbers.near(Math.min(Math.max(kg - 10, 0), 10), 2))
            + " + 1 x "
            + Numbers.text(Numbers.near(Math.max(kg - 20, 0), 2));
    double rate = Numbers.near(mlPerHour(given.weight()), 0);
    return Figure.Result.of(worked, new Line.Plain("rate", Numbers.text(rate) + " mL/h"));
  }
}
