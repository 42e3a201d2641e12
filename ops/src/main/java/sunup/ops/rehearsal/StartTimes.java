package sunup.ops.rehearsal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.board.CasePlan;
import sunup.board.MorningPlan;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** When the rooms of a script truly start. */
public final class StartTimes {
  private StartTimes() {}

  /**
   * A room's true start.
   *
   * @param at epoch milliseconds, or null if it never starts
   * @param lateMinutes whole minutes after the booked time, 0 if it never starts
   * @param lastBefore the item outside the start chain that was good last before it
   */
  public record Start(CasePlan plan, Long at, long lateMinutes, String lastBefore) {}

  /** The starts in the order of the plan's cases. */
  public static List<Start> of(Script script, MorningPlan plan) {
    Map<String, ComposedSheet> sheets = new HashMap<>();
    plan.sheets().forEach(s -> sheets.put(s.hash(), s));
    List<Start> starts = new ArrayList<>();
    for (CasePlan c : plan.cases()) {
      starts.add(start(script, plan, c, sheets.get(c.sheet()).byKey()));
    }
    return starts;
  }

  private static Start start(
      Script script, MorningPlan plan, CasePlan c, Map<String, SheetItem> sheet) {
    RoomId room = c.room();
    String last = "";
    for (Fact fact : script.facts()) {
      if (!(fact instanceof Fact.Done done) || !done.room().equals(room)) {
        continue;
      }
      SheetItem item = sheet.get(done.item().key());
      if (item.marks() == plan.settings().startEvent()) {
        return new Start(c, done.at(), (done.at() - c.bookedAt()) / 60_000, last);
      }
      if (item.section() != Section.START && item.gates() != null) {
        last = item.key();
      }
    }
    return new Start(c, null, 0, last);
  }
}
