package sunup.bedside;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import sunup.units.Concentration;
import sunup.units.Numbers;
import sunup.units.Unit;
import sunup.units.Volume;

/** What was entered for a figure, read strictly: every mistake is told, with how to mend it. */
final class Given {
  private static final Pattern NUMBER = Pattern.compile("\\d{1,7}(\\.\\d{1,4})?");
  private static final Pattern RATIO = Pattern.compile("(1:)?(\\d{1,3}([ ,]\\d{3})+|\\d{1,7})");
  private static final int TEXT_MAX = 60;

  /**
   * A number as read.
   *
   * @param base in the base unit of its quantity
   * @param unit as entered
   */
  record Read(double base, Unit unit) {}

  private final Card card;
  private final Map<String, Read> numbers = new LinkedHashMap<>();
  private final Map<String, String> words = new LinkedHashMap<>();
  private final List<Answer.Reason> wrong = new ArrayList<>();
  private final List<Answer.Reason> again = new ArrayList<>();

  private Given(Card card) {
    this.card = card;
  }

  /**
   * @param entries by input name
   */
  static Given read(Card card, Map<String, Entry> entries) {
    Given given = new Given(card);
    Set<String> known = card.inputs().stream().map(Input::name).collect(Collectors.toSet());
    for (String name : entries.keySet()) {
      if (!known.contains(name)) {
        given.wrong(name, "isn't asked for here");
      }
    }
    for (Input input : card.inputs()) {
      Entry entry = entries.get(input.name());
      if (entry == null || entry.text() == null || entry.text().isBlank()) {
        if (input.needed()) {
          given.wrong(input.name(), input.label() + " is missing");
        }
      } else if (input.kind() == Input.Kind.CHOICE) {
        given.readChoice(input, entry);
      } else {
        given.readNumber(input, entry);
      }
    }
    for (Input input : card.inputs()) {
      given.askAgain(input, entries.get(input.name()));
    }
    return given;
  }

  private void readChoice(Input input, Entry entry) {
    String word = entry.text().strip();
    if (entry.unit() != null) {
      wrong(input.name(), input.label() + " has no unit");
    } else if (!input.choices().contains(word)) {
      wrong(input.name(), input.label() + " must be one of: " + String.join(", ", input.choices()));
    } else {
      words.put(input.name(), word);
    }
  }

  private void readNumber(Input input, Entry entry) {
    Unit unit = Unit.named(entry.unit() == null ? "" : entry.unit()).orElse(null);
    if (unit == null || !input.units().contains(unit)) {
      wrong(
          input.name(),
          input.label()
              + (entry.unit() == null ? " needs its unit: " : " can't be in this unit; choose ")
              + input.units().stream().map(Unit::word).collect(Collectors.joining(" or ")));
      return;
    }
    Double value = number(input, entry.text().strip(), unit);
    if (value == null) {
      return;
    }
    double base = unit.toBase(value);
    double least = input.units().get(0).toBase(input.least());
    double most = input.units().get(0).toBase(input.most());
    if (!(base >= Math.min(least, most) && base <= Math.max(least, most))) {
      wrong(
          input.name(),
          input.label()
              + " "
              + unit.text(value)
              + " is outside "
              + input.units().get(0).text(input.least())
              + " to "
              + input.units().get(0).text(input.most())
              + "; look at the number, its point and its unit");
      return;
    }
    numbers.put(input.name(), new Read(base, unit));
  }

  private Double number(Input input, String text, Unit unit) {
    String digits = text;
    if (unit == Unit.ONE_IN) {
      if (!RATIO.matcher(text).matches()) {
        wrong(input.name(), input.label() + ": write a ratio as 1:200000 or 200000");
        return null;
      }
      digits = (text.startsWith("1:") ? text.substring(2) : text).replaceAll("[ ,]", "");
    } else if (!NUMBER.matcher(text).matches()) {
      wrong(input.name(), input.label() + ": " + mend(text));
      return null;
    }
    double value = Double.parseDouble(digits);
    if (unit == Unit.ONE_IN && value == 0) {
      wrong(input.name(), input.label() + ": one in nothing is no concentration");
      return null;
    }
    return value;
  }

  private static String mend(String text) {
    if (text.length() > TEXT_MAX) {
      return "is no number";
    }
    if (text.contains(",")) {
      return "'"
          + text
          + "' has a comma; write a point in its place, as in 7.5, or no mark in thousands";
    }
    if (text.startsWith(".")) {
      return "write a zero before the point: 0" + text;
    }
    if (text.startsWith("-")) {
      return "'" + text + "' is below 0";
    }
    return "'" + text + "' is no number such as 70 or 7.5, at most four places after the point";
  }

  private void askAgain(Input input, Entry entry) {
    Read weight = numbers.get(input.name());
    Read age = numbers.get(Input.AGE.name());
    if (input.again() != Input.Again.OUTSIDE_AGE_BAND || weight == null || age == null) {
      return;
    }
    WeightBands.Band band = WeightBands.of(new Age(age.base()));
    if (band.holds(new Weight(weight.base()))) {
      return;
    }
    String second = entry.again() == null ? "" : entry.again().strip();
    if (second.isEmpty()) {
      again.add(
          new Answer.Reason(
              input.name(),
              input.label()
                  + " "
                  + both(weight)
                  + " is unusual at "
                  + both(age)
                  + " (usually "
                  + Unit.KG.text(band.lowKg())
                  + " to "
                  + Unit.KG.text(band.highKg())
                  + "): look at the chart and enter it again"));
    } else if (!second.equals(entry.text().strip())) {
      wrong(input.name(), "the second entry differs from the first; begin with it anew");
    }
  }

  private void wrong(String input, String message) {
    wrong.add(new Answer.Reason(input, message));
  }

  List<Answer.Reason> wrong() {
    return wrong;
  }

  List<Answer.Reason> again() {
    return again;
  }

  /** Every input in all units that it could have been entered in. */
  List<String> readBack() {
    List<String> all = new ArrayList<>();
    for (Input input : card.inputs()) {
      Read number = numbers.get(input.name());
      if (number != null) {
        all.add(input.label() + " " + both(number));
      } else if (words.containsKey(input.name())) {
        all.add(input.label() + " " + words.get(input.name()));
      }
    }
    return all;
  }

  /** In the unit entered, then in the others of use: a pound read as a kilogram shows here. */
  private static String both(Read number) {
    String first = number.unit().text(number.unit().fromBase(number.base()));
    String others =
        Unit.of(number.unit().quantity()).stream()
            .filter(u -> u != number.unit() && u != Unit.KPA && u != Unit.MONTHS)
            .map(u -> u.text(near(u.fromBase(number.base()))))
            .collect(Collectors.joining(" = "));
    return others.isEmpty() ? first : first + " (" + others + ")";
  }

  private static double near(double value) {
    return value >= 10 ? Numbers.near(value, 1) : value >= 1 ? Numbers.near(value, 2) : value;
  }

  boolean has(String name) {
    return numbers.containsKey(name) || words.containsKey(name);
  }

  String word(String name) {
    return words.get(name);
  }

  double number(String name) {
    return numbers.get(name).base();
  }

  Weight weight() {
    return new Weight(number(Input.WEIGHT.name()));
  }

  Height height() {
    return new Height(number(Input.HEIGHT.name()));
  }

  Age age() {
    return new Age(number(Input.AGE.name()));
  }

  boolean female() {
    return word(Input.SEX.name()).equals("female");
  }

  Pressure pressure(String name) {
    return new Pressure(number(name));
  }

  Concentration concentration(String name) {
    return new Concentration(number(name));
  }

  Volume volume(String name) {
    return new Volume(number(name));
  }
}
