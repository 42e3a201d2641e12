package sunup.ops.rehearsal;

import sunup.board.Evidence;
import sunup.board.UnitId;
import sunup.sheets.EvidenceRule;

/** The evidence that a person would give for an item that is truly good. */
final class Proof {
  private Proof() {}

  /** True if a section can be gone through with it, without a reading of its own. */
  static boolean needsNone(EvidenceRule rule) {
    return (rule.kind() == EvidenceRule.Kind.TOUCH || rule.kind() == EvidenceRule.Kind.TIME)
        && !rule.witness()
        && rule.undo() == null;
  }

  /**
   * @param unit the equipment that is with the room, or null
   * @param shown what the gauge shows; null where the dice say
   */
  static Evidence of(Job job, Dice dice, UnitId unit, Double shown) {
    EvidenceRule rule = job.item.evidence();
    return switch (rule.kind()) {
      case NUMBER ->
          new Evidence.Reading(
              shown != null ? shown : reading(rule, dice.uniform("reading " + job.name())),
              rule.unit(),
              rule.undo() != null);
      case CHOICE -> choice(rule);
      case SCAN -> unit == null ? new Evidence.Touch() : new Evidence.Scan(unit);
      case TOUCH, TIME -> new Evidence.Touch();
    };
  }

  private static Evidence choice(EvidenceRule rule) {
    return rule.choices().stream()
        .filter(word -> !word.startsWith("!"))
        .findFirst()
        .<Evidence>map(Evidence.Choice::new)
        .orElse(new Evidence.Touch());
  }

  /** A plausible reading inside the good band, rounded as a person would write it. */
  private static double reading(EvidenceRule rule, double u) {
    double low = first(rule.low(), rule.least(), 0);
    double high = Math.max(low, first(rule.high(), rule.most(), low * 1.2 + 1));
    double value = low + (high - low) * (0.2 + 0.6 * u);
    double step = high - low > 20 ? 10 : high - low > 2 ? 1 : 0.1;
    double rounded = Math.round(value / step) * step;
    double written = Math.round(rounded * 10) / 10.0;
    return Math.min(high, Math.max(low, written));
  }

  private static double first(Double one, Double other, double last) {
    return one != null ? one : other != null ? other : last;
  }
}
