package sunup.moves;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.State;

/** Who and what is where in an input. */
final class Suite {
  /** Those without whom a room that a patient is on the way to or in would be left. */
  private static final Set<String> CARERS =
      Set.of("anaesthetist", "trainee", "supervisor", "circulating", "scrub", "holding");

  private Suite() {}

  /** True once the patient is sent for: nobody who may be alone with it is asked away. */
  static boolean isUnderWay(RoomIn room) {
    if (room.startedAt() != null) {
      return true;
    }
    for (ItemIn item : room.items()) {
      State state = item.progress().state();
      if (item.marks() != null && (state == State.GOOD || state == State.IN_HAND)) {
        return true;
      }
    }
    return false;
  }

  static RoomIn room(ForecastInput in, String id) {
    for (RoomIn room : in.rooms()) {
      if (room.id().equals(id)) {
        return room;
      }
    }
    return null;
  }

  static PersonIn person(ForecastInput in, String id) {
    for (PersonIn person : in.people()) {
      if (person.id().equals(id)) {
        return person;
      }
    }
    return null;
  }

  static boolean serves(PersonIn p, String room) {
    return p.room() != null
        ? p.room().equals(room)
        : p.covers().isEmpty() || p.covers().contains(room);
  }

  static boolean fits(PersonIn p, List<String> any) {
    return p.roles().stream().anyMatch(any::contains);
  }

  static boolean isOpen(ItemIn item) {
    return item.progress().state() == State.OPEN && item.arrival() == null;
  }

  /** True if the item is open, or a fault, and this person may do a part of it. */
  static boolean canDo(PersonIn p, ItemIn item) {
    return isOpen(item) && item.who().stream().anyMatch(any -> fits(p, any));
  }

  /** A fault that nobody is mending and this person may. */
  static boolean canMend(PersonIn p, ItemIn item) {
    return item.progress().state() == State.FAULT
        && item.progress().taken() == null
        && fits(p, item.progress().mender());
  }

  /** True if this person has work in hand anywhere by report. */
  static boolean isBusy(ForecastInput in, PersonIn p) {
    for (RoomIn room : in.rooms()) {
      for (ItemIn item : room.items()) {
        State state = item.progress().state();
        boolean has = state == State.IN_HAND && p.id().equals(item.progress().by());
        boolean mends = state == State.FAULT && p.id().equals(item.progress().taken());
        if (has || mends) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether sending this person to that room could leave a patient with too few carers. */
  static boolean leavesAPatient(ForecastInput in, PersonIn p, String to) {
    Set<String> caring = new HashSet<>(p.roles());
    caring.retainAll(CARERS);
    if (caring.isEmpty()) {
      return false;
    }
    for (RoomIn room : in.rooms()) {
      if (!room.id().equals(to) && isUnderWay(room) && serves(p, room.id())) {
        boolean another =
            in.people().stream()
                .anyMatch(
                    o ->
                        !o.id().equals(p.id())
                            && room.id().equals(o.room())
                            && o.arrivedAt() != null
                            && o.roles().stream().anyMatch(caring::contains));
        if (!another) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether another of the room's own people, who has come, can do what this one does. */
  static boolean hasASecond(ForecastInput in, PersonIn p) {
    return in.people().stream()
        .anyMatch(
            o ->
                !o.id().equals(p.id())
                    && p.room().equals(o.room())
                    && o.arrivedAt() != null
                    && o.roles().containsAll(p.roles()));
  }
}
