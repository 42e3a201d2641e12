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
   * @param onTime share under each morning's own grace; null if too few: withheld
   * @param meanLate minutes per start; null if too few
   */
  public record Cell(
      String room, DayOfWeek day, int starts, @Maybe Double onTime, @Maybe Double meanLate) {}

  /** The cells of these starts. */
  public static RoomByWeekday of(List<FirstCaseFact> facts) {
    Map<String, Map<DayOfWeek, List<FirstCaseFact>>> table =
        new TreeMap<>(Comparator.comparingInt(String::length).thenComparing(s -> s));
    TreeMap<DayOfWeek, Integer> days = new TreeMap<>();
    for (FirstCaseFact fact : facts) {
      if (fact.hasStarted()) {
        table
            .computeIfAbsent(fact.room().value(), k -> new TreeMap<>())
            .computeIfAbsent(fact.weekday(), k -> new ArrayList<>())
            .add(fact);
        days.merge(fact.weekday(), 1, Integer::sum);
      }
    }
    List<Cell> cells = new ArrayList<>();
    table.forEach(
        (room, byDay) ->
            days.keySet()
                .forEach(day -> cells.add(cell(room, day, byDay.getOrDefault(day, List.of())))));
    return new RoomByWeekday(
        List.copyOf(table.keySet()), List.copyOf(days.keySet()), List.copyOf(cells));
  }

  private static Cell cell(String room, DayOfWeek day, List<FirstCaseFact> starts) {
    int n = starts.size();
    if (Withheld.isWithheld(n)) {
      return new Cell(room, day, n, null, null);
    }
    double onTime = starts.stream().filter(FirstCaseFact::onTime).count();
    double late = starts.stream().mapToDouble(FirstCaseFact::lateMinutes).sum();
    return new Cell(room, day, n, onTime / n, late / n);
  }
}
