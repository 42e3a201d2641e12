package sunup.ops.madeup;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import sunup.board.CasePlan;
import sunup.board.MorningPlan;
import sunup.board.Role;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.codec.Maybe;
import sunup.sheets.ComposedSheet;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;

/**
 * What an invented time hides, to be found again from the review's pages.
 *
 * @param from the first date
 * @param to the last
 * @param seed of all that is left to chance
 * @param truths what is hidden; none is right, too
 * @param leaks machines that get worse slowly
 * @param desk how the desk works by the board; none for a desk that only looks
 */
public record Scenario(
    @Maybe LocalDate from,
    @Maybe LocalDate to,
    long seed,
    List<Truth> truths,
    @Maybe List<Leak> leaks,
    @Maybe DeskWork desk) {
  private static final int DAYS_MOST = 750;

  public Scenario {
    truths = truths == null ? List.of() : List.copyOf(truths);
    leaks = leaks == null ? List.of() : List.copyOf(leaks);
  }

  /**
   * A desk that works by the board: of a room that the board calls more likely late than not, it
   * takes the largest holdup. Who is late by himself (a surgeon, a patient) is called, and comes
   * sooner.
   *
   * @param chance of a morning on which it does
   * @param sooner what a call saves of the time that is left until he would have come, 0 to 1
   */
  public record DeskWork(double chance, double sooner) {}

  /**
   * A machine whose reading goes slowly to the worse, until it is renewed.
   *
   * @param name for those who are told in the end
   * @param room whose machine it is
   * @param item key of the item that asks for the number
   * @param renewed a date on which it was as good as new; none for the first of this time, in a
   *     demo's past {@link #RENEWED_BEFORE} weekdays before its morning
   * @param perMorning how much worse from one weekday to the next, in the reading's unit
   * @param mornings weekdays from one renewal to the next
   */
  public record Leak(
      String name,
      String room,
      String item,
      @Maybe LocalDate renewed,
      double perMorning,
      int mornings) {
    Leak renewedOn(LocalDate date) {
      return new Leak(name, room, item, renewed == null ? date : renewed, perMorning, mornings);
    }
  }

  /** So that the last of the demo's gauges shows a leak that is told and not yet a fault. */
  private static final int RENEWED_BEFORE = 11;

  /**
   * The same for the last weekdays before a morning: its past.
   *
   * @param mornings how many
   */
  public Scenario before(LocalDate morning, int mornings, long ofSeed) {
    LocalDate renewed = Weekdays.before(morning, RENEWED_BEFORE);
    return new Scenario(
        Weekdays.before(morning, mornings),
        morning.minusDays(1),
        ofSeed,
        truths,
        leaks.stream().map(leak -> leak.renewedOn(renewed)).toList(),
        desk);
  }

  /**
   * One hidden truth: on which mornings and in which rooms something goes wrong, how often, and
   * what. Exactly one of place, comes, role, item and handover says what.
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
   * @param handover true if the room is handed over so long after its set-up should begin
   * @param minutes on average: from half as many to half as many again; of what comes by itself
   *     below 0 for sooner than usual, an improvement
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
      @Maybe Boolean handover,
      double minutes) {
    public Truth {
      weekdays = weekdays == null ? List.of() : List.copyOf(weekdays);
      services = services == null ? List.of() : List.copyOf(services);
      rooms = rooms == null ? List.of() : List.copyOf(rooms);
    }

    private long whats() {
      return Stream.of(place, comes, role, item, isHandover() ? "handover" : null)
          .filter(Objects::nonNull)
          .count();
    }

    boolean isHandover() {
      return Boolean.TRUE.equals(handover);
    }

    /** True if it holds on a date. */
    public boolean isOn(LocalDate date) {
      boolean begun = from == null || !date.isBefore(from);
      boolean goesOn = to == null || !date.isAfter(to);
      String day = word(date.getDayOfWeek());
      return begun && goesOn && (weekdays.isEmpty() || weekdays.contains(day));
    }

    /** True if it holds in a room. */
    public boolean isIn(String room, String service) {
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

  /** What is wrong with its time, and {@link #mistakes}. */
  public List<String> mistakesWithTime(MorningPlan plan) {
    List<String> wrong = new ArrayList<>();
    if (from == null || to == null || to.isBefore(from)) {
      wrong.add("from and to: name the first date and the last one, as 2026-03-02");
    } else if (from.plusDays(DAYS_MOST).isBefore(to)) {
      wrong.add("to: it is over " + DAYS_MOST + " days after from; make less at once");
    }
    wrong.addAll(mistakes(plan));
    return wrong;
  }

  /**
   * What is wrong in it whatever its time is, each with its mend; empty if it can be used.
   *
   * @param plan of any morning that it is played with
   */
  public List<String> mistakes(MorningPlan plan) {
    List<String> wrong = new ArrayList<>();
    List<String> services =
        plan.cases().stream().map(CasePlan::service).filter(Objects::nonNull).distinct().toList();
    List<String> rooms = plan.rooms().stream().map(Object::toString).toList();
    List<String> places = plan.places().stream().map(p -> p.id().value()).toList();
    for (int i = 0; i < truths.size(); i++) {
      Truth t = truths.get(i);
      String at = "truths[" + i + "].";
      if (t.name() == null || t.name().isBlank()) {
        wrong.add(at + "name: is missing; say what is hidden");
      }
      if (!(t.chance() > 0 && t.chance() <= 1)) {
        wrong.add(at + "chance: must be over 0 and at most 1, not " + t.chance());
      }
      boolean sooner = t.comes() != null && t.minutes() < 0 && t.minutes() >= -240;
      if (!(sooner || (t.minutes() > 0 && t.minutes() <= 240))) {
        wrong.add(
            at
                + "minutes: must be over 0 and at most 240, not "
                + t.minutes()
                + "; below 0 only of what comes");
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
      if (t.whats() != 1) {
        wrong.add(at + "place, comes, role, item, handover: give exactly one of the five");
      }
      if (t.place() != null && !(t.rooms().isEmpty() && t.services().isEmpty())) {
        wrong.add(at + "place: is the same for all rooms; take out rooms and services");
      }
    }
    if (desk != null && !(isShare(desk.chance()) && isShare(desk.sooner()))) {
      wrong.add("desk.chance, desk.sooner: must be 0 to 1");
    }
    for (int i = 0; i < leaks.size(); i++) {
      leak("leaks[" + i + "].", leaks.get(i), plan, wrong);
    }
    return wrong;
  }

  private static boolean isShare(double value) {
    return value >= 0 && value <= 1;
  }

  private static void leak(String at, Leak leak, MorningPlan plan, List<String> wrong) {
    if (leak.name() == null || leak.name().isBlank()) {
      wrong.add(at + "name: is missing; say what is hidden");
    }
    known(
        at + "room", one(leak.room()), plan.rooms().stream().map(Object::toString).toList(), wrong);
    List<String> read =
        plan.sheets().stream()
            .map(ComposedSheet::items)
            .flatMap(List::stream)
            .filter(i -> i.evidence().kind() == EvidenceRule.Kind.NUMBER)
            .map(SheetItem::key)
            .distinct()
            .toList();
    known(at + "item", one(leak.item()), read, wrong);
    if (leak.room() == null || leak.item() == null) {
      wrong.add(at + "room, item: give both, whose machine and which reading");
    }
    if (!(leak.perMorning() > 0)) {
      wrong.add(at + "perMorning: must be over 0, not " + leak.perMorning());
    }
    if (leak.mornings() < 2 || leak.mornings() > DAYS_MOST) {
      wrong.add(at + "mornings: must be 2 to " + DAYS_MOST + ", not " + leak.mornings());
    }
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
