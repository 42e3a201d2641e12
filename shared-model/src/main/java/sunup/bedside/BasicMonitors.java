package sunup.bedside;

import java.util.ArrayList;
import java.util.List;

/**
 * Monitors of the basic standard: ASA Standards for Basic Anesthetic Monitoring, last amended 15
 * October 2025, in our own words. The wording of the circulation part is from memory; read the
 * edition in force before quoting it.
 */
public final class BasicMonitors {
  private static final String YES = "yes";
  private static final String NO = "no";

  private BasicMonitors() {}

  /**
   * What the standard asks for.
   *
   * @param general general anaesthesia
   * @param machine gas from an anaesthesia machine
   * @param ventilated by a ventilator
   * @param temperature a change of body temperature is meant, expected or suspected
   */
  public static List<Line> of(
      boolean general, boolean machine, boolean ventilated, boolean temperature) {
    List<Line> lines = new ArrayList<>();
    lines.add(
        new Line.Plain("person", "qualified anaesthesia staff in the room from beginning to end"));
    lines.add(
        new Line.Plain(
            "oxygenation",
            "pulse oximeter, tone that changes with it and low alarm, both audible"));
    if (general && machine) {
      lines.add(new Line.Plain("oxygenation", "oxygen analyser in the circuit with low alarm"));
    }
    lines.add(new Line.Plain("ventilation", "CO2 breathed out, as a number, with audible alarm"));
    if (ventilated) {
      lines.add(new Line.Plain("ventilation", "disconnection alarm, audible"));
    }
    lines.add(new Line.Plain("circulation", "ECG all the time"));
    lines.add(
        new Line.Plain("circulation", "blood pressure and heart rate at least every 5 minutes"));
    if (general) {
      lines.add(
          new Line.Plain(
              "circulation",
              "one more: pulse felt or heard, arterial trace, ultrasound pulse or oximeter trace"));
    }
    if (temperature) {
      lines.add(new Line.Plain("temperature", "thermometer"));
    }
    return lines;
  }

  static List<Figure> figures() {
    Card card =
        new Card(
            "monitors",
            "Monitors of the basic standard",
            1,
            "a list, by what is planned",
            "American Society of Anesthesiologists, Standards for Basic Anesthetic Monitoring, last"
                + " amended 15 October 2025; circulation from memory",
            "general, regional and monitored care; not labour",
            "The least, not all. Read the edition in force.",
            false,
            List.of(
                Input.choice("general", "general anaesthesia", YES, NO),
                Input.choice("machine", "gas from a machine", YES, NO),
                Input.choice("ventilated", "ventilated", YES, NO),
                Input.choice("temperature", "temperature may change", YES, NO)));
    return List.of(
        new Figure(
            card,
            "",
            given ->
                new Figure.Result(
                    "a list, without a formula",
                    List.of(),
                    of(
                        yes(given, "general"),
                        yes(given, "machine"),
                        yes(given, "ventilated"),
                        yes(given, "temperature")))));
  }

  private static boolean yes(Given given, String name) {
    return given.word(name).equals(YES);
  }
}
