package sunup.outlook;

import sunup.board.Morning;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.PlaceDay;
import sunup.board.Morning.UnitDay;
import sunup.board.PlaceId;
import sunup.board.RoomId;
import sunup.outlook.RoomSheet.Line;
import sunup.sheets.Uses;

/** When something last happened that concerns one room. */
final class RoomRevision {
  private RoomRevision() {}

  /**
   * The newest journal sequence that touched the room, its case, its items, its people, or a place
   * or piece of equipment that its items use. What happens in other rooms is not among them.
   */
  static long of(Morning morning, RoomSheet sheet) {
    RoomId room = sheet.room().id();
    long newest = Math.max(sheet.room().revision(), sheet.caseDay().revision());
    for (Line line : sheet.lines()) {
      newest = Math.max(newest, line.item().revision());
      newest = Math.max(newest, ofPlace(morning, line));
      for (Uses uses : line.asks().uses()) {
        newest = Math.max(newest, ofKind(morning, uses.kind()));
      }
    }
    for (PersonDay person : morning.people().values()) {
      if (room.equals(person.plan().room()) || room.equals(person.room())) {
        newest = Math.max(newest, person.revision());
      }
    }
    return newest;
  }

  private static long ofPlace(Morning morning, Line line) {
    String place = line.asks().place();
    PlaceDay day = place == null ? null : morning.places().get(new PlaceId(place));
    return day == null ? 0 : day.revision();
  }

  private static long ofKind(Morning morning, String kind) {
    long newest = 0;
    for (UnitDay unit : morning.units().values()) {
      newest = unit.plan().kind().equals(kind) ? Math.max(newest, unit.revision()) : newest;
    }
    return newest;
  }
}
