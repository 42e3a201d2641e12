package sunup.outlook;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.PersonId;
import sunup.board.PlaceId;
import sunup.board.RoomId;
import sunup.forecast.Forecast.Share;
import sunup.outlook.RoomSheet.Line;

/**
 * Holdups in words: plain, short, lower case, in the present; never blame, never a person. The
 * wall's words say nothing about a patient and have at most 40 letters.
 */
final class Words {
  static final int WALL_LETTERS = 40;

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  private final Snapshot snapshot;
  private final Morning morning;
  private final ZoneId zone;
  private final long now;

  Words(Snapshot snapshot) {
    this.snapshot = snapshot;
    this.morning = snapshot.morning();
    this.zone = morning.settings().zoneId();
    this.now = snapshot.now();
  }

  String clock(long at) {
    return CLOCK.format(Instant.ofEpochMilli(at).atZone(zone));
  }

  /** The key by which a holdup is taken; the same as long as it is the same thing. */
  String key(Share share) {
    String kind = isExtra(share) ? "extra" : share.kind();
    return key(kind, share.thing() != null ? share.thing() : share.item());
  }

  /** A mend that nobody reported a fault for: the forecast reckons with what is rarely needed. */
  private boolean isExtra(Share share) {
    return share.kind().equals("mend") && !snapshot.isFault(share);
  }

  /** Names no item and no person: the key goes to the wall too. */
  static String key(String kind, String thing) {
    return thing == null ? kind : kind + "/" + Integer.toHexString(thing.hashCode());
  }

  String wall(Share share) {
    return cut(say(share, true));
  }

  String staff(Share share) {
    return say(share, false);
  }

  private String say(Share share, boolean wall) {
    RoomSheet sheet = snapshot.sheet(share.room());
    Line line = sheet == null || share.item() == null ? null : sheet.line(share.item());
    String what = line == null ? "set-up" : wall ? line.asks().wall() : line.asks().desk();
    return switch (share.kind()) {
      case "place" -> of(what, place(share, wall));
      case "equipment" -> equipment(share, wall);
      case "arrival" -> arrival(line, what, share, wall);
      case "lapse" -> of(what, "to be done again");
      case "booked" -> of(what, "not before " + clock(share.until()));
      case "person" -> person(share, what, wall);
      case "mend" -> isExtra(share) ? of(what, "may take longer") : fault(line, what);
      case "waits" -> of(what, "until about " + clock(share.until()));
      case "not-begun" -> of(what, "not begun");
      case "plan" -> "too little time was planned";
      case "occupied" -> occupied(share);
      default -> work(line, what, share);
    };
  }

  /** Some items' wording has a colon of its own. */
  static String of(String what, String rest) {
    return what + (what.contains(":") ? ", " : ": ") + rest;
  }

  private String place(Share share, boolean wall) {
    Morning.PlaceDay place = morning.places().get(new PlaceId(share.thing()));
    if (place == null) {
      return share.thing() + " not open";
    }
    String name = wall ? place.plan().wall() : place.plan().id().value();
    return place.opensAt() > now
        ? name + " opens " + clock(place.opensAt())
        : name + " opened " + clock(place.opensAt());
  }

  private String equipment(Share share, boolean wall) {
    String name = share.thing();
    boolean there = false;
    for (Morning.UnitDay unit : morning.units().values()) {
      if (unit.plan().kind().equals(share.thing())) {
        name = unit.plan().wall();
        there |= unit.with() != null && unit.with().value().equals(share.where());
      }
    }
    if (share.where() == null || share.where().equals(share.room())) {
      return name + ": waiting, until about " + clock(share.until());
    }
    return elsewhere(name, there, share, wall);
  }

  /**
   * Elsewhere until then: a fact only if the record says so, else what is expected to be done
   * first.
   */
  private String elsewhere(String name, boolean there, Share share, boolean wall) {
    String until = "until about " + clock(share.until());
    if (there) {
      return name + " is in " + share.where() + " " + until;
    }
    String first = name + " goes to " + share.where() + " first";
    String whole = first + ", " + until;
    if (!wall || whole.length() <= WALL_LETTERS) {
      return whole;
    }
    String brief = name + ": " + share.where() + " first, " + until;
    return brief.length() <= WALL_LETTERS ? brief : first;
  }

  private String arrival(Line line, String what, Share share, boolean wall) {
    if (share.thing() != null) {
      return personArrival(share.thing());
    }
    if (line != null && line.item().expectedAt() != null) {
      return of(what, "expected " + clock(line.item().expectedAt()));
    }
    // The wall's wording of what comes by itself says already that it is missing.
    return wall ? what : of(what, "not yet");
  }

  private String personArrival(String person) {
    Morning.PersonDay day = morning.people().get(new PersonId(person));
    if (day == null || day.arrivedAt() != null) {
      return role(person) + ": just come";
    }
    if (day.expectedAt() != null) {
      return role(person) + " expected " + clock(day.expectedAt());
    }
    return day.plan().plannedAt() > now
        ? role(person) + " comes " + clock(day.plan().plannedAt())
        : "no word from " + role(person);
  }

  private String person(Share share, String what, boolean wall) {
    String who = share.thing() == null ? "somebody" : role(share.thing());
    if (share.where() != null && !share.where().equals(share.room())) {
      return elsewhere(who, isIn(share.thing(), share.where()), share, wall);
    }
    return of(what, "waits for " + who);
  }

  private boolean isIn(String person, String room) {
    Morning.PersonDay day = person == null ? null : morning.people().get(new PersonId(person));
    return day != null && day.isHere() && day.room() != null && day.room().value().equals(room);
  }

  private String fault(Line line, String what) {
    boolean taken = line.item().mender() != null;
    return of(what, "fault, " + (taken ? "being mended" : "nobody on it"));
  }

  private String occupied(Share share) {
    Morning.RoomDay room = morning.rooms().get(new RoomId(share.room()));
    RoomSheet sheet = snapshot.sheet(share.room());
    String until =
        sheet != null && sheet.isOverrun()
            ? ", was to end " + clock(room.useUntil())
            : " until about " + clock(share.until());
    return switch (room.use()) {
      case CLEANING -> "room is being cleaned" + until;
      case EMERGENCY -> "room taken for an emergency" + until;
      case OCCUPIED -> "room in use" + until;
      case FREE -> "room was in use";
    };
  }

  private String work(Line line, String what, Share share) {
    if (line != null && line.state() == ItemState.IN_HAND) {
      return of(what, "in hand, about " + clock(share.until()));
    }
    return of(what, "about " + clock(share.until()));
  }

  /** The role of a person, and the room if it is that room's own. Never the person. */
  String role(String person) {
    Morning.PersonDay day = morning.people().get(new PersonId(person));
    return day == null ? "somebody" : day.plan().role().word();
  }

  static String cut(String text) {
    return text.length() <= WALL_LETTERS
        ? text
        : text.substring(0, WALL_LETTERS - 1).stripTrailing() + "…";
  }
}
