package sunup.moves;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.Run;

/**
 * A morning and copies of it, simulated with the same draws. A component that a copy leaves as it
 * is has the bits that it had and is not simulated again. All late minutes are measured against the
 * targets of the morning itself: an agreed later time makes no minutes vanish.
 */
final class Stream {
  /** Trials of one slice of work. */
  static final int SLICE = 64;

  /** All of an input that one component's trials depend on; what moves never change is left out. */
  private record Content(
      List<RoomIn> rooms, List<PersonIn> people, List<KindIn> kinds, List<PlaceIn> places) {}

  private final long seed;
  private final int trials;
  private final Map<String, Long> targets = new HashMap<>();
  private final Map<Content, Map<String, long[]>> known = new HashMap<>();

  /**
   * @param morning whose targets count
   */
  Stream(ForecastInput morning, long seed, int trials) {
    this.seed = seed;
    this.trials = trials;
    for (RoomIn room : morning.rooms()) {
      targets.put(room.id(), room.target());
    }
  }

  /** The late milliseconds of a copy, trial by trial. Done slice by slice. */
  final class Copy {
    private final ForecastInput in;
    private final List<List<String>> components;
    private final Map<String, long[]> late = new HashMap<>();
    private int next;
    private Content content;
    private Run run;

    Copy(ForecastInput copy) {
      in = copy.with(seed, trials);
      components = Run.components(in);
      skipKnown();
    }

    /** One slice of work. Returns false once nothing is left to do. */
    boolean advance() {
      if (next == components.size()) {
        return false;
      }
      if (run == null) {
        run = Run.of(in, components.get(next));
      }
      run.advance(Math.min(trials, run.trials() + SLICE));
      if (run.trials() == trials) {
        Map<String, long[]> lates = new HashMap<>();
        for (String room : components.get(next)) {
          lates.put(room, late(room));
        }
        known.put(content, lates);
        late.putAll(lates);
        run = null;
        next++;
        skipKnown();
      }
      return next < components.size();
    }

    private void skipKnown() {
      for (; next < components.size(); next++) {
        content = content(in, components.get(next));
        Map<String, long[]> lates = known.get(content);
        if (lates == null) {
          return;
        }
        late.putAll(lates);
      }
    }

    private long[] late(String room) {
      long[] late = run.starts(room);
      long target = targets.get(room);
      for (int n = 0; n < late.length; n++) {
        late[n] = Math.max(0, late[n] - target);
      }
      return late;
    }

    /** Of one room; all slices must be done. */
    long[] late(RoomIn room) {
      return late.get(room.id());
    }
  }

  private static Content content(ForecastInput in, List<String> ids) {
    Set<String> inside = new HashSet<>(ids);
    Set<String> did = new HashSet<>();
    Set<String> kindIds = new HashSet<>();
    Set<String> placeIds = new HashSet<>();
    List<RoomIn> rooms = new ArrayList<>();
    for (RoomIn room : in.rooms()) {
      if (inside.contains(room.id())) {
        rooms.add(room);
        for (ItemIn item : room.items()) {
          did.add(item.progress().by());
          did.add(item.progress().taken());
          placeIds.add(item.place());
          for (Need need : item.needs()) {
            kindIds.add(need.kind());
          }
        }
      }
    }
    List<PersonIn> people = new ArrayList<>();
    for (PersonIn p : in.people()) {
      if (did.contains(p.id()) || ids.stream().anyMatch(r -> Suite.serves(p, r))) {
        people.add(p);
      }
    }
    List<KindIn> kinds = new ArrayList<>();
    for (KindIn k : in.kinds()) {
      if (kindIds.contains(k.id())) {
        List<String> promised = k.promised().stream().filter(inside::contains).toList();
        kinds.add(new KindIn(k.id(), k.capacity(), promised));
      }
    }
    List<PlaceIn> places = in.places().stream().filter(p -> placeIds.contains(p.id())).toList();
    return new Content(rooms, people, kinds, places);
  }
}
