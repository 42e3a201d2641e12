package sunup.board;

import java.util.List;
import java.util.OptionalDouble;
import sunup.board.Morning.UnitDay;
import sunup.board.Outcome.Refused;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;
import sunup.units.Numbers;
import sunup.units.Unit;

/** Whether what is offered makes an item good, by what its sheet asks for. */
final class EvidenceCheck {
  /**
   * The answer of a check.
   *
   * @param refused why it can't be taken, or null
   * @param fault true if it can be taken and shows that the item is not good
   * @param evidence as it is kept
   */
  record Verdict(Refused refused, boolean fault, Evidence evidence) {}

  private EvidenceCheck() {}

  static Verdict check(Ask ask, SheetItem sheet, Evidence offered) {
    EvidenceRule rule = sheet.evidence();
    return switch (rule.kind()) {
      case TOUCH, TIME ->
          offered instanceof Evidence.Touch
              ? good(offered)
              : missing(sheet, "is made good by a touch");
      case NUMBER ->
          offered instanceof Evidence.Reading reading
              ? number(sheet, rule, reading)
              : missing(sheet, "needs a number in " + rule.unit());
      case CHOICE ->
          offered instanceof Evidence.Choice choice
              ? choice(sheet, rule, choice)
              : missing(sheet, "needs one of: " + words(rule.choices()));
      case SCAN ->
          offered instanceof Evidence.Scan scan
              ? scan(ask, sheet, scan)
              : missing(sheet, "needs the tag of the equipment");
    };
  }

  /** A refusal if the second signature is missing or the same person's, else null. */
  static Refused signatures(Ask ask, SheetItem sheet, PersonId by, PersonId witness) {
    if (witness != null && witness.equals(by)) {
      return Ask.refuse(RefusalCode.SAME_PERSON, sheet.desk());
    }
    Refused unsigned = Rights.checkSecond(ask, CommandKind.GOOD, by, witness);
    if (unsigned != null || !sheet.evidence().witness()) {
      return unsigned;
    }
    if (by == null || witness == null) {
      return Ask.refuse(
          RefusalCode.EVIDENCE_MISSING,
          sheet.desk() + " needs two people. Say who did it and who saw it.");
    }
    return Ask.first(ask.unknown(by), ask.unknown(witness));
  }

  /**
   * A gauge may be read in any unit of pressure: here and only here the reading is put into the
   * sheet's unit, in which it is kept. What is wrong with it is said in the unit that it was read
   * in.
   */
  private static Verdict number(SheetItem sheet, EvidenceRule rule, Evidence.Reading reading) {
    String unit = rule.unit() == null ? reading.unit() : rule.unit();
    OptionalDouble inSheets = Unit.gauge(reading.value(), reading.unit(), unit);
    if (inSheets.isEmpty()) {
      return missing(sheet, "is read in " + unit + ", not in " + reading.unit());
    }
    double value = inSheets.getAsDouble();
    boolean tooLow = rule.least() != null && value < rule.least();
    boolean tooHigh = rule.most() != null && value > rule.most();
    if (!Double.isFinite(value) || tooLow || tooHigh) {
      return new Verdict(
          Ask.refuse(
              RefusalCode.OUT_OF_RANGE,
              sheet.desk()
                  + " is read "
                  + range(rule, reading.unit())
                  + ". Look at the number again."),
          false,
          reading);
    }
    if (rule.undo() != null && !reading.undone()) {
      return missing(sheet, "is not finished: " + rule.undo() + ". Do that and say so");
    }
    boolean low = rule.low() != null && value < rule.low();
    boolean high = rule.high() != null && value > rule.high();
    return new Verdict(null, low || high, new Evidence.Reading(value, unit, reading.undone()));
  }

  private static Verdict choice(SheetItem sheet, EvidenceRule rule, Evidence.Choice choice) {
    String word = choice.word().startsWith("!") ? choice.word().substring(1) : choice.word();
    if (rule.choices().contains(word)) {
      return good(new Evidence.Choice(word));
    }
    if (rule.choices().contains("!" + word)) {
      return new Verdict(null, true, new Evidence.Choice(word));
    }
    return missing(sheet, "needs one of: " + words(rule.choices()));
  }

  private static Verdict scan(Ask ask, SheetItem sheet, Evidence.Scan scan) {
    UnitDay unit = ask.morning.units().get(scan.unit());
    if (unit == null) {
      return new Verdict(Ask.refuse(RefusalCode.UNKNOWN, "equipment " + scan.unit()), false, scan);
    }
    boolean fits =
        sheet.uses().isEmpty()
            || sheet.uses().stream().anyMatch(use -> use.kind().equals(unit.plan().kind()));
    return fits ? good(scan) : missing(sheet, "needs another kind than " + unit.plan().kind());
  }

  private static String range(EvidenceRule rule, String read) {
    String unit = read == null ? "" : " " + read;
    if (rule.least() != null && rule.most() != null) {
      return "from "
          + plain(rule.least(), rule, read)
          + " to "
          + plain(rule.most(), rule, read)
          + unit;
    }
    if (rule.least() != null) {
      return "from " + plain(rule.least(), rule, read) + unit + " up";
    }
    return rule.most() != null
        ? "up to " + plain(rule.most(), rule, read) + unit
        : "as a number" + unit;
  }

  /** A bound of the sheet, in whole units where it is told in another one. */
  private static String plain(double bound, EvidenceRule rule, String read) {
    double value =
        rule.unit() == null || rule.unit().equals(read)
            ? bound
            : Numbers.down(Unit.gauge(bound, rule.unit(), read).orElse(bound), 0);
    boolean whole = value == Math.rint(value) && Math.abs(value) < 1e9;
    return whole ? Long.toString((long) value) : Double.toString(value);
  }

  private static String words(List<String> choices) {
    return String.join(
        ", ",
        choices.stream().map(word -> word.startsWith("!") ? word.substring(1) : word).toList());
  }

  private static Verdict good(Evidence evidence) {
    return new Verdict(null, false, evidence);
  }

  private static Verdict missing(SheetItem sheet, String what) {
    return new Verdict(
        Ask.refuse(RefusalCode.EVIDENCE_MISSING, sheet.desk() + " " + what + "."), false, null);
  }
}
