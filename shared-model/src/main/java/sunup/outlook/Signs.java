package sunup.outlook;

import static sunup.outlook.FirstSettings.MINUTE;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.PlaceDay;
import sunup.board.Morning.Taken;
import sunup.board.PersonId;
import sunup.board.PlaceId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.Step;
import sunup.forecast.Draw;
import sunup.forecast.Forecast.ItemOut;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.outlook.RoomSheet.Line;
import sunup.sheets.SheetItem;
import sunup.wire.Part;
import sunup.wire.Part.SignPart;

/**
 * Early signs for the desk: what is not as planned and can still be mended, whatever its share of
 * the late minutes. A forecast's largest share hides the smaller causes behind it, and is often a
 * thing that is simply not due yet; a sign names only what should be there by now, or cannot come
 * in time. Equal signs of several rooms are one line.
 */
final class Signs {
  private static final Set<Section> TRACKS =
      EnumSet.of(Section.PATIENT, Section.TEAM, Section.INSTRUMENTS, Section.ROOM);
  private static final String AT_ONCE = ": wanted in two rooms at once";

  private final Snapshot snapshot;
  private final Morning morning;
  private final long now;
  private final Words words;
  private final Map<String, RoomOut> figures = new HashMap<>();
  private final Map<String, Sign> signs = new LinkedHashMap<>();

  /** One line that grows by rooms. */
  private static final class Sign {
    final Set<RoomId> rooms = new HashSet<>();
    final String holdup;
    long actBy;

    Sign(String holdup, long actBy) {
      this.holdup = holdup;
      this.actBy = actBy;
    }
  }

  Signs(Snapshot snapshot, Foretold foretold) {
    this.snapshot = snapshot;
    this.morning = snapshot.morning();
    this.now = snapshot.now();
    this.words = new Words(snapshot);
    if (foretold.forecast() != null) {
      foretold.forecast().rooms().forEach(room -> figures.put(room.id(), room));
    }
  }

  void addTo(List<Part> parts) {
    if (morning.phase() != Morning.Phase.OPEN) {
      return;
    }
    for (RoomSheet sheet : snapshot.sheets().values()) {
      if (sheet.startedAt() == null) {
        used(sheet);
        sheet.lines().forEach(line -> line(sheet, line));
      }
    }
    morning.people().values().forEach(this::person);
    unitsWantedTwice();
    peopleWantedTwice();
    signs.entrySet().stream()
        .sorted(Comparator.comparing(e -> e.getValue().actBy))
        .map(e -> part(e.getKey(), e.getValue()))
        .forEach(parts::add);
  }

  private SignPart part(String said, Sign sign) {
    // In the wall's order, whatever the order in which they were found.
    List<RoomId> rooms = snapshot.sheets().keySet().stream().filter(sign.rooms::contains).toList();
    Taken taken = rooms.size() > 1 ? null : morning.rooms().get(rooms.get(0)).taken();
    boolean mine = taken != null && taken.holdup().equals(sign.holdup);
    return new SignPart(
        "sign/" + Integer.toHexString(said.hashCode()),
        rooms.stream().map(RoomId::value).toList(),
        said,
        sign.holdup,
        sign.actBy,
        mine ? taken.by() : null,
        mine ? taken.lookAgainAt() : null);
  }

  private void add(RoomSheet sheet, String said, String kind, String thing, long actBy) {
    Sign sign = signs.computeIfAbsent(said, s -> new Sign(Words.key(kind, thing), actBy));
    sign.actBy = Math.min(sign.actBy, actBy);
    sign.rooms.add(sheet.room().id());
  }

  private void line(RoomSheet sheet, Line line) {
    SheetItem asks = line.asks();
    if (line.state() == ItemState.FAULT) {
      fault(sheet, line);
    } else if (asks.isArrival()) {
      arrival(sheet, line);
    } else if (!line.isDone()) {
      place(sheet, line);
      notBegun(sheet, line);
      tooLong(sheet, line);
    }
  }

  /**
   * Whatever it gates: a bed that is missing gates nothing in the room and holds it all the same.
   */
  private void fault(RoomSheet sheet, Line line) {
    if (line.item().mender() == null) {
      long actBy = line.item().since() + FirstSettings.FAULT_ANSWERED;
      add(sheet, words.fault(line, line.asks().desk(), false), "mend", line.asks().key(), actBy);
    }
  }

  /** A patient or surgeon who is usually here by now, or is announced for too late. */
  private void arrival(RoomSheet sheet, Line line) {
    SheetItem asks = line.asks();
    if (line.isDone() || !snapshot.isReported(asks.section())) {
      return;
    }
    long usual = sheet.target() - asks.plannedBefore() * MINUTE;
    long late = sheet.target() - asks.plannedLate() * MINUTE;
    Long expected = line.item().expectedAt();
    if (expected == null ? now >= usual : expected >= late) {
      add(sheet, words.comes(line, asks.desk()), "arrival", asks.key(), (usual + late) / 2);
    }
  }

  /** A place that opens too late for what is fetched there. */
  private void place(RoomSheet sheet, Line line) {
    String id = line.asks().place();
    PlaceDay place = id == null ? null : morning.places().get(new PlaceId(id));
    Long last = lastMoment(sheet, line);
    if (place == null || last == null || place.opensAt() <= now) {
      return;
    }
    if (place.opensAt() > last - FirstSettings.AT_THE_PLACE) {
      long actBy = last - FirstSettings.OPENED_EARLIER;
      String said = Words.of(line.asks().desk(), words.opens(place, false));
      add(sheet, said, "place", id, actBy);
    }
  }

  /** What could be begun, is not, and will soon be too late for a start on time. */
  private void notBegun(RoomSheet sheet, Line line) {
    SheetItem asks = line.asks();
    boolean could =
        line.state() == ItemState.OPEN
            && TRACKS.contains(asks.section())
            && snapshot.isHeard(sheet.room().id(), asks.section())
            && isFree(sheet, line);
    Long last = could ? lastMoment(sheet, line) : null;
    if (last != null && now >= last - FirstSettings.ASK_BEFORE_LAST) {
      add(sheet, Words.of(asks.desk(), "not begun"), "work", asks.key(), last);
    }
  }

  /**
   * What somebody has in hand for longer than usual; never what is done with the patient asleep.
   */
  private void tooLong(RoomSheet sheet, Line line) {
    SheetItem asks = line.asks();
    boolean onTheWay = asks.section() == Section.START && asks.gates() == Step.WHEELS_IN;
    Long begun = null;
    if (onTheWay) {
      begun = isFree(sheet, line) ? lastBefore(sheet, line) : null;
    } else if (line.state() == ItemState.IN_HAND && TRACKS.contains(asks.section())) {
      begun = line.item().begunAt() != null ? line.item().begunAt() : line.item().since();
    }
    if (begun == null) {
      return;
    }
    double usual = asks.hands().usual();
    double most = asks.hands().oneInTen();
    if (asks.waits() != null) {
      usual += asks.waits().usual();
      most += asks.waits().oneInTen();
    }
    if (now - begun >= (usual + most) / 2 * MINUTE) {
      String said = Words.of(asks.desk(), "longer than usual, since " + words.clock(begun));
      add(sheet, said, "work", asks.key(), begun + Math.round(most * MINUTE));
    }
  }

  /** True if nothing before it is open. */
  private static boolean isFree(RoomSheet sheet, Line line) {
    return before(sheet, line).allMatch(Line::isDone);
  }

  /** When the last thing before it was done, or null if there is nothing before it. */
  private static Long lastBefore(RoomSheet sheet, Line line) {
    return before(sheet, line)
        .map(
            before -> {
              Step marks = before.asks().marks();
              Long step = marks == null ? null : sheet.caseDay().reachedBy(marks);
              return step != null ? step : (Long) before.item().since();
            })
        .max(Comparator.naturalOrder())
        .orElse(null);
  }

  private static Stream<Line> before(RoomSheet sheet, Line line) {
    return line.asks().after().stream().map(sheet::line).filter(Objects::nonNull);
  }

  private Long lastMoment(RoomSheet sheet, Line line) {
    RoomOut room = figures.get(sheet.room().id().value());
    if (room == null) {
      return null;
    }
    for (ItemOut item : room.items()) {
      if (item.key().equals(line.asks().key())) {
        return item.last50();
      }
    }
    return null;
  }

  /** A room that will not be free and clean while its set-up still has time. */
  private void used(RoomSheet sheet) {
    Draw left = MorningInput.occupied(sheet, now);
    if (left == null) {
      return;
    }
    long free = now + left.usual();
    long actBy = sheet.target() - FirstSettings.ASK_FROM;
    if (free > actBy) {
      add(sheet, words.use(sheet), "occupied", null, actBy);
    }
  }

  /** Somebody of a room who should have come; only where such people say that they came. */
  private void person(PersonDay person) {
    RoomId own = person.plan().room();
    RoomSheet sheet = own == null ? null : snapshot.sheets().get(own);
    Role role = person.plan().role();
    boolean missing =
        sheet != null
            && sheet.startedAt() == null
            && role != Role.SURGEON
            && person.leftAt() == null
            && person.arrivedAt() == null
            && person.lastWordAt() == null
            && isSaid(role);
    if (!missing) {
      return;
    }
    long planned = person.plan().plannedAt();
    long late = planned + FirstSettings.PERSON_LATE.oneInTenMs();
    Long expected = person.expectedAt();
    if (expected == null ? now >= late : expected >= late) {
      String id = person.plan().id().value();
      long actBy = late + FirstSettings.FLOAT_TOLD;
      add(sheet, words.personArrival(id), "arrival", id, actBy);
    }
  }

  private boolean isSaid(Role role) {
    return morning.people().values().stream()
        .anyMatch(p -> p.plan().role() == role && p.arrivedAt() != null);
  }

  /** Equipment for which a room waits while another has it, by the forecast. */
  private void unitsWantedTwice() {
    for (RoomOut room : figures.values()) {
      RoomSheet sheet = snapshot.sheet(room.id());
      for (Share share : sheet == null ? List.<Share>of() : room.holdups()) {
        String where = share.kind().equals("equipment") ? share.where() : null;
        RoomSheet other = where == null || where.equals(room.id()) ? null : snapshot.sheet(where);
        boolean costs = share.share() * room.meanLateMs() >= FirstSettings.WAIT_NOTED;
        if (other != null && other.startedAt() == null && costs) {
          String said = words.unit(share.thing()) + AT_ONCE;
          long actBy = Math.min(sheet.target(), other.target()) - FirstSettings.ORDER_AGREED;
          add(other, said, "equipment", share.thing(), actBy);
          add(sheet, said, "equipment", share.thing(), actBy);
        }
      }
    }
  }

  /** One person whom two starts want at the same time, and nobody else could be there. */
  private void peopleWantedTwice() {
    Map<PersonId, Map<RoomId, Long>> wanted = new LinkedHashMap<>();
    for (RoomSheet sheet : snapshot.sheets().values()) {
      if (sheet.startedAt() == null && now < sheet.target() - FirstSettings.ORDER_LATEST) {
        wantedAtStart(sheet, wanted);
      }
    }
    wanted.forEach(
        (person, rooms) -> {
          for (RoomId room : rooms.keySet()) {
            RoomSheet one = snapshot.sheets().get(room);
            if (rooms.keySet().stream().anyMatch(r -> isAtOnce(one, r, rooms))) {
              Role role = morning.people().get(person).plan().role();
              String said = role.word() + " " + person.value() + AT_ONCE;
              add(one, said, "person", person.value(), one.target() - FirstSettings.ORDER_AGREED);
            }
          }
        });
  }

  private boolean isAtOnce(RoomSheet one, RoomId room, Map<RoomId, Long> wanted) {
    RoomSheet other = snapshot.sheets().get(room);
    long apart = Math.abs(one.target() - other.target());
    RoomId own = one.room().id();
    return !own.equals(room) && apart < Math.min(wanted.get(own), wanted.get(room));
  }

  /** Adds for how long the start takes each who is the only one for a place in it. */
  private void wantedAtStart(RoomSheet sheet, Map<PersonId, Map<RoomId, Long>> wanted) {
    List<PersonDay> serving =
        morning.people().values().stream()
            .filter(p -> p.leftAt() == null && Snapshot.serves(p, sheet.room().id()))
            .toList();
    for (Line line : sheet.lines()) {
      boolean start = line.asks().section() == Section.START;
      for (List<Role> any : start ? line.asks().who() : List.<List<Role>>of()) {
        PersonDay only = only(any, serving);
        if (only != null) {
          long minutes = Math.round(line.asks().hands().usual() * MINUTE);
          wanted
              .computeIfAbsent(only.plan().id(), p -> new LinkedHashMap<>())
              .merge(sheet.room().id(), minutes, Long::sum);
        }
      }
    }
  }

  /** The one person of several rooms who can take this place, or null. */
  private static PersonDay only(List<Role> any, List<PersonDay> serving) {
    PersonDay only = null;
    for (PersonDay p : serving) {
      if (any.contains(p.plan().role())) {
        if (only != null) {
          return null;
        }
        only = p;
      }
    }
    return only == null || only.plan().room() != null ? null : only;
  }
}
