package sunup.review.charts;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sunup.codec.Maybe;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;

/**
 * Rooms by weekday. Many cells are looked at together: one that stands out is a question, no
 * answer; compare it before anything is said of it.
 *
 * @param rooms in order
 * @param days that have a start, Monday first
 * @param cells one for each room and day, room by room
 */
public record RoomByWeekday(List<String> rooms, List<DayOfWeek> days, List<Cell> cells) {
  /**
   * One room on one weekday.
   *
   * @param starts of it
   * @param onTime share under each morning's own grace of those of which it is known; null if too
   *     few: withheld
   * @param meanLate minutes per start; null if too few
   */
  public record Cell(
      String room, DayOfWeek day, int starts, @Maybe Double onTime, @Maybe Double meanLate) {}

  /** Starts of one room on one weekday, added up; {@code judged}: known whether on time. */
  public record Counted(
      String room, DayOfWeek day, int starts, int judged, int onTime, long lateMs) {
    Counted plus(Counted other) {
      return new Counted(
          room,
          day,
          starts + other.starts,
          judged + other.judged,
          onTime + other.onTime,
          lateMs + other.lateMs);
    }
  }

  /** The cells of these starts. */
  public static RoomByWeekday ofFacts(List<FirstCaseFact> facts) {
    return of(facts.stream().filter(FirstCaseFact::hasStarted).map(RoomByWeekday::one).toList());
  }

  private static Counted one(FirstCaseFact f) {
    int onTime = f.onTime() ? 1 : 0;
    int judged = f.judged() ? 1 : 0;
    return new Counted(f.room().value(), f.weekday(), 1, judged, onTime, f.lateMs());
  }

  /** The same of what was counted. */
  public static RoomByWeekday of(List<Counted> counted) {
    Map<String, Map<DayOfWeek, Counted>> table =
        new TreeMap<>(Comparator.comparingInt(String::length).thenComparing(s -> s));
    TreeMap<DayOfWeek, Integer> days = new TreeMap<>();
    for (Counted c : counted) {
      table.computeIfAbsent(c.room(), k -> new TreeMap<>()).merge(c.day(), c, Counted::plus);
      days.merge(c.day(), 1, Integer::sum);
    }
    List<Cell> cells = new ArrayList<>();
    table.forEach(
        (room, byDay) -> days.keySet().forEach(day -> cells.add(cell(room, day, byDay.get(day)))));
    return new RoomByWeekday(
        List.copyOf(table.keySet()), List.copyOf(days.keySet()), List.copyOf(cells));
  }

  private static Cell cell(String room, DayOfWeek day, Counted counted) {
    int n = counted == null ? 0 : counted.starts();
    if (Withheld.isWithheld(n)) {
      return new Cell(room, day, n, null, null);
    }
    double late = (double) counted.lateMs() / FirstCaseFact.MINUTE;
    boolean few = Withheld.isWithheld(counted.judged());
    Double onTime = few ? null : (Double) ((double) counted.onTime() / counted.judged());
    return new Cell(room, day, n, onTime, late / n);
  }
}
