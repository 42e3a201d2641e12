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
  static String key(Share share) {
    return key(share.kind(), share.thing() != null ? share.thing() : share.item());
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
      case "place" -> what + ": " + place(share, wall);
      case "equipment" -> equipment(share);
      case "arrival" -> arrival(line, what, share, wall);
      case "lapse" -> what + ": to be done again";
      case "booked" -> what + ": not before " + clock(share.until());
      case "person" -> person(share, what);
      case "mend" -> fault(line, what);
      case "waits" -> what + ": until about " + clock(share.until());
      case "not-begun" -> what + ": not begun";
      case "plan" -> "too little time was planned";
      case "occupied" -> occupied(share);
      default -> work(line, what, share);
    };
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

  private String equipment(Share share) {
    String name = share.thing();
    for (Morning.UnitDay unit : morning.units().values()) {
      if (unit.plan().kind().equals(share.thing())) {
        name = unit.plan().wall();
      }
    }
    if (share.where() == null || share.where().equals(share.room())) {
      return name + ": waiting, until about " + clock(share.until());
    }
    return name + " is in " + share.where() + " until about " + clock(share.until());
  }

  private String arrival(Line line, String what, Share share, boolean wall) {
    if (share.thing() != null) {
      return personArrival(share.thing());
    }
    if (line != null && line.item().expectedAt() != null) {
      return what + ": expected " + clock(line.item().expectedAt());
    }
    // The wall's wording of what comes by itself says already that it is missing.
    return wall ? what : what + ": not yet";
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

  private String person(Share share, String what) {
    String who = share.thing() == null ? "somebody" : role(share.thing());
    if (share.where() != null && !share.where().equals(share.room())) {
      return who + " is in " + share.where() + " until about " + clock(share.until());
    }
    return what + ": waits for " + who;
  }

  private String fault(Line line, String what) {
    boolean taken = line != null && line.item().mender() != null;
    return what + ": fault, " + (taken ? "being mended" : "nobody on it");
  }

  private String occupied(Share share) {
    Morning.RoomDay room = morning.rooms().get(new RoomId(share.room()));
    String until = " until about " + clock(share.until());
    return switch (room.use()) {
      case CLEANING -> "room is being cleaned" + until;
      case EMERGENCY -> "room taken for an emergency" + until;
      case OCCUPIED -> "room in use" + until;
      case FREE -> "room was in use";
    };
  }

  private String work(Line line, String what, Share share) {
    if (line != null && line.state() == ItemState.IN_HAND) {
      return what + ": in hand, about " + clock(share.until());
    }
    return what + ": about " + clock(share.until());
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
