package sunup.board;

import java.util.List;
import java.util.Objects;
import sunup.board.Morning.CaseDay;
import sunup.board.Outcome.Refused;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** The set-up of a room's next case is begun. What is said of its items is {@link ItemRules}'. */
final class NextCaseRules {
  /** More than any room has cases in a day: a screen that begins one after the other is stopped. */
  static final int MOST_IN_A_ROOM = 12;

  /** An id has forty characters at most: what is left of them is for the number. */
  private static final int STEM = 35;

  private NextCaseRules() {}

  static Outcome begin(Ask ask, Command.SetUpNext c) {
    Morning morning = ask.morning;
    Refused refused =
        Ask.first(ask.unknown(c.room()), ask.unknown(c.like()), Rights.checkRoom(ask, c.room()));
    if (refused != null) {
      return refused;
    }
    CaseDay first = morning.caseIn(c.room());
    NextCase newest = NextCase.newestIn(morning, c.room());
    boolean started = first != null && first.hasPassed(morning.settings().startEvent());
    // One that was cancelled after its start is not set up again: the room goes on to its next.
    if (first == null || (first.cancelled() && !started && newest == null)) {
      return Ask.refuse(
          RefusalCode.CASE_CANCELLED, "The desk adds the room's first case; that one is set up.");
    }
    if (!started && !first.cancelled()) {
      return Ask.refuse(
          RefusalCode.ROOM_TAKEN,
          "Room "
              + c.room()
              + " has not started: what is set up now is its first case. Begin the next one"
              + " after.");
    }
    if (newest != null && newest.like().equals(c.like()) && newest.isUntouched(morning)) {
      return ask.accept();
    }
    if (!Objects.equals(newest == null ? null : newest.id(), c.after())) {
      return newest == null
          ? Ask.unknownUnless(false, "next case", c.after())
          : Ask.refuse(
              RefusalCode.CHANGED_MEANWHILE,
              newest.id() + " was begun " + Meanwhile.by(ask, newest.last()));
    }
    if (there(morning, c.room()) >= MOST_IN_A_ROOM) {
      return Ask.refuse(
          RefusalCode.OUT_OF_RANGE,
          "Room "
              + c.room()
              + " had "
              + MOST_IN_A_ROOM
              + " next cases this morning, the most that the board keeps. Set this one up on"
              + " paper.");
    }
    CasePlan like = morning.cases().get(c.like()).plan();
    ComposedSheet sheet = morning.sheets().get(like.sheet());
    return ask.accept(
        new Event.NextCaseBegun(
            free(morning, c.room()),
            c.room(),
            like.id(),
            like.technique(),
            like.options(),
            sheet.hash(),
            carried(ask, c.room(), sheet)));
  }

  /** The room's second case is {@code 7.2}, its third {@code 7.3}. */
  static CaseId free(Morning morning, RoomId room) {
    String stem = room.value().substring(0, Math.min(STEM, room.value().length()));
    for (long n = there(morning, room) + 2; ; n++) {
      CaseId id = new CaseId(stem + "." + n);
      if (!morning.cases().containsKey(id) && !morning.next().containsKey(id)) {
        return id;
      }
    }
  }

  private static long there(Morning morning, RoomId room) {
    return morning.next().values().stream().filter(n -> n.room().equals(room)).count();
  }

  /** What is good now and still will be: the machine's checks of the day. */
  private static List<String> carried(Ask ask, RoomId room, ComposedSheet sheet) {
    return NextCase.setUpOf(sheet).stream()
        .filter(SheetItem::outlastsItsCase)
        .filter(item -> isGood(NextCase.before(ask.morning, room, item.key()), item, ask.at))
        .map(SheetItem::key)
        .toList();
  }

  private static boolean isGood(Item item, SheetItem asks, long at) {
    return item != null && item.state() == ItemState.GOOD && at < asks.life().until(item.since());
  }
}
