package sunup.board;

import java.util.List;
import sunup.board.Morning.CaseDay;
import sunup.board.Outcome.Refused;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** The set-up of a room's next case is begun. What is said of its items is {@link ItemRules}'. */
final class NextCaseRules {
  private static final long MINUTE = 60_000L;

  private NextCaseRules() {}

  static Outcome begin(Ask ask, Command.SetUpNext c) {
    Morning morning = ask.morning;
    Refused refused =
        Ask.first(ask.unknown(c.room()), ask.unknown(c.like()), Rights.checkRoom(ask, c.room()));
    if (refused != null) {
      return refused;
    }
    CaseDay first = morning.caseIn(c.room());
    if (first == null || first.cancelled()) {
      return Ask.refuse(
          RefusalCode.CASE_CANCELLED, "The desk adds the room's first case; that one is set up.");
    }
    if (!first.hasPassed(morning.settings().startEvent())) {
      return Ask.refuse(
          RefusalCode.ROOM_TAKEN,
          "Room "
              + c.room()
              + " has not started: what is set up now is its first case. Begin the next one"
              + " after.");
    }
    NextCase newest = NextCase.newestIn(morning, c.room());
    if (newest != null && newest.like().equals(c.like()) && newest.isUntouched(morning)) {
      return ask.accept();
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
  private static CaseId free(Morning morning, RoomId room) {
    long there = morning.next().values().stream().filter(n -> n.room().equals(room)).count();
    for (long n = there + 2; ; n++) {
      CaseId id = new CaseId(room + "." + n);
      if (!morning.cases().containsKey(id) && !morning.next().containsKey(id)) {
        return id;
      }
    }
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
    return item != null
        && item.state() == ItemState.GOOD
        && at < item.since() + asks.life().minutes() * MINUTE;
  }
}
