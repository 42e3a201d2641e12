package sunup.board;

import java.util.List;
import sunup.board.Morning.PlaceDay;
import sunup.board.Morning.UnitDay;

/** What events about equipment, places and rooms make of the state. */
final class ThingFacts {
  private ThingFacts() {}

  static void claimed(Edit edit, Event.UnitClaimed e) {
    UnitDay claimed = edit.from.units().get(e.unit());
    if (claimed == null) {
      return;
    }
    // The room has one now: whatever unit of the kind was promised to it, the promise is kept.
    for (UnitDay unit : List.copyOf(edit.from.units().values())) {
      boolean kept =
          unit.plan().kind().equals(claimed.plan().kind()) && e.room().equals(unit.promised());
      if (kept) {
        edit.put(new UnitDay(unit.plan(), unit.with(), unit.since(), null, edit.touch));
      }
    }
    edit.unit(e.unit(), u -> new UnitDay(u.plan(), e.room(), edit.at(), u.promised(), edit.touch));
  }

  static void released(Edit edit, Event.UnitReleased e) {
    edit.unit(e.unit(), u -> new UnitDay(u.plan(), null, null, u.promised(), edit.touch));
  }

  static void promised(Edit edit, Event.UnitPromised e) {
    edit.unit(e.unit(), u -> new UnitDay(u.plan(), u.with(), u.since(), e.room(), edit.touch));
  }

  static void placeOpens(Edit edit, Event.PlaceOpening e) {
    edit.place(e.place(), p -> new PlaceDay(p.plan(), e.at(), edit.touch));
  }

  static void roomUsed(Edit edit, Event.RoomUsed e) {
    edit.room(e.room(), r -> Days.withUse(r, e.use(), e.until(), edit.at(), edit.touch));
  }
}
