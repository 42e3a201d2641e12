package sunup.outlook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.board.Item;
import sunup.board.ItemRef;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.RoomDay;
import sunup.board.Placed;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.board.Section;
import sunup.board.Step;
import sunup.sheets.SheetItem;

/**
 * One room with its first case and the lines of its list as they stand at one moment. Everything
 * that the outlook says of a room is read from here, with the durations that the morning goes by.
 *
 * @param room the room-day
 * @param caseDay its case
 * @param lines in sheet order
 * @param byKey the same by the items' keys
 * @param startStep the site's start event
 * @param now the moment that lapses are worked out for
 */
record RoomSheet(
    RoomDay room,
    CaseDay caseDay,
    List<Line> lines,
    Map<String, Line> byKey,
    Step startStep,
    long now) {

  /** One item: what the sheet asks and where it stands. */
  record Line(ItemRef ref, SheetItem asks, Item item, ItemState state, int order) {
    boolean isDone() {
      return state == ItemState.GOOD || state == ItemState.LEFT_OUT;
    }
  }

  /** The room's sheet, or null if it has no case that will happen. */
  static RoomSheet of(Morning morning, RoomId id, long now) {
    RoomDay room = morning.rooms().get(id);
    CaseDay caseDay = room.caseId() == null ? null : morning.cases().get(room.caseId());
    if (caseDay == null || caseDay.cancelled()) {
      return null;
    }
    List<Line> lines = new ArrayList<>();
    Step last = lastReached(caseDay);
    for (Placed placed : morning.itemsOf(id)) {
      SheetItem asks =
          morning.learned() == null ? placed.sheet() : morning.learned().applied(placed.sheet());
      boolean reached = asks.marks() != null && caseDay.steps().containsKey(asks.marks());
      ItemState state = reached ? ItemState.GOOD : morning.stateOf(placed, now);
      lines.add(new Line(placed.ref(), asks, placed.item(), state, lines.size()));
    }
    List<Line> all = chainUpTo(lines, last);
    Map<String, Line> byKey = new HashMap<>();
    for (Line line : all) {
      byKey.put(line.asks().key(), line);
    }
    return new RoomSheet(room, caseDay, all, byKey, morning.settings().startEvent(), now);
  }

  private static Step lastReached(CaseDay caseDay) {
    Step last = null;
    for (Step step : Step.values()) {
      if (caseDay.steps().containsKey(step)) {
        last = step;
      }
    }
    return last;
  }

  /** What lies before a step that happened has happened too, whether or not anybody touched it. */
  private static List<Line> chainUpTo(List<Line> lines, Step reached) {
    if (reached == null) {
      return lines;
    }
    int last = -1;
    for (Line line : lines) {
      Step marks = line.asks().marks();
      if (marks != null && marks.compareTo(reached) <= 0) {
        last = line.order();
      }
    }
    List<Line> result = new ArrayList<>();
    for (Line line : lines) {
      boolean passed = line.asks().section() == Section.START && line.order() <= last;
      result.add(
          passed
              ? new Line(line.ref(), line.asks(), line.item(), ItemState.GOOD, line.order())
              : line);
    }
    return result;
  }

  long target() {
    return caseDay.target();
  }

  /** When it started: as it was told, or else at the latest by the steps told after; or null. */
  Long startedAt() {
    return caseDay.startedAt(startStep);
  }

  /** True if it started and nobody told when. */
  boolean isStartInferred() {
    return startedAt() != null && !caseDay.steps().containsKey(startStep);
  }

  /**
   * True if the item must be good before the start event may happen; the anaesthetist's set-up also
   * where the start is wheels in and it gates induction only: no room is ready without it.
   */
  boolean gatesStart(SheetItem asks) {
    if (asks.section() == Section.START || asks.gates() == null) {
      return false;
    }
    return asks.gates().compareTo(startStep) <= 0
        || (asks.section().isSetUp() && asks.gates().compareTo(Step.INDUCTION) <= 0);
  }

  /** What the start still waits for by what was reported, the chain of steps itself left out. */
  List<Line> openForStart() {
    List<Line> open = new ArrayList<>();
    for (Line line : lines) {
      if (gatesStart(line.asks()) && !line.isDone()) {
        open.add(line);
      }
    }
    return open;
  }

  /** A fault that gates the start and that nobody is mending, or null. */
  Line untakenFault() {
    for (Line line : lines) {
      if (line.state() == ItemState.FAULT
          && gatesStart(line.asks())
          && line.item().mender() == null) {
        return line;
      }
    }
    return null;
  }

  /** True if the room should be free by now by what was said, and nobody said that it is. */
  boolean isOverrun() {
    return room.use() != RoomUse.FREE
        && room.useUntil() != null
        && now >= room.useUntil() + FirstSettings.OVERRUN_NOTED;
  }

  Line line(String key) {
    return key == null ? null : byKey.get(key);
  }
}
