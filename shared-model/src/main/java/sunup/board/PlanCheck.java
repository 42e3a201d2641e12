package sunup.board;

import java.time.ZoneId;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** What is wrong with a plan, in a sentence that says where; the limits of a morning. */
final class PlanCheck {
  static final int MAX_ROOMS = 60;
  static final int MAX_PEOPLE = 600;
  static final int MAX_UNITS = 200;
  static final int MAX_PLACES = 40;
  static final int MAX_ITEMS = 120;
  static final int MAX_LABEL = 16;
  static final int MAX_OPTIONS = 20;
  static final int MAX_TEXT = 120;

  private PlanCheck() {}

  /** What is wrong, or null. */
  static String problem(MorningPlan plan, MorningId expected) {
    if (plan.id() == null || plan.settings() == null || plan.settings().startEvent() == null) {
      return "A plan needs suite, date and the site's settings with its start event.";
    }
    if (expected != null && !expected.equals(plan.id())) {
      return "This is the morning " + expected + ", not " + plan.id() + ". Send it there.";
    }
    int year = plan.id().date().getYear();
    if (year < 2000 || year > 2200) {
      return "The date " + plan.id().date() + " can't be meant.";
    }
    if (!isOnDate(plan, plan.beginsAt())) {
      return "The beginning of set-up must lie on the morning's own date or the day before.";
    }
    return firstOf(rooms(plan), sheets(plan), cases(plan), people(plan), units(plan), places(plan));
  }

  /** What is wrong with one case that is added or changed, or null. */
  static String problem(Morning morning, CasePlan plan, ComposedSheet sheet) {
    if (!morning.rooms().containsKey(plan.room())) {
      return "Case " + plan.id() + " names room " + plan.room() + ", which is not in the plan.";
    }
    if (!sheet.hash().equals(plan.sheet())) {
      return "Case " + plan.id() + " does not name the sheet that came with it.";
    }
    if (Math.abs(plan.bookedAt() - morning.beginsAt()) > Ask.PLAUSIBLE_MS) {
      return "Case " + plan.id() + " is booked on another day.";
    }
    String text = texts(plan);
    return text != null ? text : sheet(sheet);
  }

  /** What is wrong with a person who is added, whose rooms and time are right; or null. */
  static String problem(Morning morning, PersonPlan plan) {
    if (morning.people().containsKey(plan.id())) {
      return "Person " + plan.id() + " is on this morning already. Choose another pseudonym.";
    }
    if (morning.people().size() >= MAX_PEOPLE) {
      return "A morning has at most " + MAX_PEOPLE + " people.";
    }
    return switch (plan.role()) {
      case DESK, MANAGER, ADMIN, DISPLAY ->
          "A " + plan.role().word() + " does no work of a morning. Choose what the person does.";
      default -> null;
    };
  }

  private static String firstOf(String... problems) {
    for (String problem : problems) {
      if (problem != null) {
        return problem;
      }
    }
    return null;
  }

  private static String rooms(MorningPlan plan) {
    if (plan.rooms().isEmpty() || plan.rooms().size() > MAX_ROOMS) {
      return "A morning has 1 to " + MAX_ROOMS + " rooms, not " + plan.rooms().size() + ".";
    }
    Set<RoomId> rooms = new HashSet<>();
    for (RoomId room : plan.rooms()) {
      if (!rooms.add(room)) {
        return "Room " + room + " is named twice.";
      }
    }
    return null;
  }

  private static String sheets(MorningPlan plan) {
    if (plan.sheets().size() > MAX_ROOMS) {
      return "A morning has at most " + MAX_ROOMS + " sheets.";
    }
    Set<String> hashes = new HashSet<>();
    for (ComposedSheet sheet : plan.sheets()) {
      String problem = sheet(sheet);
      if (problem != null) {
        return problem;
      }
      if (!hashes.add(sheet.hash())) {
        return "Sheet " + sheet.hash() + " comes twice.";
      }
    }
    return null;
  }

  private static String sheet(ComposedSheet sheet) {
    if (sheet.hash() == null || sheet.hash().isBlank()) {
      return "A sheet has no hash.";
    }
    if (sheet.items().size() > MAX_ITEMS) {
      return "Sheet " + sheet.hash() + " has more than " + MAX_ITEMS + " items.";
    }
    Set<String> keys = new HashSet<>();
    for (SheetItem item : sheet.items()) {
      if (!keys.add(item.key())) {
        return "Sheet " + sheet.hash() + " has the item " + item.key() + " twice.";
      }
    }
    return null;
  }

  private static String cases(MorningPlan plan) {
    Set<RoomId> rooms = new HashSet<>(plan.rooms());
    Set<String> hashes = new HashSet<>();
    plan.sheets().forEach(sheet -> hashes.add(sheet.hash()));
    Set<CaseId> ids = new HashSet<>();
    Map<RoomId, CaseId> taken = new HashMap<>();
    for (CasePlan one : plan.cases()) {
      if (one.id() == null || one.room() == null || one.technique() == null) {
        return "A case needs an id, a room and a technique.";
      }
      if (!ids.add(one.id())) {
        return "Case " + one.id() + " is named twice.";
      }
      if (!rooms.contains(one.room())) {
        return "Case " + one.id() + " names room " + one.room() + ", which is not in the plan.";
      }
      CaseId other = taken.putIfAbsent(one.room(), one.id());
      if (other != null) {
        return "Room " + one.room() + " has two first cases: " + other + " and " + one.id() + ".";
      }
      if (one.sheet() == null || !hashes.contains(one.sheet())) {
        return "Case " + one.id() + " names a sheet that is not in the plan.";
      }
      if (!isOnDate(plan, one.bookedAt())) {
        return "Case " + one.id() + " is not booked on the morning's date.";
      }
      String text = texts(one);
      if (text != null) {
        return text;
      }
    }
    return null;
  }

  private static String texts(CasePlan one) {
    if (one.options().size() > MAX_OPTIONS
        || one.technique().length() > MAX_TEXT
        || (one.service() != null && one.service().length() > MAX_TEXT)) {
      return "Case " + one.id() + " has more options or longer words than a morning keeps.";
    }
    return null;
  }

  private static String people(MorningPlan plan) {
    if (plan.people().size() > MAX_PEOPLE) {
      return "A morning has at most " + MAX_PEOPLE + " people.";
    }
    Set<RoomId> rooms = new HashSet<>(plan.rooms());
    Set<PersonId> ids = new HashSet<>();
    for (PersonPlan person : plan.people()) {
      if (person.id() == null || person.role() == null) {
        return "A person needs a pseudonym and a role.";
      }
      if (!ids.add(person.id())) {
        return "Person " + person.id() + " is named twice.";
      }
      if (person.room() != null && !rooms.contains(person.room())) {
        return "Person "
            + person.id()
            + " is planned for room "
            + person.room()
            + ", which is not in the plan.";
      }
      for (RoomId room : person.covers()) {
        if (!rooms.contains(room)) {
          return "Person " + person.id() + " covers room " + room + ", which is not in the plan.";
        }
      }
      if (!isOnDate(plan, person.plannedAt())) {
        return "Person " + person.id() + " is not planned on the morning's date.";
      }
    }
    return null;
  }

  private static String units(MorningPlan plan) {
    if (plan.units().size() > MAX_UNITS) {
      return "A morning has at most " + MAX_UNITS + " pieces of equipment.";
    }
    Set<UnitId> ids = new HashSet<>();
    for (UnitPlan unit : plan.units()) {
      if (unit.id() == null || unit.kind() == null || isTooLong(unit.wall())) {
        return "A piece of equipment needs a tag, a kind and a name of at most "
            + MAX_LABEL
            + " letters.";
      }
      if (!ids.add(unit.id())) {
        return "Equipment " + unit.id() + " is named twice.";
      }
    }
    return null;
  }

  private static String places(MorningPlan plan) {
    if (plan.places().size() > MAX_PLACES) {
      return "A morning has at most " + MAX_PLACES + " places.";
    }
    Set<PlaceId> ids = new HashSet<>();
    for (PlacePlan place : plan.places()) {
      if (place.id() == null || isTooLong(place.wall())) {
        return "A place needs a key and a name of at most " + MAX_LABEL + " letters.";
      }
      if (!ids.add(place.id())) {
        return "Place " + place.id() + " is named twice.";
      }
      if (!(place.walkMinutes() >= 0 && place.walkMinutes() <= 60)) {
        return "The walk to " + place.id() + " must be 0 to 60 minutes.";
      }
      if (!isOnDate(plan, place.opensAt())) {
        return "Place " + place.id() + " does not open on the morning's date.";
      }
    }
    return null;
  }

  private static boolean isTooLong(String label) {
    return label == null || label.length() > MAX_LABEL;
  }

  /** From noon the day before to the end of the date, by the site's own clock. */
  private static boolean isOnDate(MorningPlan plan, long time) {
    ZoneId zone = plan.settings().zoneId();
    long from = plan.id().date().minusDays(1).atTime(12, 0).atZone(zone).toInstant().toEpochMilli();
    long to = plan.id().date().plusDays(1).atStartOfDay(zone).toInstant().toEpochMilli();
    return time >= from && time < to;
  }
}
