package sunup.board;

import sunup.board.Morning.CaseDay;
import sunup.sheets.SheetItem;

/**
 * When an item that was good no longer counts. Derived from events and time, never stored: life
 * counts from happenedAt. A lapse does not matter once the step that the item gates has happened,
 * and once the patient is in the room nothing lapses merely by the clock but the start chain's own
 * checks, which are made at the patient.
 */
final class Lapses {
  private Lapses() {}

  static ItemState stateOf(Morning morning, Item item, SheetItem sheet, long now) {
    if (item.state() != ItemState.GOOD) {
      return item.state();
    }
    Long at = lapsesAt(morning, item, sheet);
    return at != null && at <= now ? ItemState.LAPSED : ItemState.GOOD;
  }

  /**
   * When the item stops counting, or null.
   *
   * @param sheet what the present sheet says of it, or null if it does not ask for it
   */
  static Long lapsesAt(Morning morning, Item item, SheetItem sheet) {
    if (item.state() != ItemState.GOOD
        || sheet == null
        || sheet.life() == null
        || sheet.life().minutes() == null) {
      return null;
    }
    CaseDay day = morning.caseOf(item.ref());
    long at = sheet.life().until(item.since());
    if (day == null) {
      // Of a later case: the board knows no step of it, so the clock alone counts.
      return at;
    }
    if (sheet.gates() != null && day.hasPassed(sheet.gates())) {
      return null;
    }
    Long inRoom = inRoomAt(day);
    boolean byTheClockOnly = inRoom != null && at > inRoom && sheet.section() != Section.START;
    return byTheClockOnly ? null : (Long) at;
  }

  /** When the patient was first known to be in the room, or null. */
  private static Long inRoomAt(CaseDay day) {
    Long first = null;
    for (var reached : day.steps().entrySet()) {
      if (reached.getKey().compareTo(Step.WHEELS_IN) >= 0
          && (first == null || reached.getValue() < first)) {
        first = reached.getValue();
      }
    }
    return first;
  }
}
