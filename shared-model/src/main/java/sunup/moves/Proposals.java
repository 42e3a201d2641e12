package sunup.moves;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sunup.board.CaseId;
import sunup.board.Move;
import sunup.board.PersonId;
import sunup.board.PlaceId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;

/** The moves that a morning allows, those for the latest rooms first. */
final class Proposals {
  static final long MINUTE = 60_000;

  /** Rooms with less to save than this in the mean need no move. */
  static final double LEAST_LATE_MS = MINUTE;

  /** A place is asked to open so much earlier, but not sooner than it can be reached by phone. */
  static final long EARLIER = 15 * MINUTE;

  static final long PHONE = 5 * MINUTE;

  /** A stagger. */
  static final long LATER = 15 * MINUTE;

  /** Items of one move; more is no help to anybody who must remember them. */
  static final int ITEMS_AT_MOST = 3;

  /** A move, whom to ask, and the morning with it. */
  record Proposal(Move move, Role role, PersonId person, ForecastInput copy) {}

  private final ForecastInput in;
  private final List<PersonIn> free;
  private final Set<String> off;
  private final Set<String> seen = new HashSet<>();
  private final List<RoomOut> late;
  private final Map<String, RoomOut> figures = new TreeMap<>();
  private final List<List<String>> components;

  /**
   * @param free people who are here and have no room to serve; the input does not have them
   * @param off keys of moves that are not to be thought of
   */
  Proposals(ForecastInput in, List<PersonIn> free, Forecast forecast, Set<String> off) {
    this.in = in;
    this.free = List.copyOf(free);
    this.off = off;
    forecast.rooms().forEach(r -> figures.put(r.id(), r));
    late =
        forecast.rooms().stream()
            .filter(r -> r.meanLateMs() >= LEAST_LATE_MS)
            .filter(r -> Suite.room(in, r.id()) != null)
            .filter(r -> Suite.room(in, r.id()).startedAt() == null)
            .sorted(Comparator.comparingDouble(r -> -r.meanLateMs()))
            .toList();
    components = forecast.components();
  }

  /** All, a round of one move for each late room after the other. */
  List<Proposal> all() {
    List<List<Proposal>> byRoom = new ArrayList<>();
    for (RoomOut out : late) {
      RoomIn room = Suite.room(in, out.id());
      List<Proposal> some = new ArrayList<>();
      send(room, some);
      units(room, some);
      attend(room, some);
      first(room, some);
      open(room, some);
      stagger(room, some);
      byRoom.add(some);
    }
    List<Proposal> all = new ArrayList<>();
    boolean more = true;
    for (int round = 0; more; round++) {
      more = false;
      for (List<Proposal> some : byRoom) {
        if (round < some.size()) {
          all.add(some.get(round));
          more = true;
        }
      }
    }
    return all;
  }

  private void add(List<Proposal> to, Move move, Role role, PersonId person) {
    if (!off.contains(move.key()) && seen.add(move.key())) {
      ForecastInput copy = Applied.to(in, free, move, in.now());
      if (!copy.equals(in)) {
        to.add(new Proposal(move, role, person, copy));
      }
    }
  }

  /** Of several who could do the same there and serve it already, one who is free is asked. */
  private void send(RoomIn room, List<Proposal> to) {
    List<PersonIn> people = new ArrayList<>(in.people());
    people.sort(
        Comparator.comparing((PersonIn p) -> Suite.isBusy(in, p)).thenComparing(PersonIn::id));
    free(room, to);
    Set<List<String>> asked = new HashSet<>();
    for (PersonIn p : people) {
      if (maySend(p, room)) {
        boolean another = Suite.serves(p, room.id()) && !asked.add(p.roles());
        if (!another) {
          add(to, new Move.SendTo(new PersonId(p.id()), new RoomId(room.id())), null, idOf(p));
        }
      }
    }
  }

  /** Whoever has nothing to do is asked before anybody who has; of a role, one. */
  private void free(RoomIn room, List<Proposal> to) {
    Set<List<String>> asked = new HashSet<>();
    for (PersonIn p : free) {
      boolean can = room.items().stream().anyMatch(i -> Suite.canDo(p, i) || Suite.canMend(p, i));
      if (can && asked.add(p.roles())) {
        add(to, new Move.SendTo(new PersonId(p.id()), new RoomId(room.id())), null, idOf(p));
      }
    }
  }

  private boolean maySend(PersonIn p, RoomIn room) {
    if (p.arrivedAt() == null
        || p.roles().contains(Role.SUPERVISOR.word())
        || p.roles().contains(Role.SURGEON.word())
        || room.items().stream().noneMatch(i -> Suite.canDo(p, i) || Suite.canMend(p, i))
        || Suite.leavesAPatient(in, p, room.id())) {
      return false;
    }
    if (p.room() == null) {
      return true;
    }
    RoomIn own = Suite.room(in, p.room());
    return !p.room().equals(room.id())
        && !Suite.isUnderWay(own)
        && !Suite.isBusy(in, p)
        && Suite.hasASecond(in, p);
  }

  private void units(RoomIn room, List<Proposal> to) {
    for (KindIn kind : in.kinds()) {
      ItemIn wants = wants(room, kind.id());
      boolean isFree = kind.promised().size() < kind.capacity();
      if (wants != null && isFree && isScarce(kind)) {
        add(to, new Move.Unit(kind.id(), new RoomId(room.id())), roleFor(wants, room.id()), null);
      }
    }
  }

  /** The first open item that still has to get a unit of the kind, or null. */
  private static ItemIn wants(RoomIn room, String kind) {
    for (ItemIn item : room.items()) {
      if (Suite.isOpen(item)
          && item.needs().stream().anyMatch(n -> n.kind().equals(kind) && !n.held())) {
        return item;
      }
    }
    return null;
  }

  private boolean isScarce(KindIn kind) {
    long rooms = in.rooms().stream().filter(r -> wants(r, kind.id()) != null).count();
    boolean held =
        in.rooms().stream()
            .flatMap(r -> r.items().stream())
            .flatMap(i -> i.needs().stream())
            .anyMatch(n -> n.kind().equals(kind.id()) && n.held());
    return rooms > kind.capacity() || (rooms > 1 && held);
  }

  private void attend(RoomIn room, List<Proposal> to) {
    if (room.items().stream().noneMatch(Applied::isSupervised)) {
      return;
    }
    List<PersonIn> who =
        in.people().stream()
            .filter(p -> p.roles().contains(Role.SUPERVISOR.word()))
            .filter(p -> Suite.serves(p, room.id()))
            .toList();
    boolean wantedElsewhere =
        in.rooms().stream()
            .filter(r -> !r.id().equals(room.id()))
            .filter(r -> who.stream().anyMatch(p -> Suite.serves(p, r.id())))
            .anyMatch(r -> r.items().stream().anyMatch(Applied::isSupervised));
    boolean isSafe = who.stream().noneMatch(p -> Suite.leavesAPatient(in, p, room.id()));
    if (!who.isEmpty() && wantedElsewhere && isSafe) {
      PersonId one = who.size() == 1 ? idOf(who.get(0)) : null;
      add(
          to,
          new Move.Attend(new RoomId(room.id()), one),
          one == null ? Role.SUPERVISOR : null,
          one);
    }
  }

  /** What waits by itself, what is fetched, and what matters most, before the rest of the list. */
  private void first(RoomIn room, List<Proposal> to) {
    PersonIn own = null;
    for (PersonIn p : in.people()) {
      boolean more = own == null || p.id().compareTo(own.id()) < 0;
      if (room.id().equals(p.room()) && more && isSetUpBy(room, p)) {
        own = p;
      }
    }
    if (own == null || Suite.isUnderWay(room)) {
      return;
    }
    PersonIn by = own;
    List<ItemIn> mine = room.items().stream().filter(i -> isOwn(by, i)).toList();
    addFirst(room, by, to, mine.stream().filter(i -> i.waits() != null).toList());
    addFirst(room, by, to, mine.stream().filter(i -> i.place() != null).toList());
    Map<String, Double> critical = new TreeMap<>();
    figures.get(room.id()).items().forEach(i -> critical.put(i.key(), i.criticality()));
    mine.stream()
        .filter(i -> critical.getOrDefault(i.key(), 0.0) > 0)
        .max(Comparator.comparingDouble(i -> critical.get(i.key())))
        .ifPresent(i -> addFirst(room, by, to, List.of(i)));
  }

  private static boolean isSetUpBy(RoomIn room, PersonIn p) {
    return room.items().stream().filter(i -> isOwn(p, i)).count() > 1;
  }

  private static boolean isOwn(PersonIn p, ItemIn item) {
    return item.marks() == null && item.who().size() == 1 && Suite.canDo(p, item);
  }

  private void addFirst(RoomIn room, PersonIn by, List<Proposal> to, List<ItemIn> items) {
    if (!items.isEmpty()) {
      List<String> keys = items.stream().limit(ITEMS_AT_MOST).map(ItemIn::key).toList();
      add(to, new Move.First(new RoomId(room.id()), keys), null, idOf(by));
    }
  }

  private void open(RoomIn room, List<Proposal> to) {
    for (PlaceIn place : in.places()) {
      long at = Math.max(in.now() + PHONE, place.opensAt() - EARLIER);
      boolean waits =
          room.items().stream().anyMatch(i -> Suite.isOpen(i) && place.id().equals(i.place()));
      if (waits && place.opensAt() - at >= PHONE) {
        Role named = role(place.id());
        add(
            to,
            new Move.OpenEarlier(new PlaceId(place.id()), at, new RoomId(room.id())),
            named == null ? Role.DESK : named,
            null);
      }
    }
  }

  /** The room itself, or the one of those it shares with that has most time. */
  private void stagger(RoomIn room, List<Proposal> to) {
    for (List<String> component : components) {
      if (component.contains(room.id()) && component.size() > 1) {
        later(room, to);
        component.stream()
            .filter(id -> !id.equals(room.id()) && figures.containsKey(id))
            .max(Comparator.comparingDouble(id -> figures.get(id).onTime()))
            .ifPresent(id -> later(Suite.room(in, id), to));
      }
    }
  }

  private void later(RoomIn room, List<Proposal> to) {
    if (room != null && !Suite.isUnderWay(room) && room.target() > in.now()) {
      add(
          to,
          new Move.Later(new RoomId(room.id()), new CaseId(room.caseId()), room.target() + LATER),
          Role.SUPERVISOR,
          null);
    }
  }

  /**
   * A room that itself is held up, and one whose patient or surgeon is: people may want to talk
   * about a swap. The two latest such rooms only.
   */
  List<Move.Talk> talk() {
    String byRoom = null;
    String byCase = null;
    for (RoomOut out : late) {
      RoomIn room = Suite.room(in, out.id());
      if (out.meanLateMs() < LATER || Suite.isUnderWay(room) || out.holdups().isEmpty()) {
        continue;
      }
      Forecast.Share most = out.holdups().get(0);
      ItemIn item = item(room, most.item());
      boolean ofRoom =
          most.kind().equals("occupied")
              || (most.kind().equals("mend") && item != null && !item.ofCase());
      boolean ofCase = most.kind().equals("arrival") && item != null && item.ofCase();
      byRoom = ofRoom && byRoom == null ? room.id() : byRoom;
      byCase = ofCase && byCase == null ? room.id() : byCase;
    }
    if (byRoom == null || byCase == null) {
      return List.of();
    }
    Move.Talk talk = new Move.Talk(new RoomId(byRoom), new RoomId(byCase));
    return off.contains(talk.key()) ? List.of() : List.of(talk);
  }

  private static ItemIn item(RoomIn room, String key) {
    return room.items().stream().filter(i -> i.key().equals(key)).findFirst().orElse(null);
  }

  private Role roleFor(ItemIn item, String room) {
    for (List<String> any : item.who()) {
      for (String word : any) {
        boolean isHere =
            in.people().stream().anyMatch(p -> p.roles().contains(word) && Suite.serves(p, room));
        if (isHere && role(word) != null) {
          return role(word);
        }
      }
    }
    return Role.DESK;
  }

  private static Role role(String word) {
    for (Role role : Role.values()) {
      if (role.word().equals(word)) {
        return role;
      }
    }
    return null;
  }

  private static PersonId idOf(PersonIn p) {
    return new PersonId(p.id());
  }
}
