package sunup.forecast.again;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.State;

/** People, tasks and equipment of one trial as they are known at now. */
final class Suite {
  final ForecastInput in;
  final Map<String, Somebody> people = new HashMap<>();
  final Map<String, PlaceIn> places = new HashMap<>();
  final Map<String, Integer> free = new HashMap<>();
  final List<Task> tasks = new ArrayList<>();
  private final List<List<Task>> rooms = new ArrayList<>();
  private final List<Task> starts = new ArrayList<>();
  final long[] occupiedUntil;

  Suite(ForecastInput in) {
    this.in = in;
    occupiedUntil = new long[in.rooms().size()];
    in.places().forEach(p -> places.put(p.id(), p));
    in.kinds().forEach(k -> free.put(k.id(), k.capacity()));
    for (PersonIn p : in.people()) {
      Somebody s = new Somebody(p);
      s.idleSince = p.arrivedAt() == null ? 0 : p.arrivedAt();
      people.put(p.id(), s);
    }
    for (int r = 0; r < in.rooms().size(); r++) {
      room(in.rooms().get(r), r);
    }
  }

  private void room(RoomIn room, int at) {
    List<Task> ofRoom = new ArrayList<>();
    for (ItemIn item : room.items()) {
      Task task = new Task(room, at, item, false);
      if (item.progress().state() == State.FAULT) {
        Task mending = new Task(room, at, item, true);
        ofRoom.add(mending);
        link(mending, task);
      }
      ofRoom.add(task);
    }
    for (Task a : ofRoom) {
      for (Task b : ofRoom) {
        if (!a.mending && !b.mending && precedes(a.item, b.item)) {
          link(a, b);
        }
      }
      for (List<String> roles : a.who()) {
        List<Somebody> candidates = new ArrayList<>();
        for (Somebody p : people.values()) {
          if (p.serves(room.id()) && p.is.roles().stream().anyMatch(roles::contains)) {
            candidates.add(p);
          }
        }
        a.slots.add(candidates);
      }
      State state = a.mending ? State.OPEN : a.item.progress().state();
      if (state == State.GOOD || state == State.LEFT_OUT) {
        a.state = Task.State.GOOD;
        Somebody by = people.get(a.item.progress().by());
        if (by != null && state == State.GOOD) {
          by.idleSince = Math.max(by.idleSince, a.item.progress().since());
        }
      }
    }
    tasks.addAll(ofRoom);
    rooms.add(ofRoom);
    starts.add(marking(at, room.startStep()));
  }

  private static boolean precedes(ItemIn a, ItemIn b) {
    return b.after().contains(a.key())
        || (a.gates() != null && a.gates().equals(b.marks()) && !a.equals(b));
  }

  private static void link(Task first, Task then) {
    then.before.add(first);
    first.dependants.add(then);
  }

  Task start(int room) {
    return starts.get(room);
  }

  /** The item of the room that marks the step. */
  Task marking(int room, String step) {
    return rooms.get(room).stream().filter(t -> step.equals(t.marks())).findFirst().orElse(null);
  }

  void claim(Task task) {
    if (!task.needs().isEmpty() && !task.holdsUnits) {
      task.holdsUnits = true;
      task.needs().forEach(n -> free.merge(n.kind(), -n.units(), Integer::sum));
    }
  }

  /** Gives back what is used until this task is good. */
  void release(Task done) {
    for (Task t : rooms.get(done.roomAt)) {
      if (t.holdsUnits) {
        String until = t.needs().get(0).until();
        if (until == null ? t == done : until.equals(done.item.key()) && !done.mending) {
          t.holdsUnits = false;
          t.needs().forEach(n -> free.merge(n.kind(), n.units(), Integer::sum));
        }
      }
    }
  }

  /** True if all units are there that others have no promise of. */
  boolean unitsFor(Task task) {
    if (task.holdsUnits) {
      return true;
    }
    for (Need need : task.needs()) {
      int left = free.get(need.kind());
      for (KindIn kind : in.kinds()) {
        if (kind.id().equals(need.kind())) {
          left -= promisedBefore(kind, task.room.id());
        }
      }
      if (left < need.units()) {
        return false;
      }
    }
    return true;
  }

  private final Map<String, Boolean> claimedOnce = new HashMap<>();

  void claimed(Task task) {
    task.needs().forEach(n -> claimedOnce.put(task.room.id() + "/" + n.kind(), true));
  }

  private int promisedBefore(KindIn kind, String room) {
    int kept = 0;
    for (String other : kind.promised()) {
      if (other.equals(room)) {
        break;
      }
      if (!claimedOnce.containsKey(other + "/" + kind.id())) {
        kept += largestOpenNeed(kind.id(), other);
      }
    }
    return kept;
  }

  private int largestOpenNeed(String kind, String room) {
    int most = 0;
    for (Task t : tasks) {
      if (t.room.id().equals(room) && t.state == Task.State.OPEN) {
        for (Need n : t.needs()) {
          most = n.kind().equals(kind) && !n.held() ? Math.max(most, n.units()) : most;
        }
      }
    }
    return most;
  }
}
