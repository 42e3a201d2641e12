package sunup.outlook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sunup.board.Morning.PersonDay;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.outlook.Earliest.Span;
import sunup.sheets.SheetItem;
import sunup.wire.Part;
import sunup.wire.Part.EvePart;

/** What of a draft can be mended the day before, beside the items of which something is told. */
final class EveParts {
  /** Nobody plans the desk, and a surgeon stands on the case list. */
  private static final Set<Role> NOT_PLANNED = Set.of(Role.DESK, Role.ADMIN, Role.SURGEON);

  /** A room that wants something for a while. */
  private record Want(String room, long from, long to) {}

  private final Snapshot snapshot;
  private final ForecastInput in;
  private final Map<String, Earliest> earliest = new HashMap<>();
  private final Words words;

  EveParts(Snapshot snapshot) {
    this.snapshot = snapshot;
    Map<RoomId, Set<Section>> all = new HashMap<>();
    snapshot.sheets().keySet().forEach(room -> all.put(room, EnumSet.allOf(Section.class)));
    // As if every track were reported: what nobody reports claims nothing in the forecast.
    Snapshot asked =
        new Snapshot(
            snapshot.morning(),
            snapshot.now(),
            snapshot.sheets(),
            all,
            EnumSet.allOf(Section.class));
    in = new MorningInput(asked).build(1);
    words = new Words(snapshot);
    for (RoomIn room : in.rooms()) {
      earliest.put(room.id(), new Earliest(in, room));
    }
  }

  void addTo(List<Part> parts) {
    for (KindIn kind : in.kinds()) {
      add(parts, "equipment", kind.id(), kind.id(), kind.capacity(), wantsOf(kind.id()));
    }
    supervisors().forEach((who, wants) -> supervisor(parts, who, wants));
    people(parts);
    options(parts);
  }

  private List<Want> wantsOf(String kind) {
    List<Want> wants = new ArrayList<>();
    for (RoomIn room : in.rooms()) {
      Earliest spans = earliest.get(room.id());
      for (ItemIn item : room.items()) {
        for (Need need : item.needs()) {
          if (need.kind().equals(kind)) {
            Span span = spans.of(item.key());
            boolean goesOn = snapshot.sheet(room.id()).line(need.until()) != null;
            long to = goesOn ? Math.max(span.to(), spans.of(need.until()).to()) : span.to();
            wants.add(new Want(room.id(), span.from(), to));
          }
        }
      }
    }
    return wants;
  }

  /** By the supervisors who may come, what rooms want one for. */
  private Map<Set<String>, List<Want>> supervisors() {
    Map<Set<String>, List<Want>> wants = new LinkedHashMap<>();
    for (RoomIn room : in.rooms()) {
      Set<String> who = serving(new RoomId(room.id()));
      for (ItemIn item : room.items()) {
        boolean only =
            item.who().stream().anyMatch(any -> any.equals(List.of(Role.SUPERVISOR.word())));
        if (only && !who.isEmpty()) {
          Span span = earliest.get(room.id()).of(item.key());
          wants
              .computeIfAbsent(who, w -> new ArrayList<>())
              .add(new Want(room.id(), span.from(), span.to()));
        }
      }
    }
    return wants;
  }

  private Set<String> serving(RoomId room) {
    Set<String> who = new TreeSet<>();
    for (PersonDay person : snapshot.morning().people().values()) {
      if (person.plan().role() == Role.SUPERVISOR
          && person.leftAt() == null
          && Snapshot.serves(person, room)) {
        who.add(person.plan().id().value());
      }
    }
    return who;
  }

  private void supervisor(List<Part> parts, Set<String> who, List<Want> wants) {
    String names = String.join(", ", who);
    add(parts, "supervisor", names, names, who.size(), wants);
  }

  /** The moment at which most rooms want it, if they are more than there are. */
  private void add(
      List<Part> parts, String kind, String key, String name, int capacity, List<Want> wants) {
    Set<String> most = Set.of();
    long at = 0;
    List<Want> byTime = new ArrayList<>(wants);
    byTime.sort(Comparator.comparingLong(Want::from));
    for (Want one : byTime) {
      Set<String> rooms = new TreeSet<>();
      for (Want other : wants) {
        if (other.from() <= one.from() && (one.from() < other.to() || other.equals(one))) {
          rooms.add(other.room());
        }
      }
      if (rooms.size() > most.size()) {
        most = rooms;
        at = one.from();
      }
    }
    if (most.size() > capacity) {
      String there = capacity == 1 ? "there is 1" : "there are " + capacity;
      parts.add(
          new EvePart(
              "eve/" + kind + "/" + key,
              kind,
              inOrder(most),
              "%s: %d rooms may want one at %s, %s"
                  .formatted(name, most.size(), words.clock(at), there)));
    }
  }

  private List<String> inOrder(Set<String> rooms) {
    return snapshot.morning().rooms().keySet().stream()
        .map(RoomId::value)
        .filter(rooms::contains)
        .toList();
  }

  /** Roles that a case's list asks for and in which nobody serves its room. */
  private void people(List<Part> parts) {
    Map<String, Set<String>> missing = new LinkedHashMap<>();
    snapshot
        .sheets()
        .forEach(
            (room, sheet) -> {
              Set<Role> there = snapshot.rolesFor(room);
              for (RoomSheet.Line line : sheet.lines()) {
                missing(line.asks(), there)
                    .forEach(
                        who ->
                            missing.computeIfAbsent(who, w -> new TreeSet<>()).add(room.value()));
              }
            });
    missing.forEach(
        (who, rooms) ->
            parts.add(
                new EvePart(
                    "eve/people/" + who, "people", inOrder(rooms), "nobody planned as " + who)));
  }

  private static List<String> missing(SheetItem asks, Set<Role> there) {
    List<String> missing = new ArrayList<>();
    for (List<Role> any : asks.who()) {
      if (any.stream().noneMatch(r -> there.contains(r) || NOT_PLANNED.contains(r))) {
        missing.add(any.stream().map(Role::word).collect(Collectors.joining(" or ")));
      }
    }
    return missing;
  }

  private void options(List<Part> parts) {
    Set<String> plain = new TreeSet<>();
    snapshot
        .sheets()
        .forEach(
            (room, sheet) -> {
              if (sheet.caseDay().plan().options().isEmpty()) {
                plain.add(room.value());
              }
            });
    if (!plain.isEmpty()) {
      parts.add(
          new EvePart(
              "eve/options",
              "options",
              inOrder(plain),
              "no options said: a plain set-up is planned"));
    }
  }
}
