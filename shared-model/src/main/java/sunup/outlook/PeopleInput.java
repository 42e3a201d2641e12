package sunup.outlook;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.Morning;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.RoomDay;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.forecast.Draw;
import sunup.forecast.ForecastInput.PersonIn;

/** The people of a morning as the forecast sees them. */
final class PeopleInput {
  /** Those whom another room can use as they are; a supervisor's order is a move of its own. */
  private static final Set<Role> TEAM =
      EnumSet.of(Role.ANAESTHETIST, Role.TRAINEE, Role.TECHNICIAN, Role.CIRCULATING, Role.SCRUB);

  private final Snapshot snapshot;
  private final Morning morning;
  private final Map<RoomId, RoomSheet> sheets;
  private final long now;

  PeopleInput(Snapshot snapshot) {
    this.snapshot = snapshot;
    morning = snapshot.morning();
    sheets = snapshot.sheets();
    now = snapshot.now();
  }

  List<PersonIn> build() {
    List<PersonIn> people = new ArrayList<>();
    for (PersonDay person : morning.people().values()) {
      if (person.leftAt() == null && servesAny(person)) {
        people.add(person(person));
      }
    }
    return people;
  }

  /**
   * People of the rooms' teams who are here and have no room to serve, their case being cancelled:
   * the forecast does not know them until they are sent somewhere.
   */
  List<PersonIn> free() {
    List<PersonIn> free = new ArrayList<>();
    for (PersonDay person : morning.people().values()) {
      boolean isHere = person.arrivedAt() != null && person.leftAt() == null;
      if (isHere && !servesAny(person) && TEAM.contains(person.plan().role())) {
        free.add(person(person));
      }
    }
    return free;
  }

  private PersonIn person(PersonDay person) {
    RoomId own = ownRoom(person);
    boolean surgeon = person.plan().role() == Role.SURGEON;
    Long arrived = person.arrivedAt();
    boolean reported = true;
    if (arrived == null && surgeon) {
      // The item "surgeon seen" carries the surgeon's coming; here the surgeon is only one person.
      arrived = Math.min(now, morning.beginsAt());
    } else if (arrived == null && own == null && person.expectedAt() == null) {
      // Nobody touches a screen to say that a porter came: taken as planned.
      arrived = Math.min(now, person.plan().plannedAt());
      if (person.plan().plannedAt() > now) {
        arrived = null;
      }
    } else if (arrived == null) {
      reported = person.expectedAt() != null;
    }
    long planned =
        person.expectedAt() != null
            ? person.expectedAt() - FirstSettings.ANNOUNCED_EARLY
            : person.plan().plannedAt();
    Draw late = person.expectedAt() != null ? FirstSettings.ANNOUNCED : FirstSettings.PERSON_LATE;
    return new PersonIn(
        person.plan().id().value(),
        roles(person.plan().role()),
        own == null ? null : own.value(),
        covers(person),
        arrived,
        planned,
        late,
        reported,
        null,
        List.of(),
        lastWord(person, own),
        styles(person.plan().role(), own));
  }

  private static boolean setsUp(Role role) {
    return role == Role.ANAESTHETIST || role == Role.TRAINEE;
  }

  private RoomId ownRoom(PersonDay person) {
    if (person.plan().room() == null || person.plan().role() == Role.SURGEON) {
      return null;
    }
    RoomId room = person.room() != null ? person.room() : person.plan().room();
    return sheets.containsKey(room) ? room : null;
  }

  /** False for who serves only rooms without a case: the forecast does not know those. */
  private boolean servesAny(PersonDay person) {
    boolean named = !person.plan().covers().isEmpty() || person.plan().room() != null;
    return ownRoom(person) != null || !named || !covers(person).isEmpty();
  }

  private List<String> covers(PersonDay person) {
    List<RoomId> named = new ArrayList<>(person.plan().covers());
    if (named.isEmpty() && person.plan().room() != null) {
      named.add(person.plan().room());
    }
    return named.stream().filter(sheets::containsKey).map(RoomId::value).toList();
  }

  private static List<String> roles(Role role) {
    return role == Role.TRAINEE
        ? List.of(role.word(), Role.ANAESTHETIST.word())
        : List.of(role.word());
  }

  /** Words from the room are the anaesthetist's, unless the person spoke later. */
  private Long lastWord(PersonDay person, RoomId own) {
    Long word = person.lastWordAt();
    if (own != null && setsUp(person.plan().role())) {
      RoomDay room = morning.rooms().get(own);
      if (room.lastWordAt() != null && (word == null || room.lastWordAt() > word)) {
        word = room.lastWordAt();
      }
    }
    return word;
  }

  /**
   * Whoever spoke is not one who never does; more than that a few words do not tell. People whose
   * track nobody reports of their room never do: their silence says nothing, whatever is reported
   * of other rooms.
   */
  private List<String> styles(Role role, RoomId own) {
    if (!setsUp(role) && (own == null || !isReported(role, own))) {
      return List.of("never");
    }
    if (own == null || !setsUp(role) || morning.rooms().get(own).lastWordAt() == null) {
      return null;
    }
    RoomSheet sheet = sheets.get(own);
    boolean reports =
        sheet.lines().stream()
            .anyMatch(line -> line.asks().section().isSetUp() && line.item().evidence() != null);
    return reports ? List.of("each-item", "each-section", "at-end") : null;
  }

  /** Whether anybody reports a track of this room that is the role's. */
  private boolean isReported(Role role, RoomId room) {
    return sheets.get(room).lines().stream()
        .filter(line -> ItemsInput.isTrack(line.asks()))
        .filter(line -> line.asks().who().stream().anyMatch(any -> any.contains(role)))
        .anyMatch(line -> snapshot.isHeard(room, line.asks().section()));
  }
}
