package sunup.forecast;

import java.util.ArrayList;
import java.util.Collection;
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

/**
 * Rooms that depend on each other (rule 5): one person may still be claimed by both, or one kind of
 * equipment is wanted by both and its units don't suffice for all that may still be wanted.
 */
final class Components {
  private final ForecastInput in;
  private final int[] parent;
  private final List<Claims> claims = new ArrayList<>();
  private final Map<String, Integer> position = new HashMap<>();

  /** By person the rooms where he or she has something in hand. */
  private final Map<String, List<Integer>> inHandOf = new HashMap<>();

  private Components(ForecastInput in) {
    this.in = in;
    parent = new int[in.rooms().size()];
    for (int i = 0; i < parent.length; i++) {
      parent[i] = i;
    }
    for (RoomIn room : in.rooms()) {
      Claims claim = new Claims(room);
      for (String id : claim.people) {
        inHandOf.computeIfAbsent(id, k -> new ArrayList<>()).add(claims.size());
      }
      position.put(room.id(), claims.size());
      claims.add(claim);
    }
  }

  /** Rooms by position, each list and the lists in the input's order. */
  static List<List<Integer>> of(ForecastInput in) {
    Components c = new Components(in);
    for (PersonIn p : in.people()) {
      c.byPerson(p);
    }
    for (KindIn k : in.kinds()) {
      c.byKind(k);
    }
    Map<Integer, List<Integer>> found = new HashMap<>();
    List<List<Integer>> lists = new ArrayList<>();
    for (int r = 0; r < in.rooms().size(); r++) {
      int root = c.root(r);
      List<Integer> list = found.get(root);
      if (list == null) {
        list = new ArrayList<>();
        found.put(root, list);
        lists.add(list);
      }
      list.add(r);
    }
    return lists;
  }

  private int root(int r) {
    int top = r;
    while (parent[top] != top) {
      parent[top] = parent[parent[top]];
      top = parent[top];
    }
    return top;
  }

  private void join(int a, int b) {
    int x = root(a);
    int y = root(b);
    parent[Math.max(x, y)] = Math.min(x, y);
  }

  private void byPerson(PersonIn p) {
    int first = -1;
    for (int r : inHandOf.getOrDefault(p.id(), List.of())) {
      first = first < 0 ? r : first;
      join(first, r);
    }
    for (String id : roomsOf(p, position.keySet())) {
      Integer r = position.get(id);
      if (r != null && claims.get(r).wantsOneOf(p.roles())) {
        first = first < 0 ? r : first;
        join(first, r);
      }
    }
  }

  /** What of people a room may still claim: those who have work there in hand, and roles. */
  private static final class Claims {
    private final Set<String> people = new HashSet<>();
    private final Set<String> roles = new HashSet<>();

    Claims(RoomIn room) {
      for (ItemIn item : room.items()) {
        Progress now = item.progress();
        boolean fault = now.state() == State.FAULT;
        if (now.state() == State.IN_HAND && now.by() != null) {
          people.add(now.by());
        }
        if (fault && now.taken() != null) {
          people.add(now.taken());
        } else if (fault) {
          roles.addAll(now.mender());
        }
        // A good item that can lapse may be done again.
        if (fault
            || now.state() == State.OPEN
            || now.state() == State.IN_HAND
            || (now.state() == State.GOOD && item.lifeMs() != null)) {
          item.who().forEach(roles::addAll);
        }
      }
    }

    boolean wantsOneOf(List<String> some) {
      return some.stream().anyMatch(roles::contains);
    }
  }

  /** The rooms that a person can be sent to, of all. */
  static Collection<String> roomsOf(PersonIn p, Collection<String> all) {
    if (p.room() != null) {
      return List.of(p.room());
    }
    return p.covers().isEmpty() ? all : p.covers();
  }

  static boolean hasRole(PersonIn p, List<String> any) {
    for (String role : any) {
      if (p.roles().contains(role)) {
        return true;
      }
    }
    return false;
  }

  private void byKind(KindIn k) {
    int wanted = 0;
    List<Integer> users = new ArrayList<>();
    for (int r = 0; r < in.rooms().size(); r++) {
      int units = unitsOf(in.rooms().get(r), k.id());
      if (units > 0) {
        users.add(r);
        wanted += units;
      }
    }
    if (wanted > k.capacity()) {
      for (int r : users) {
        join(users.get(0), r);
      }
    }
  }

  private static int unitsOf(RoomIn room, String kind) {
    int units = 0;
    for (ItemIn item : room.items()) {
      for (Need n : item.needs()) {
        boolean done =
            item.progress().state() == State.LEFT_OUT
                || (item.progress().state() == State.GOOD && !n.held() && item.lifeMs() == null);
        if (n.kind().equals(kind) && !done) {
          units += n.units();
        }
      }
    }
    return units;
  }
}
