package sunup.bedside;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import sunup.units.Concentration;
import sunup.units.Mass;
import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * Ceilings of local anaesthetics: the lesser of the per-kilogram and the fixed limit, for mixtures
 * the sum of the shares. It shows shares and ceilings and never says that a dose is safe.
 */
public final class LocalAnaesthetics {
  /** Below this age, months, amides are reduced. */
  static final double INFANT_MONTHS = 6;

  /** American Academy of Pediatrics, table footnote: amides reduced by 30 % below 6 months. */
  static final double INFANT_SHARE = 0.7;

  /** Below this age, months, there is no source here; common practice. */
  static final double LEAST_MONTHS = 1;

  private static final int PARTS = 3;

  private static final String CAUTION =
      "A ceiling, not a dose; print disagrees, the source named here is one table. It counts all"
          + " that was given by anyone in the last hours, skin and joint too. Place of injection,"
          + " age, liver and heart lower it. Have lipid at hand.";

  private LocalAnaesthetics() {}

  /**
   * The most of one drug for one patient.
   *
   * @param most the ceiling
   * @param binding which limit it is, in words
   */
  public record Limit(Mass most, String binding) {}

  /**
   * @throws IllegalArgumentException if one of the two limits or the source is missing: no source,
   *     no figure
   */
  public static Limit limit(Ceiling ceiling, Weight weight, Age age) {
    String missing = missing(ceiling);
    if (missing != null) {
      throw new IllegalArgumentException(missing);
    }
    double byWeight = ceiling.mgPerKg() * weight.kg();
    boolean fixed = ceiling.fixedMg() < byWeight;
    double mg = fixed ? ceiling.fixedMg() : byWeight;
    String binding =
        fixed
            ? "fixed " + Unit.MG.text(ceiling.fixedMg())
            : Numbers.text(ceiling.mgPerKg())
                + " mg/kg x "
                + Unit.KG.text(Numbers.near(weight.kg(), 2));
    boolean infant = age.years() < INFANT_MONTHS / 12;
    return infant && ceiling.family() == Ceiling.Family.AMIDE
        ? new Limit(new Mass(mg * INFANT_SHARE), binding + " x 0.7 below 6 months")
        : new Limit(new Mass(mg), binding);
  }

  /** Why there is no figure for it, or null. */
  private static String missing(Ceiling ceiling) {
    String what =
        ceiling.mgPerKg() == null
            ? "per-kilogram limit"
            : ceiling.fixedMg() == null ? "fixed limit" : null;
    if (ceiling.source() == null || ceiling.source().isBlank()) {
      return "the limits of " + ceiling.solution() + " have no source; no source, no figure";
    }
    return what == null
        ? null
        : "no " + what + " of " + ceiling.solution() + " has a source here; no source, no figure";
  }

  /**
   * What was given of each drug as a share of its ceiling, summed.
   *
   * @param given amounts
   * @param limits as many, in the same order
   */
  public static double sumOfShares(List<Mass> given, List<Limit> limits) {
    double sum = 0;
    for (int i = 0; i < given.size(); i++) {
      sum += given.get(i).mg() / limits.get(i).most().mg();
    }
    return sum;
  }

  static List<Figure> figures(BedsideSettings site) {
    List<Ceiling> ceilings = site.ceilings();
    String settings =
        ceilings.stream()
            .map(Ceiling::words)
            .sorted(Comparator.naturalOrder())
            .collect(Collectors.joining("\n"));
    return List.of(
        new Figure(ceilingCard(ceilings), settings, given -> ceiling(given, ceilings)),
        new Figure(mixtureCard(ceilings), settings, given -> mixture(given, ceilings)));
  }

  private static Input drug(String name, String label, List<Ceiling> ceilings) {
    return Input.choice(
        name, label, ceilings.stream().map(Ceiling::solution).distinct().toArray(String[]::new));
  }

  private static Input concentration(String name) {
    return Input.number(name, name.replace('-', ' '), 0.1, 100, Unit.MG_PER_ML, Unit.PERCENT);
  }

  private static String sources(List<Ceiling> ceilings) {
    return ceilings.stream()
            .map(Ceiling::source)
            .filter(s -> s != null && !s.isBlank())
            .distinct()
            .collect(Collectors.joining("; "))
        + ". Below 6 months: American Academy of Pediatrics, table footnote";
  }

  private static Card ceilingCard(List<Ceiling> ceilings) {
    return new Card(
        "local-anaesthetic",
        "Local anaesthetic: ceiling",
        1,
        "the lesser of mg/kg x weight and the fixed limit; amides x 0.7 below 6 months; rounded"
            + " down",
        sources(ceilings),
        "from 1 month; both limits with a source",
        CAUTION,
        true,
        List.of(
            Input.AGE,
            Input.WEIGHT,
            drug("drug", "drug", ceilings),
            concentration("concentration")));
  }

  private static Card mixtureCard(List<Ceiling> ceilings) {
    List<Input> inputs = new ArrayList<>(List.of(Input.AGE, Input.WEIGHT));
    for (int i = 1; i <= PARTS; i++) {
      List<Input> part =
          List.of(
              drug("drug-" + i, "drug " + i, ceilings),
              concentration("concentration-" + i),
              Input.number("volume-" + i, "volume " + i, 0.01, 200, Unit.ML));
      for (Input input : part) {
        inputs.add(i == 1 ? input : input.optional());
      }
    }
    return new Card(
        "local-anaesthetic-mixture",
        "Local anaesthetics together: share of the ceilings",
        1,
        "sum of (given / ceiling of that drug), rounded up",
        sources(ceilings),
        "up to three drugs, from 1 month; both limits of each with a source",
        CAUTION
            + " That shares may be added is a working rule; the bupivacaine label says that mixing"
            + " can't be recommended for want of data.",
        true,
        inputs);
  }

  private static Limit limit(Given given, List<Ceiling> ceilings, String drug) throws Outside {
    if (given.age().years() < LEAST_MONTHS / 12) {
      throw new Outside("age", "no ceiling below 1 month has a source here");
    }
    Ceiling ceiling =
        ceilings.stream()
            .filter(c -> c.solution().equals(given.word(drug)))
            .findFirst()
            .orElseThrow();
    String missing = missing(ceiling);
    if (missing != null) {
      throw new Outside(drug, missing);
    }
    return limit(ceiling, given.weight(), given.age());
  }

  private static Figure.Result ceiling(Given given, List<Ceiling> ceilings) throws Outside {
    Limit limit = limit(given, ceilings, "drug");
    return Figure.Result.of(
        limit.binding() + " = " + limit.most(),
        Line.Dose.atMost(
            "at most, " + given.word("drug"), limit.most(), given.concentration("concentration")));
  }

  private static Figure.Result mixture(Given given, List<Ceiling> ceilings) throws Outside {
    List<Mass> amounts = new ArrayList<>();
    List<Limit> limits = new ArrayList<>();
    List<Line> lines = new ArrayList<>();
    List<String> sums = new ArrayList<>();
    for (int i = 1; i <= PARTS; i++) {
      String drug = "drug-" + i;
      List<String> names = List.of(drug, "concentration-" + i, "volume-" + i);
      List<String> there = names.stream().filter(given::has).toList();
      if (there.isEmpty()) {
        continue;
      }
      if (there.size() < names.size()) {
        throw new Outside(
            names.stream().filter(n -> !given.has(n)).findFirst().orElseThrow(),
            "drug " + i + " needs drug, concentration and volume");
      }
      Limit limit = limit(given, ceilings, drug);
      Concentration concentration = given.concentration("concentration-" + i);
      Mass mass = concentration.in(given.volume("volume-" + i));
      amounts.add(mass);
      limits.add(limit);
      lines.add(Line.Dose.of("given, " + given.word(drug), mass, concentration));
      lines.add(
          new Line.Plain(
              "ceiling, " + given.word(drug), limit.most() + " (" + limit.binding() + ")"));
      sums.add(mass + " / " + limit.most());
    }
    double sum = Numbers.up(sumOfShares(amounts, limits), 3);
    lines.add(new Line.Plain("sum of shares", Numbers.text(sum)));
    return new Figure.Result(String.join(" + ", sums), List.of(), lines);
  }
}
