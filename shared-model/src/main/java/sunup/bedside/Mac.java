package sunup.bedside;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * Minimum alveolar concentration by age: MAC = MAC40 x 10^(-0.00269 (age - 40)), Mapleson, Br J
 * Anaesth 1996;76:179. The slope's 95 % interval is -0.0030 to -0.0024.
 */
public final class Mac {
  private static final double SLOPE = -0.00269;

  /** The abstract says above 1 year; the first birthday is taken with it. */
  static final double FROM_YEARS = 1;

  private Mac() {}

  /** Agents with their MAC at 40 years, % of one atmosphere at the end of a breath. */
  public enum Agent {
    SEVOFLURANE("sevoflurane", 1.80),
    ISOFLURANE("isoflurane", 1.17),
    DESFLURANE("desflurane", 6.6),
    ENFLURANE("enflurane", 1.63),
    HALOTHANE("halothane", 0.75),
    NITROUS_OXIDE("nitrous oxide", 104);

    private final String word;
    private final double at40;

    Agent(String word, double at40) {
      this.word = word;
      this.at40 = at40;
    }

    public String word() {
      return word;
    }
  }

  /**
   * MAC in % of one atmosphere.
   *
   * @throws IllegalArgumentException below 1 year
   */
  public static double of(Agent agent, Age age) {
    if (age.years() < FROM_YEARS) {
      throw new IllegalArgumentException("the formula is for ages above 1 year");
    }
    return agent.at40 * Math.pow(10, SLOPE * (age.years() - 40));
  }

  static List<Figure> figures() {
    String[] volatiles =
        Arrays.stream(Agent.values())
            .filter(a -> a != Agent.NITROUS_OXIDE)
            .map(Agent::word)
            .toArray(String[]::new);
    Card card =
        new Card(
            "mac",
            "MAC for age",
            1,
            "MAC at 40 years x 10^(-0.00269 x (age - 40)); shares of agent and nitrous oxide add",
            "Mapleson, Br J Anaesth 1996;76:179. At 40 years: halothane 0.75, isoflurane 1.17,"
                + " enflurane 1.63, sevoflurane 1.8, desflurane 6.6, nitrous oxide 104 %",
            "from 1 year; at one atmosphere",
            "Half the patients move at 1 MAC, and opioids, temperature and pregnancy change it."
                + " Machines use other numbers at 40 years and may show another sum.",
            false,
            List.of(
                Input.AGE,
                Input.choice("agent", "agent", volatiles),
                Input.number("end-tidal", "end of breath, agent", 0, 20, Unit.PERCENT_GAS)
                    .optional(),
                Input.number("nitrous", "end of breath, nitrous oxide", 0, 80, Unit.PERCENT_GAS)
                    .optional()));
    return List.of(new Figure(card, "", Mac::shares));
  }

  private static Figure.Result shares(Given given) throws Outside {
    Age age = given.age();
    if (age.years() < FROM_YEARS) {
      throw new Outside("age", "the formula is for ages from 1 year on");
    }
    Agent agent =
        Arrays.stream(Agent.values())
            .filter(a -> a.word.equals(given.word("agent")))
            .findFirst()
            .orElseThrow();
    double mac = of(agent, age);
    List<Line> lines = new ArrayList<>();
    lines.add(percent("1 MAC of " + agent.word, mac));
    String worked =
        Numbers.text(agent.at40) + " x 10^(-0.00269 x (" + Numbers.text(age.years()) + " - 40))";
    double sum = 0;
    if (given.has("end-tidal")) {
      sum += given.number("end-tidal") / mac;
    }
    if (given.has("nitrous")) {
      double nitrous = of(Agent.NITROUS_OXIDE, age);
      lines.add(percent("1 MAC of nitrous oxide", nitrous));
      sum += given.number("nitrous") / nitrous;
    }
    if (given.has("end-tidal") || given.has("nitrous")) {
      lines.add(new Line.Plain("in all", Numbers.text(Numbers.near(sum, 2)) + " MAC"));
    }
    return new Figure.Result(worked, List.of(), lines);
  }

  private static Line percent(String label, double value) {
    int places = value >= 10 ? 1 : 2;
    return new Line.Plain(label, Numbers.text(Numbers.near(value, places)) + " %");
  }
}
