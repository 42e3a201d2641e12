package sunup.bedside;

import java.util.ArrayList;
import java.util.List;
import sunup.units.Concentration;
import sunup.units.Mass;
import sunup.units.Numbers;
import sunup.units.Unit;
import sunup.units.Volume;

/** The pages of {@link Concentration}: one way of writing into the others, and making up. */
final class ConcentrationFigures {
  private static final String SOURCE =
      "Arithmetic: 1 % = 10 mg/mL (lidocaine label), 1:1000 = 1 mg/mL (epinephrine label)";
  private static final String CAUTION =
      "For a child a second person works it out too. Read the label in hand: it goes first.";

  private ConcentrationFigures() {}

  private static Input concentration() {
    return Input.number(
        "concentration",
        "concentration",
        0.0001,
        1000,
        Unit.MG_PER_ML,
        Unit.MICROGRAMS_PER_ML,
        Unit.PERCENT,
        Unit.ONE_IN);
  }

  static List<Figure> figures() {
    return List.of(convert(), amount(), dilution());
  }

  private static Figure convert() {
    Card card =
        new Card(
            "concentration",
            "Concentration in all ways of writing",
            1,
            "1 % = 1 g in 100 mL = 10 mg/mL; 1:n = 1 g in n mL = 1000/n mg/mL",
            SOURCE,
            "0.0001 to 1000 mg/mL",
            CAUTION,
            false,
            List.of(
                concentration(),
                Input.number("volume", "volume", 0.01, 5000, Unit.ML, Unit.L).optional()));
    return new Figure(
        card,
        "",
        given -> {
          Concentration c = given.concentration("concentration");
          List<Line> lines = new ArrayList<>();
          lines.add(new Line.Plain("in mg or micrograms", c.toString()));
          lines.add(new Line.Plain("in percent", Unit.PERCENT.text(c.percent())));
          lines.add(new Line.Plain("as ratio", Unit.ONE_IN.text(Numbers.near(c.oneIn(), 2))));
          if (given.has("volume")) {
            lines.add(Line.Dose.of("in this volume", c.in(given.volume("volume")), c));
          }
          return new Figure.Result("1000 / n mg/mL for 1:n; 10 mg/mL for 1 %", List.of(), lines);
        });
  }

  private static Figure amount() {
    Card card =
        new Card(
            "volume-of-amount",
            "Volume that holds an amount",
            1,
            "mL = mg / (mg/mL)",
            SOURCE,
            "0.0001 to 1000 mg/mL",
            CAUTION,
            false,
            List.of(
                Input.number("amount", "amount", 0.0001, 100_000, Unit.MG, Unit.MICROGRAMS),
                concentration()));
    return new Figure(
        card,
        "",
        given -> {
          Mass mass = new Mass(given.number("amount"));
          Concentration c = given.concentration("concentration");
          return Figure.Result.of(mass + " / " + c, Line.Dose.of("volume", mass, c));
        });
  }

  private static Figure dilution() {
    Card card =
        new Card(
            "dilution",
            "Making up",
            1,
            "concentration x drawn mL / whole mL, the drawn mL being part of the whole",
            SOURCE,
            "whole at least what is drawn",
            CAUTION + " Drawn and added to a full bag is not the same as made up to it.",
            false,
            List.of(
                concentration(),
                Input.number("drawn", "drawn", 0.01, 5000, Unit.ML),
                Input.number("whole", "whole volume", 0.01, 5000, Unit.ML, Unit.L)));
    return new Figure(
        card,
        "",
        given -> {
          Volume drawn = given.volume("drawn");
          Volume whole = given.volume("whole");
          if (whole.ml() < drawn.ml()) {
            throw new Outside("whole", "the whole can't be less than what is drawn into it");
          }
          Concentration c = given.concentration("concentration");
          Concentration made = c.madeUp(drawn, whole);
          return Figure.Result.of(
              c + " x " + drawn + " / " + whole,
              Line.Dose.of("in the whole", c.in(drawn), made),
              new Line.Plain("as ratio", Unit.ONE_IN.text(Numbers.near(made.oneIn(), 0))));
        });
  }
}
