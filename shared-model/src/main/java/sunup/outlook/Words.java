package sunup.outlook;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.PersonId;
import sunup.board.PlaceId;
import sunup.board.RoomUse;
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
    if (kind.equals("occupied")) {
      // The room itself is in use, whichever item of it waits first.
      return key(kind, null);
    }
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
      case "place" -> fit(wall, what, place(share, wall), null);
      case "equipment" -> equipment(share, wall);
      case "arrival" -> arrival(line, what, share, wall);
      case "lapse" -> fit(wall, what, "to be done again", "again");
      case "booked" -> {
        String until = clock(share.until());
        yield fit(wall, what, "not before " + until, "from " + until);
      }
      case "person" -> person(share, what, wall);
      case "mend" ->
          isExtra(share)
              ? fit(wall, what, "may take longer", "may be longer")
              : fault(line, what, wall);
      case "waits" -> {
        String until = clock(share.until());
        yield fit(wall, what, "until about " + until, "until " + until);
      }
      case "not-begun" -> of(what, "not begun");
      case "plan" -> "too little time was planned";
      case "occupied" -> occupied(share);
      default -> work(line, what, share, wall);
    };
  }

  /**
   * A holdup of which is known what it was and not until when, in the wall's words.
   *
   * @param what the item's words, or null
   * @param thing the role, kind of equipment or place in words, or null
   */
  static String timeless(String kind, String what, String thing) {
    String item = what == null ? "set-up" : what;
    String other = thing == null ? "somebody" : thing;
    return cut(
        switch (kind) {
          case "place" -> other + " not open";
          case "equipment" -> other + ": waiting";
          case "arrival" -> thing == null ? item : "no word from " + thing;
          case "lapse" -> fit(true, item, "to be done again", "again");
          case "booked" -> fit(true, item, "not before its time", "later");
          case "person" -> fit(true, item, "waits for " + other, "needs " + other);
          case "mend" -> fit(true, item, "to be mended", "fault");
          case "waits" -> fit(true, item, "waiting", null);
          case "not-begun" -> fit(true, item, "not begun", null);
          case "occupied" -> "room in use";
          default -> fit(true, item, "not done", null);
        });
  }

  /**
   * What with the rest; on the wall with its brief form, or that without what it is, where the
   * whole has too many letters: a word that is cut off says nothing from six metres.
   */
  private static String fit(boolean wall, String what, String rest, String brief) {
    String whole = of(what, rest);
    if (!wall || whole.length() <= WALL_LETTERS) {
      return whole;
    }
    String shorter = brief == null ? rest : of(what, brief);
    return shorter.length() <= WALL_LETTERS ? shorter : rest;
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
    return opens(place, wall);
  }

  String opens(Morning.PlaceDay place, boolean wall) {
    String name = wall ? place.plan().wall() : place.plan().id().value();
    return place.opensAt() > now
        ? name + " opens " + clock(place.opensAt())
        : name + " opened " + clock(place.opensAt());
  }

  /** Equipment of a kind, as it is called. */
  String unit(String kind) {
    for (Morning.UnitDay unit : morning.units().values()) {
      if (unit.plan().kind().equals(kind)) {
        return unit.plan().wall();
      }
    }
    return kind;
  }

  private String equipment(Share share, boolean wall) {
    String name = unit(share.thing());
    boolean there = false;
    for (Morning.UnitDay unit : morning.units().values()) {
      if (unit.plan().kind().equals(share.thing())) {
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
    boolean said = line != null && line.item().expectedAt() != null;
    // The wall's wording of what comes by itself says already that it is missing.
    return wall && !said ? what : comes(line, what);
  }

  /** What comes by itself. */
  String comes(Line line, String what) {
    Long expected = line == null ? null : line.item().expectedAt();
    return of(what, expected == null ? "not yet" : "expected " + clock(expected));
  }

  String personArrival(String person) {
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
    return fit(wall, what, "waits for " + who, "needs " + who);
  }

  private boolean isIn(String person, String room) {
    Morning.PersonDay day = person == null ? null : morning.people().get(new PersonId(person));
    return day != null && day.isHere() && day.room() != null && day.room().value().equals(room);
  }

  String fault(Line line, String what, boolean wall) {
    boolean taken = line.item().mender() != null;
    return fit(
        wall,
        what,
        "fault, " + (taken ? "being mended" : "nobody on it"),
        taken ? "being mended" : "fault");
  }

  private String occupied(Share share) {
    RoomSheet sheet = snapshot.sheet(share.room());
    return sheet == null ? "room was in use" : use(sheet);
  }

  /** What a room is used for and until when, by what was said; at most 40 letters. */
  String use(RoomSheet sheet) {
    RoomUse use = sheet.room().use();
    Long until = sheet.room().useUntil();
    String what =
        switch (use) {
          case CLEANING -> "room is being cleaned";
          case EMERGENCY -> "emergency";
          case OCCUPIED -> "room in use";
          case FREE -> "room was in use";
        };
    if (use == RoomUse.FREE) {
      return what;
    }
    if (until == null) {
      return what + ", no end said";
    }
    if (sheet.isOverrun()) {
      return what + ", was to end " + clock(until);
    }
    return what + " until " + clock(until) + (use == RoomUse.CLEANING ? "" : ", then cleaning");
  }

  private String work(Line line, String what, Share share, boolean wall) {
    String about = "about " + clock(share.until());
    return line != null && line.state() == ItemState.IN_HAND
        ? fit(wall, what, "in hand, " + about, about)
        : of(what, about);
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
