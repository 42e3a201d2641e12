package sunup.board;

import java.util.ArrayList;
import java.util.List;

/** What events about people make of the state. */
final class PeopleFacts {
  private PeopleFacts() {}

  static void added(Edit edit, Event.PersonAdded e) {
    edit.put(new Morning.PersonDay(e.plan(), null, null, null, null, null, edit.touch));
  }

  static void arrived(Edit edit, Event.PersonArrived e) {
    edit.person(e.person(), p -> Days.withArrival(p, edit.at(), e.room(), edit.touch));
    heard(edit, e.person(), e.room());
  }

  static void expected(Edit edit, Event.PersonExpected e) {
    edit.person(e.person(), p -> Days.withExpected(p, e.at(), edit.touch));
  }

  static void joined(Edit edit, Event.PersonJoined e) {
    edit.person(e.person(), p -> Days.withRoom(p, e.room(), edit.touch));
    heard(edit, e.person(), e.room());
    edit.room(
        e.room(),
        r ->
            r.help() != null && e.person().equals(r.help().answeredBy())
                ? Days.withHelp(r, null, edit.touch)
                : r);
  }

  static void left(Edit edit, Event.PersonLeft e) {
    edit.person(
        e.person(),
        p ->
            e.room() == null
                ? Days.withLeft(p, edit.at(), edit.touch)
                : Days.withRoom(p, null, edit.touch));
  }

  /** The room's work that the one had in hand, or had taken to mend, is the other's now. */
  static void handedOver(Edit edit, Event.HandedOver e) {
    edit.person(
        e.to(),
        p ->
            p.isHere()
                ? Days.withRoom(p, e.room(), edit.touch)
                : Days.withArrival(p, edit.at(), e.room(), edit.touch));
    edit.person(e.from(), p -> e.room().equals(p.room()) ? Days.withRoom(p, null, edit.touch) : p);
    List<Placed> work = new ArrayList<>(edit.from.itemsOf(e.room()));
    work.addAll(NextCase.newestItems(edit.from, e.room()));
    for (Placed placed : work) {
      boolean inHand =
          placed.item().state() == ItemState.IN_HAND && e.from().equals(placed.item().by());
      boolean mending = e.from().equals(placed.item().mender());
      if (inHand || mending) {
        edit.asideItem(
            placed.ref(),
            i -> {
              i.by = inHand ? e.to() : i.by;
              i.mender = mending ? e.to() : i.mender;
            });
      }
    }
    heard(edit, e.to(), e.room());
  }

  private static void heard(Edit edit, PersonId person, RoomId room) {
    edit.person(person, p -> Days.withWord(p, edit.at()));
    // Who comes to a room is heard there, whoever told it: the word is about one of its people.
    Morning.PersonDay day = edit.person(person);
    if (room != null && day != null && Rights.ROOM_TEAM.contains(day.plan().role())) {
      edit.room(room, r -> Days.withWord(r, edit.at()));
    }
  }
}
