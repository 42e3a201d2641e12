package sunup.ops.madeup;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import sunup.board.Role;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.codec.Maybe;

/**
 * What an invented time hides, to be found again from the review's pages.
 *
 * @param from the first date
 * @param to the last
 * @param seed of all that is left to chance
 * @param truths what is hidden; none is right, too
 */
public record Scenario(LocalDate from, LocalDate to, long seed, List<Truth> truths) {
  private static final int DAYS_MOST = 750;

  public Scenario {
    truths = truths == null ? List.of() : List.copyOf(truths);
  }

  /**
   * One hidden truth: on which mornings and in which rooms something goes wrong, how often, and
   * what. Exactly one of place, comes, role and item says what.
   *
   * @param name for those who are told the truth in the end
   * @param from the first date of it; none for the scenario's
   * @param to the last one
   * @param weekdays on which; none for all
   * @param services whose rooms; none for all
   * @param rooms which; none for all
   * @param chance of each room of each morning, of a place of each morning
   * @param place that opens so much later than planned
   * @param comes item that comes by itself so much later than planned: {@code surgeon.seen}, {@code
   *     patient.arrived}
   * @param role whose people of these rooms come so much later than planned
   * @param item that takes so long
   * @param minutes on average: from half as many to half as many again
   */
  public record Truth(
      String name,
      @Maybe LocalDate from,
      @Maybe LocalDate to,
      @Maybe List<String> weekdays,
      @Maybe List<String> services,
      @Maybe List<String> rooms,
      double chance,
      @Maybe String place,
      @Maybe String comes,
      @Maybe String role,
      @Maybe String item,
      double minutes) {
    public Truth {
      weekdays = weekdays == null ? List.of() : List.copyOf(weekdays);
      services = services == null ? List.of() : List.copyOf(services);
      rooms = rooms == null ? List.of() : List.copyOf(rooms);
    }

    boolean isOn(LocalDate date) {
      boolean begun = from == null || !date.isBefore(from);
      boolean goesOn = to == null || !date.isAfter(to);
      String day = word(date.getDayOfWeek());
      return begun && goesOn && (weekdays.isEmpty() || weekdays.contains(day));
    }

    boolean isIn(String room, String service) {
      return (rooms.isEmpty() || rooms.contains(room))
          && (services.isEmpty() || services.contains(service));
    }
  }

  private static String word(DayOfWeek day) {
    return day.name().toLowerCase(Locale.ROOT);
  }

  /**
   * Reads a scenario's file.
   *
   * @throws BadJson if it is none; the message says where
   */
  public static Scenario read(String text) throws BadJson {
    return Json.read(text, Scenario.class);
  }

  /**
   * What is wrong in it, each with its mend; empty if it can be used.
   *
   * @param services of the case list that it is played with
   * @param rooms of it
   * @param places of the site
   */
  public List<String> mistakes(List<String> services, List<String> rooms, List<String> places) {
    List<String> wrong = new ArrayList<>();
    if (from == null || to == null || to.isBefore(from)) {
      wrong.add("from and to: name the first date and the last one, as 2026-03-02");
    } else if (from.plusDays(DAYS_MOST).isBefore(to)) {
      wrong.add("to: it is over " + DAYS_MOST + " days after from; make less at once");
    }
    for (int i = 0; i < truths.size(); i++) {
      Truth t = truths.get(i);
      String at = "truths[" + i + "].";
      if (t.name() == null || t.name().isBlank()) {
        wrong.add(at + "name: is missing; say what is hidden");
      }
      if (!(t.chance() > 0 && t.chance() <= 1)) {
        wrong.add(at + "chance: must be over 0 and at most 1, not " + t.chance());
      }
      if (!(t.minutes() > 0 && t.minutes() <= 240)) {
        wrong.add(at + "minutes: must be over 0 and at most 240, not " + t.minutes());
      }
      if (t.from() != null && t.to() != null && t.to().isBefore(t.from())) {
        wrong.add(at + "to: is before from");
      }
      List<String> days = Arrays.stream(DayOfWeek.values()).map(Scenario::word).toList();
      known(at + "weekdays", t.weekdays(), days, wrong);
      known(at + "services", t.services(), services, wrong);
      known(at + "rooms", t.rooms(), rooms, wrong);
      known(at + "place", one(t.place()), places, wrong);
      known(at + "role", one(t.role()), roles(), wrong);
      int whats = one(t.place()).size() + one(t.comes()).size();
      if (whats + one(t.role()).size() + one(t.item()).size() != 1) {
        wrong.add(at + "place, comes, role, item: give exactly one of the four");
      }
      if (t.place() != null && !(t.rooms().isEmpty() && t.services().isEmpty())) {
        wrong.add(at + "place: is the same for all rooms; take out rooms and services");
      }
    }
    return wrong;
  }

  private static List<String> roles() {
    return Arrays.stream(Role.values()).map(Role::word).toList();
  }

  private static List<String> one(String value) {
    return value == null ? List.of() : List.of(value);
  }

  private static void known(
      String field, List<String> given, List<String> known, List<String> wrong) {
    for (String value : given) {
      if (!known.contains(value)) {
        wrong.add(field + ": '" + value + "' is unknown; there are " + String.join(", ", known));
      }
    }
  }
}
