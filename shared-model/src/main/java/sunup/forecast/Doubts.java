package sunup.forecast;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.State;

/** Items that nobody can ever do, or for which there are too few units, by field. */
final class Doubts {
  private final ForecastInput in;
  private final Map<String, Integer> capacity = new HashMap<>();
  private final List<String> told = new ArrayList<>();
  private String never;

  private Doubts(ForecastInput in) {
    this.in = in;
    for (KindIn k : in.kinds()) {
      capacity.put(k.id(), k.capacity());
    }
    for (int r = 0; r < in.rooms().size(); r++) {
      room("rooms[" + r + "]", in.rooms().get(r));
    }
  }

  static Doubts of(ForecastInput in) {
    return new Doubts(in);
  }

  /** What is never done, though no start waits for it. */
  List<String> told() {
    return List.copyOf(told);
  }

  /** Why a room can never start, or null. */
  String never() {
    return never;
  }

  private void room(String at, RoomIn room) {
    if (room.startedAt() != null) {
      return;
    }
    Set<String> awaited = awaited(room);
    for (int i = 0; i < room.items().size(); i++) {
      ItemIn item = room.items().get(i);
      State state = item.progress().state();
      if (state == State.OPEN || state == State.FAULT) {
        String why = why(at + ".items[" + i + "]", room, item);
        if (why != null && awaited.contains(item.key())) {
          never = never == null ? why + "; so room \"" + room.id() + "\" can never start" : never;
        } else if (why != null) {
          told.add(why + "; no start waits for it");
        }
      }
    }
  }

  /** The start and all that it waits for. */
  private static Set<String> awaited(RoomIn room) {
    Set<String> found = new HashSet<>();
    List<ItemIn> next = new ArrayList<>();
    room.items().stream().filter(i -> room.startStep().equals(i.marks())).forEach(next::add);
    while (!next.isEmpty()) {
      ItemIn item = next.remove(next.size() - 1);
      State state = item.progress().state();
      if (state != State.GOOD && state != State.LEFT_OUT && found.add(item.key())) {
        for (ItemIn other : room.items()) {
          boolean gates = item.marks() != null && item.marks().equals(other.gates());
          if (gates || item.after().contains(other.key())) {
            next.add(other);
          }
        }
      }
    }
    return found;
  }

  private String why(String at, RoomIn room, ItemIn item) {
    for (List<String> roles : item.who()) {
      if (!canBeHad(room, roles)) {
        return at + ".who: nobody who serves the room has a role of " + roles;
      }
    }
    Progress now = item.progress();
    if (now.state() == State.FAULT
        && now.taken() == null
        && !now.mender().isEmpty()
        && !canBeHad(room, now.mender())) {
      return at + ".progress.mender: nobody who serves the room has a role of " + now.mender();
    }
    for (Need n : item.needs()) {
      if (!n.held() && n.units() > capacity.get(n.kind())) {
        return at
            + ".needs.units: "
            + n.units()
            + " of "
            + n.kind()
            + " are wanted and "
            + capacity.get(n.kind())
            + " exist";
      }
    }
    return null;
  }

  private boolean canBeHad(RoomIn room, List<String> roles) {
    for (PersonIn p : in.people()) {
      boolean serves = Components.roomsOf(p, List.of(room.id())).contains(room.id());
      if (serves && Components.hasRole(p, roles)) {
        return true;
      }
    }
    return false;
  }
}
