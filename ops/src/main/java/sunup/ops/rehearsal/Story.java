package sunup.ops.rehearsal;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import sunup.board.CasePlan;
import sunup.board.MorningPlan;
import sunup.board.PersonId;
import sunup.board.RoomId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.codec.Maybe;
import sunup.sheets.ComposedSheet;

/**
 * What is special about a morning beside the dice: the misfortunes that it is played for. Times are
 * the site's local times on the morning's date, {@code HH:mm}.
 *
 * @param people who comes at another time than planned
 * @param faults what is found broken
 * @param nights rooms that are still in use
 * @param arrivals patients and surgeons who come at another time
 * @param agreed later starts that are agreed
 * @param places places that open at another time than planned
 * @param once rooms that report once, 15 minutes before their target, and not a word before
 * @param missing what is found to be not in order, by whoever looks
 * @param slow what takes so much longer than its dice say
 * @param shows what gauges show; what is not named shows what its dice say
 * @param sooner what comes by itself comes so much sooner than its dice say
 */
public record Story(
    List<Comes> people,
    List<Broken> faults,
    List<Night> nights,
    List<Arrives> arrivals,
    List<Agreed> agreed,
    List<Opens> places,
    List<RoomId> once,
    @Maybe List<Missing> missing,
    @Maybe List<Slow> slow,
    @Maybe List<Shows> shows,
    @Maybe List<Sooner> sooner) {
  /** Nothing special. */
  public static final Story PLAIN =
      new Story(null, null, null, null, null, null, null, null, null, null, null);

  public Story {
    people = listed(people);
    faults = listed(faults);
    nights = listed(nights);
    arrivals = listed(arrivals);
    agreed = listed(agreed);
    places = listed(places);
    once = listed(once);
    missing = listed(missing);
    slow = listed(slow);
    shows = listed(shows);
    sooner = listed(sooner);
  }

  /** A person comes so many minutes after the planned time; negative is earlier. */
  public record Comes(PersonId person, double minutesLate) {}

  /** The first time that the item is done it turns out broken; mending takes so long. */
  public record Broken(RoomId room, String item, String what, double mendMinutes) {}

  /**
   * At {@code found} somebody sees that the item is not in order and says so: a consent, a result,
   * a tray, a bed. {@code by} takes it at {@code taken}; from {@code until} on it can be done.
   */
  public record Missing(
      RoomId room,
      String item,
      String what,
      String found,
      String taken,
      PersonId by,
      String until) {}

  /** The item takes so many minutes. */
  public record Slow(RoomId room, String item, double minutes) {}

  /** The number that is read off for the item, in the unit of its sheet. */
  public record Shows(RoomId room, String item, double value) {}

  /** A patient or surgeon comes so many minutes sooner than the dice say. */
  public record Sooner(RoomId room, String item, double minutes) {}

  /** The room is in use until then, and cleaned afterwards; {@code said} is what was expected. */
  public record Night(RoomId room, String said, String until, double cleaningMinutes) {}

  /** A patient or surgeon comes then; {@code phoned} is when the desk hears of it, or absent. */
  public record Arrives(
      RoomId room, String item, String at, @Maybe String phoned, @Maybe String said) {}

  /** At {@code when} a later start is agreed. */
  public record Agreed(RoomId room, String to, String when) {}

  /** The place opens at {@code at}, and the desk hears so at {@code heard}. */
  public record Opens(String place, String at, String heard) {}

  /**
   * @throws BadJson if the text is no story
   */
  public static Story read(String text) throws BadJson {
    return Json.read(text, Story.class);
  }

  /** The same story with these gauges. */
  public Story showing(List<Shows> gauges) {
    return new Story(
        people, faults, nights, arrivals, agreed, places, once, missing, slow, gauges, sooner);
  }

  /** The same story with other arrivals. */
  public Story arriving(List<Arrives> others) {
    return new Story(
        people, faults, nights, others, agreed, places, once, missing, slow, shows, sooner);
  }

  /** Milliseconds that the item comes sooner by itself. */
  long soonerMs(RoomId room, String item) {
    double minutes = 0;
    for (Sooner s : sooner) {
      minutes += s.room().equals(room) && s.item().equals(item) ? s.minutes() : 0;
    }
    return Math.round(minutes * 60_000);
  }

  /** What a gauge shows, or null if the dice say. */
  Double shown(RoomId room, String item) {
    for (Shows s : shows) {
      if (s.room().equals(room) && s.item().equals(item)) {
        return s.value();
      }
    }
    return null;
  }

  /** What in the story does not fit the plan, each with its mend; empty if all does. */
  public List<String> misfits(MorningPlan plan) {
    List<String> wrong = new ArrayList<>();
    people.forEach(c -> checkPerson(plan, "people", c.person(), wrong));
    faults.forEach(f -> checkItem(plan, "faults", f.room(), f.item(), wrong));
    missing.forEach(m -> checkItem(plan, "missing", m.room(), m.item(), wrong));
    missing.forEach(m -> checkPerson(plan, "missing", m.by(), wrong));
    slow.forEach(x -> checkItem(plan, "slow", x.room(), x.item(), wrong));
    shows.forEach(x -> checkItem(plan, "shows", x.room(), x.item(), wrong));
    arrivals.forEach(a -> checkItem(plan, "arrivals", a.room(), a.item(), wrong));
    sooner.forEach(x -> checkItem(plan, "sooner", x.room(), x.item(), wrong));
    nights.forEach(n -> checkRoom(plan, "nights", n.room(), wrong));
    agreed.forEach(a -> checkRoom(plan, "agreed", a.room(), wrong));
    once.forEach(r -> checkRoom(plan, "once", r, wrong));
    for (Opens o : places) {
      if (plan.places().stream().noneMatch(p -> p.id().value().equals(o.place()))) {
        wrong.add("places: the plan has no place " + o.place());
      }
    }
    return wrong;
  }

  private static void checkPerson(
      MorningPlan plan, String what, PersonId person, List<String> wrong) {
    if (plan.people().stream().noneMatch(p -> p.id().equals(person))) {
      wrong.add(what + ": the plan has no person " + person);
    }
  }

  private static void checkRoom(MorningPlan plan, String what, RoomId room, List<String> wrong) {
    if (plan.cases().stream().noneMatch(c -> c.room().equals(room))) {
      wrong.add(what + ": the plan has no first case in room " + room);
    }
  }

  private static void checkItem(
      MorningPlan plan, String what, RoomId room, String key, List<String> wrong) {
    for (CasePlan c : plan.cases()) {
      if (c.room().equals(room)) {
        for (ComposedSheet s : plan.sheets()) {
          if (s.hash().equals(c.sheet()) && s.items().stream().anyMatch(i -> i.key().equals(key))) {
            return;
          }
        }
      }
    }
    wrong.add(what + ": the sheet of room " + room + " has no item " + key);
  }

  /** A local time of the plan's date as epoch milliseconds. */
  static long at(MorningPlan plan, String time) {
    return plan.id()
        .date()
        .atTime(LocalTime.parse(time))
        .atZone(plan.settings().zoneId())
        .toInstant()
        .toEpochMilli();
  }

  private static <T> List<T> listed(List<T> given) {
    return given == null ? List.of() : List.copyOf(given);
  }
}
