package sunup.forecast;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.State;

/** Compiles some rooms of a checked input, with all that they can claim, to a {@link Model}. */
final class Compiler {
  /** An item as it is simulated: one of the input, or the mending of its fault. */
  private record Line(int room, ItemIn item, boolean mending) {}

  private final ForecastInput in;
  private final List<RoomIn> rooms = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private final List<Map<String, Integer>> byKey = new ArrayList<>();
  private final List<PersonIn> people = new ArrayList<>();
  private final Map<String, Integer> personIndex = new HashMap<>();
  private final Map<String, Integer> roomIndex = new HashMap<>();
  private final Map<String, Integer> kindIndex = new HashMap<>();
  private final Map<String, Integer> placeIndex = new HashMap<>();
  private final Model m = new Model();

  private Compiler(ForecastInput in) {
    this.in = in;
  }

  static Model compile(ForecastInput in, List<Integer> roomPositions) {
    return new Compiler(in).model(roomPositions);
  }

  private Model model(List<Integer> positions) {
    m.seed = in.seed();
    m.sqrtShare = Math.sqrt(in.settings().personShare());
    m.sqrtRest = Math.sqrt(1 - in.settings().personShare());
    m.grace = in.settings().graceMs();
    m.forgotten = in.settings().forgottenTouch();
    m.silence = in.settings().silence();
    m.awayFor = new Dist(m.silence.awayFor());
    m.delay = new Dist(m.silence.delay());
    lineUp(positions);
    choosePeople();
    kindsAndPlaces();
    roomArrays(positions);
    itemArrays();
    slots();
    needs();
    links();
    peopleArrays();
    new Ranking(m).rank();
    Masks.set(m);
    Rows.set(m);
    return m;
  }

  private void lineUp(List<Integer> positions) {
    for (int position : positions) {
      RoomIn room = in.rooms().get(position);
      roomIndex.put(room.id(), rooms.size());
      Map<String, Integer> keys = new HashMap<>();
      for (ItemIn item : room.items()) {
        if (item.progress().state() == State.FAULT) {
          lines.add(new Line(rooms.size(), item, true));
        }
        keys.put(item.key(), lines.size());
        lines.add(new Line(rooms.size(), item, false));
      }
      byKey.add(keys);
      rooms.add(room);
    }
    m.rooms = rooms.size();
    m.items = lines.size();
  }

  /** Those who may be claimed here, who belong here, or who did something here; by id. */
  private void choosePeople() {
    Set<String> did = new HashSet<>();
    for (Line line : lines) {
      did.add(line.item().progress().by());
      did.add(line.item().progress().taken());
    }
    for (PersonIn p : in.people()) {
      boolean roams = p.room() == null && p.covers().isEmpty();
      boolean serves = p.room() != null ? roomIndex.containsKey(p.room()) : roams;
      if (serves
          || did.contains(p.id())
          || (p.room() == null && p.covers().stream().anyMatch(roomIndex::containsKey))) {
        people.add(p);
      }
    }
    people.sort(Comparator.comparing(PersonIn::id));
    for (int i = 0; i < people.size(); i++) {
      personIndex.put(people.get(i).id(), i);
    }
    m.people = people.size();
  }

  private void kindsAndPlaces() {
    m.kinds = in.kinds().size();
    m.kindId = new String[m.kinds];
    m.capacity = new int[m.kinds];
    for (int k = 0; k < m.kinds; k++) {
      KindIn kind = in.kinds().get(k);
      kindIndex.put(kind.id(), k);
      m.kindId[k] = kind.id();
      m.capacity[k] = kind.capacity();
    }
    m.places = in.places().size();
    m.placeId = new String[m.places];
    m.opensAt = new long[m.places];
    m.walk = new Dist[m.places];
    for (int q = 0; q < m.places; q++) {
      PlaceIn place = in.places().get(q);
      placeIndex.put(place.id(), q);
      m.placeId[q] = place.id();
      m.opensAt[q] = place.opensAt() - in.now();
      m.walk[q] = new Dist(place.walk());
    }
  }

  private void roomArrays(List<Integer> positions) {
    m.roomId = new String[m.rooms];
    m.roomOrder = new int[m.rooms];
    m.firstItem = new int[m.rooms + 1];
    m.startItem = new int[m.rooms];
    m.target = new long[m.rooms];
    m.cap = new long[m.rooms];
    m.begins = new long[m.rooms];
    m.started = new long[m.rooms];
    m.occupied = new Dist[m.rooms];
    m.roomScope = new long[m.rooms];
    for (int r = 0; r < m.rooms; r++) {
      RoomIn room = rooms.get(r);
      m.roomId[r] = room.id();
      m.roomOrder[r] = positions.get(r);
      m.target[r] = room.target() - in.now();
      m.cap[r] = m.target[r] + in.settings().capMs();
      m.begins[r] = room.begins() - in.now();
      m.started[r] = room.startedAt() == null ? Model.NEVER : room.startedAt() - in.now();
      m.occupied[r] = room.occupiedFor() == null ? null : new Dist(room.occupiedFor());
      m.roomScope[r] = Hash.scope(m.seed, "room:" + room.id(), "");
    }
  }

  private void itemArrays() {
    int n = m.items;
    m.room = new int[n];
    m.key = new String[n];
    m.mends = new int[n];
    m.section = new String[n];
    m.scope = new long[n];
    m.hands = new Dist[n];
    m.waits = new Dist[n];
    m.extraOneIn = new int[n];
    m.extraMs = new long[n];
    m.marks = new boolean[n];
    m.notBefore = new long[n];
    m.place = new int[n];
    m.inRoom = new boolean[n];
    m.isArrival = new boolean[n];
    m.arrivalFrom = new long[n];
    m.arrivalLate = new Dist[n];
    m.arrivalSilent = new boolean[n];
    m.life = new long[n];
    m.asked = new boolean[n];
    m.state = new byte[n];
    m.began = new long[n];
    m.good = new long[n];
    m.by = new int[n];
    for (int i = 0; i < n; i++) {
      Line line = lines.get(i);
      if (i == 0 || line.room() != lines.get(i - 1).room()) {
        m.firstItem[line.room()] = i;
      }
      m.room[i] = line.room();
      m.key[i] = line.item().key();
      m.mends[i] = line.mending() ? i + 1 : -1;
      m.section[i] = line.item().section() == null ? "" : line.item().section();
      RoomIn room = rooms.get(line.room());
      String scope = line.item().ofCase() ? "case:" + room.caseId() : "room:" + room.id();
      String key = line.mending() ? "mend:" + line.item().key() : "item:" + line.item().key();
      m.scope[i] = Hash.scope(m.seed, scope, key);
      if (line.mending()) {
        mending(i, line.item());
      } else {
        plain(i, line.item());
      }
    }
    m.firstItem[m.rooms] = n;
  }

  private void mending(int i, ItemIn item) {
    Progress now = item.progress();
    m.hands[i] = new Dist(now.mend());
    m.waits[i] = Dist.ZERO;
    m.notBefore[i] = Model.EVER;
    m.place[i] = -1;
    m.by[i] = now.taken() == null ? -1 : personIndex.get(now.taken());
    m.good[i] = Model.NEVER;
    m.began[i] = now.since() - in.now();
    boolean byItself = now.taken() == null && now.mender().isEmpty();
    m.state[i] = now.taken() != null || byItself ? Model.IN_HAND : Model.OPEN;
  }

  private void plain(int i, ItemIn item) {
    m.hands[i] = item.arrival() != null ? Dist.ZERO : new Dist(item.hands());
    m.waits[i] = Dist.of(item.waits());
    if (item.extra() != null) {
      m.extraOneIn[i] = item.extra().oneIn();
      m.extraMs[i] = item.extra().ms();
    }
    m.marks[i] = item.marks() != null;
    m.notBefore[i] = item.notBefore() == null ? Model.EVER : item.notBefore() - in.now();
    m.place[i] = item.place() == null ? -1 : placeIndex.get(item.place());
    m.inRoom[i] = item.inRoom();
    if (item.arrival() != null) {
      m.isArrival[i] = true;
      m.arrivalFrom[i] = item.arrival().from() - in.now();
      m.arrivalLate[i] = new Dist(item.arrival().late());
      m.arrivalSilent[i] = item.arrival().silent();
    }
    m.life[i] = item.lifeMs() == null ? 0 : item.lifeMs();
    m.asked[i] = item.asked();
    Progress now = item.progress();
    m.by[i] = now.by() == null ? -1 : personIndex.getOrDefault(now.by(), -1);
    m.good[i] = Model.NEVER;
    m.began[i] = Model.EVER;
    RoomIn room = rooms.get(m.room[i]);
    boolean start = room.startStep().equals(item.marks());
    if (start) {
      m.startItem[m.room[i]] = i;
    }
    if (now.state() == State.GOOD) {
      m.state[i] = Model.GOOD;
      m.good[i] = now.since() - in.now();
      m.began[i] = now.began() == null ? Model.EVER : now.began() - in.now();
    } else if (now.state() == State.LEFT_OUT) {
      m.state[i] = Model.GOOD;
      m.good[i] = Model.EVER;
    } else if (now.state() == State.IN_HAND) {
      m.state[i] = Model.IN_HAND;
      m.began[i] = now.since() - in.now();
    }
    if (start && room.startedAt() != null) {
      m.state[i] = Model.GOOD;
      m.good[i] = room.startedAt() - in.now();
    } else if (start && m.state[i] == Model.GOOD && m.good[i] != Model.EVER) {
      m.started[m.room[i]] = m.good[i];
    }
  }

  private void slots() {
    Candidates candidates = new Candidates(rooms, people);
    m.firstSlot = new int[m.items + 1];
    List<int[]> own = new ArrayList<>();
    List<int[]> roaming = new ArrayList<>();
    for (int i = 0; i < m.items; i++) {
      m.firstSlot[i] = own.size();
      Line line = lines.get(i);
      Progress now = line.item().progress();
      List<List<String>> who = line.item().who();
      if (line.mending()) {
        who = now.mender().isEmpty() ? List.of() : List.of(now.mender());
      }
      for (List<String> any : who) {
        own.add(candidates.own(line.room(), any));
        roaming.add(candidates.roaming(line.room(), any));
      }
      if (line.mending() && now.taken() != null && who.isEmpty()) {
        own.add(new int[0]);
        roaming.add(new int[] {personIndex.get(now.taken())});
      }
    }
    m.firstSlot[m.items] = own.size();
    m.slotOwn = own.toArray(new int[0][]);
    m.slotRoaming = roaming.toArray(new int[0][]);
    m.slotOwnGroup = own.stream().mapToInt(candidates::group).toArray();
    m.slotRoamingGroup = roaming.stream().mapToInt(candidates::group).toArray();
    m.groupMembers = candidates.groups();
  }

  private void needs() {
    m.firstNeed = new int[m.items + 1];
    List<Need> all = new ArrayList<>();
    List<Integer> until = new ArrayList<>();
    List<List<Integer>> ends = new ArrayList<>();
    for (int i = 0; i < m.items; i++) {
      ends.add(new ArrayList<>());
    }
    for (int i = 0; i < m.items; i++) {
      m.firstNeed[i] = all.size();
      if (lines.get(i).mending()) {
        continue;
      }
      for (Need need : lines.get(i).item().needs()) {
        int last = need.until() == null ? i : byKey.get(m.room[i]).get(need.until());
        ends.get(last).add(all.size());
        until.add(last);
        all.add(need);
      }
    }
    m.firstNeed[m.items] = all.size();
    m.needKind = all.stream().mapToInt(n -> kindIndex.get(n.kind())).toArray();
    m.needUnits = all.stream().mapToInt(Need::units).toArray();
    m.needUntil = until.stream().mapToInt(Integer::intValue).toArray();
    m.needHeld = new boolean[all.size()];
    for (int n = 0; n < all.size(); n++) {
      m.needHeld[n] = all.get(n).held();
    }
    m.endsNeeds = new int[m.items][];
    for (int i = 0; i < m.items; i++) {
      m.endsNeeds[i] = ends.get(i).stream().mapToInt(Integer::intValue).toArray();
    }
    promises();
  }

  /**
   * For a promise the largest number of units that an open item of the room asks for. A room that
   * asks for none now keeps its place: it may ask when something lapses.
   */
  private void promises() {
    m.promised = new int[m.kinds][];
    m.promisedUnits = new int[m.kinds][];
    for (int k = 0; k < m.kinds; k++) {
      List<Integer> to = new ArrayList<>();
      List<Integer> units = new ArrayList<>();
      for (String id : in.kinds().get(k).promised()) {
        Integer r = roomIndex.get(id);
        int most = 0;
        for (int i = 0; r != null && i < m.items; i++) {
          for (int n = m.firstNeed[i]; n < m.firstNeed[i + 1]; n++) {
            if (m.room[i] == r
                && m.state[i] == Model.OPEN
                && m.needKind[n] == k
                && !m.needHeld[n]) {
              most = Math.max(most, m.needUnits[n]);
            }
          }
        }
        if (r != null && !to.contains(r)) {
          to.add(r);
          units.add(most);
        }
      }
      m.promised[k] = to.stream().mapToInt(Integer::intValue).toArray();
      m.promisedUnits[k] = units.stream().mapToInt(Integer::intValue).toArray();
    }
  }

  private void links() {
    List<ItemIn> items = new ArrayList<>();
    for (Line line : lines) {
      items.add(line.mending() ? null : line.item());
    }
    new Links(m, items).set();
  }

  private void peopleArrays() {
    int n = m.people;
    Map<String, Long> last = lastFinishes();
    m.personId = new String[n];
    m.personRoom = new int[n];
    m.personScope = new long[n];
    m.arrivedAt = new long[n];
    m.lastFinish = new long[n];
    m.plannedAt = new long[n];
    m.late = new Dist[n];
    m.arrivalReported = new boolean[n];
    m.leavesAt = new long[n];
    m.awayFrom = new long[n][];
    m.awayTo = new long[n][];
    m.lastWordAt = new long[n];
    m.styles = new boolean[n][Checks.STYLES.size()];
    for (int p = 0; p < n; p++) {
      PersonIn person = people.get(p);
      m.personId[p] = person.id();
      m.personRoom[p] = person.room() == null ? -1 : roomIndex.getOrDefault(person.room(), -1);
      m.personScope[p] = Hash.scope(m.seed, "person:" + person.id(), "");
      m.arrivedAt[p] = person.arrivedAt() == null ? Model.NEVER : person.arrivedAt() - in.now();
      m.lastFinish[p] = last.getOrDefault(person.id(), Model.EVER);
      m.plannedAt[p] = person.plannedAt() - in.now();
      m.late[p] = new Dist(person.late());
      m.arrivalReported[p] = person.arrivalReported();
      m.leavesAt[p] = person.leavesAt() == null ? Model.NEVER : person.leavesAt() - in.now();
      m.lastWordAt[p] = person.lastWordAt() == null ? Model.EVER : person.lastWordAt() - in.now();
      if (person.arrivedAt() == null) {
        // Who did something has come.
        m.lastWordAt[p] = Math.max(m.lastWordAt[p], m.lastFinish[p]);
      }
      m.awayFrom[p] = person.away().stream().mapToLong(s -> s.from() - in.now()).toArray();
      m.awayTo[p] = person.away().stream().mapToLong(s -> s.to() - in.now()).toArray();
      for (int s = 0; s < m.styles[p].length; s++) {
        m.styles[p][s] = person.styles() == null || person.styles().contains(Checks.STYLES.get(s));
      }
    }
  }

  /** The last finish of each person in any room of the input. */
  private Map<String, Long> lastFinishes() {
    Map<String, Long> last = new HashMap<>();
    for (RoomIn room : in.rooms()) {
      for (ItemIn item : room.items()) {
        Progress now = item.progress();
        if (now.state() == State.GOOD && now.by() != null) {
          last.merge(now.by(), now.since() - in.now(), Math::max);
        }
      }
    }
    return last;
  }
}
