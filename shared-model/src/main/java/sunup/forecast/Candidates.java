package sunup.forecast;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.RoomIn;

/** Who can take a slot: people of the room and roaming ones, by index; and equal groups of them. */
final class Candidates {
  /** One of some roles, in a room. */
  private record Wanted(int room, List<String> any) {}

  /** Indices of people. */
  private record Found(IntBuffer own, IntBuffer roaming) {}

  private final List<RoomIn> rooms;
  private final List<PersonIn> people;

  /** By room those who can be sent there, by index. */
  private final Map<String, List<Integer>> serving = new HashMap<>();

  private final Map<Wanted, Found> found = new HashMap<>();
  private final Map<IntBuffer, Integer> groups = new HashMap<>();

  Candidates(List<RoomIn> rooms, List<PersonIn> people) {
    this.rooms = rooms;
    this.people = people;
    for (RoomIn room : rooms) {
      serving.put(room.id(), new ArrayList<>());
    }
    for (int p = 0; p < people.size(); p++) {
      for (String room : Components.roomsOf(people.get(p), serving.keySet())) {
        serving.computeIfAbsent(room, r -> new ArrayList<>()).add(p);
      }
    }
  }

  int[] own(int room, List<String> any) {
    return found.computeIfAbsent(new Wanted(room, any), this::find).own().array();
  }

  int[] roaming(int room, List<String> any) {
    return found.computeIfAbsent(new Wanted(room, any), this::find).roaming().array();
  }

  private Found find(Wanted wanted) {
    IntStream.Builder mine = IntStream.builder();
    IntStream.Builder others = IntStream.builder();
    for (int p : serving.getOrDefault(rooms.get(wanted.room()).id(), List.of())) {
      PersonIn person = people.get(p);
      if (Components.hasRole(person, wanted.any())) {
        (person.room() != null ? mine : others).add(p);
      }
    }
    return new Found(
        IntBuffer.wrap(mine.build().toArray()), IntBuffer.wrap(others.build().toArray()));
  }

  /** The number of a group; equal groups have one. */
  int group(int[] members) {
    Integer id = groups.putIfAbsent(IntBuffer.wrap(members), groups.size());
    return id == null ? groups.size() - 1 : id;
  }

  /** The members of the groups so far, by number. */
  Model.Bits[] groups() {
    Model.Bits[] all = new Model.Bits[groups.size()];
    groups.forEach(
        (members, id) -> {
          all[id] = new Model.Bits();
          for (int p : members.array()) {
            all[id].set(p >> 6, p & 63);
          }
        });
    return all;
  }
}
