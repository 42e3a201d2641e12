package sunup.outlook;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.Morning.PersonDay;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.forecast.Forecast.Share;

/**
 * A morning at one moment with every room's lines worked out once.
 *
 * @param morning the state
 * @param now the moment
 * @param sheets by room, only rooms with a case that will happen
 * @param heard by room, the tracks of which silence means anything, see {@link #isHeard}
 * @param reported tracks that somebody reports of any room
 */
record Snapshot(
    Morning morning,
    long now,
    Map<RoomId, RoomSheet> sheets,
    Map<RoomId, Set<Section>> heard,
    Set<Section> reported) {
  static Snapshot of(Morning morning, long now) {
    Map<RoomId, RoomSheet> sheets = new LinkedHashMap<>();
    Map<RoomId, Set<Section>> heard = new HashMap<>();
    Set<Section> reported = EnumSet.noneOf(Section.class);
    for (RoomId id : morning.rooms().keySet()) {
      RoomSheet sheet = RoomSheet.of(morning, id, now);
      if (sheet == null) {
        continue;
      }
      sheets.put(id, sheet);
      Set<Section> ofRoom = EnumSet.of(Section.START);
      for (RoomSheet.Line line : sheet.lines()) {
        if (wasTouched(line) && wasTouchedSince(morning.openedAt(), line)) {
          ofRoom.add(line.asks().section());
        }
      }
      heard.put(id, ofRoom);
      reported.addAll(ofRoom);
    }
    heard.forEach(
        (room, sections) -> {
          Set<Section> overdue = overdue(sheets.get(room), now);
          overdue.retainAll(reported);
          sections.addAll(overdue);
        });
    return new Snapshot(morning, now, sheets, heard, reported);
  }

  /** What was told the day before does not mean that anybody reports the track in the morning. */
  private static boolean wasTouchedSince(Long opened, RoomSheet.Line line) {
    return opened != null && line.item().last().at() >= opened;
  }

  private static boolean wasTouched(RoomSheet.Line line) {
    return line.item().command() != null
        || line.item().evidence() != null
        || line.item().state() != ItemState.OPEN;
  }

  /** Roles of those who serve the room; a trainee can do an anaesthetist's work. */
  Set<Role> rolesFor(RoomId room) {
    Set<Role> roles = EnumSet.noneOf(Role.class);
    for (PersonDay person : morning.people().values()) {
      if (serves(person, room) && person.leftAt() == null) {
        roles.add(person.plan().role());
        if (person.plan().role() == Role.TRAINEE) {
          roles.add(Role.ANAESTHETIST);
        }
      }
    }
    return roles;
  }

  /** Whether a person works in a room, by plan or because he or she is there now. */
  static boolean serves(PersonDay person, RoomId room) {
    RoomId own = person.plan().room();
    return own == null
        ? person.plan().covers().isEmpty() || person.plan().covers().contains(room)
        : own.equals(room) || room.equals(person.room());
  }

  RoomSheet sheet(String room) {
    return sheets.get(new RoomId(room));
  }

  /** True if the item of the holdup was reported faulty, and is not mended. */
  boolean isFault(Share share) {
    RoomSheet sheet = sheet(share.room());
    RoomSheet.Line line = sheet == null ? null : sheet.line(share.item());
    return line != null && line.state() == ItemState.FAULT;
  }

  /**
   * Whether silence about an item of this track of this room means anything: somebody reports the
   * track of this room; or reports it of other rooms, and what should have come here is overdue. A
   * suite whose holding area never touches a screen must not look late for it.
   */
  boolean isHeard(RoomId room, Section section) {
    return heard.get(room).contains(section);
  }

  /** Whether anybody reports this track of any room this morning. */
  boolean isReported(Section section) {
    return reported.contains(section);
  }

  boolean isOverdue(RoomId room, RoomSheet.Line line) {
    return isOverdue(sheets.get(room), line, now);
  }

  /** True for what comes by itself once nine in ten would have come. */
  private static boolean isOverdue(RoomSheet sheet, RoomSheet.Line line, long now) {
    return line.asks().isArrival()
        && now >= sheet.target() - line.asks().plannedLate() * FirstSettings.MINUTE;
  }

  private static Set<Section> overdue(RoomSheet sheet, long now) {
    Set<Section> sections = EnumSet.noneOf(Section.class);
    for (RoomSheet.Line line : sheet.lines()) {
      if (isOverdue(sheet, line, now)) {
        sections.add(line.asks().section());
      }
    }
    return sections;
  }
}
