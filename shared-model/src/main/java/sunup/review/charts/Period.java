package sunup.review.charts;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;

/**
 * Periods that starts are counted by. Periods without enough starts to be shown are there without
 * figures and count for nothing, neither in the centre nor in the limits.
 */
public enum Period {
  MORNING,
  WEEK,
  /** Four weeks from a fixed Monday on; six of them are advised for stable figures. */
  FOUR_WEEKS,
  MONTH;

  /** The Monday from which four weeks are counted. */
  private static final LocalDate MONDAY = LocalDate.of(2001, 1, 1);

  /** The first day of a date's period. */
  public LocalDate of(LocalDate date) {
    return switch (this) {
      case MORNING -> date;
      case WEEK -> date.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
      case FOUR_WEEKS ->
          MONDAY.plusDays(Math.floorDiv(ChronoUnit.DAYS.between(MONDAY, date), 28L) * 28);
      case MONTH -> date.withDayOfMonth(1);
    };
  }

  /**
   * The starts of one date, added up.
   *
   * @param starts how many
   * @param x of these that are so
   * @param lateMs late milliseconds of all
   */
  public record Day(LocalDate date, int starts, int x, long lateMs) {
    Day plus(Day other) {
      return new Day(date, starts + other.starts, x + other.x, lateMs + other.lateMs);
    }
  }

  private static List<Day> days(List<FirstCaseFact> facts, Predicate<FirstCaseFact> is) {
    return facts.stream()
        .filter(FirstCaseFact::hasStarted)
        .map(f -> new Day(f.morning().date(), 1, is.test(f) ? 1 : 0, f.lateMs()))
        .toList();
  }

  private Collection<Day> together(List<Day> days) {
    Map<LocalDate, Day> periods = new TreeMap<>();
    for (Day day : days) {
      LocalDate from = of(day.date());
      periods.merge(from, new Day(from, day.starts(), day.x(), day.lateMs()), Day::plus);
    }
    return periods.values();
  }

  /** Starts that are so, of all starts, by period. */
  public List<ShareChart.Counted> shares(List<FirstCaseFact> facts, Predicate<FirstCaseFact> is) {
    return shares(days(facts, is));
  }

  /** The same from days. */
  public List<ShareChart.Counted> shares(List<Day> days) {
    List<ShareChart.Counted> counted = new ArrayList<>();
    for (Day period : together(days)) {
      boolean few = Withheld.isWithheld(period.starts());
      String label = period.date().toString();
      counted.add(new ShareChart.Counted(label, few ? 0 : period.x(), few ? 0 : period.starts()));
    }
    return counted;
  }

  /** Mean minutes late per start, by period; periods with too few starts are left out. */
  public List<ValueChart.Valued> minutes(List<FirstCaseFact> facts) {
    return meanMinutes(days(facts, f -> false));
  }

  /** The same from days. */
  public List<ValueChart.Valued> meanMinutes(List<Day> days) {
    List<ValueChart.Valued> values = new ArrayList<>();
    for (Day period : together(days)) {
      if (!Withheld.isWithheld(period.starts())) {
        double minutes = (double) period.lateMs() / FirstCaseFact.MINUTE / period.starts();
        values.add(new ValueChart.Valued(period.date().toString(), minutes));
      }
    }
    return values;
  }

  /**
   * Where marked changes fall on a chart: the first point whose period begins on or after each.
   *
   * @param labels of the chart's points, as they come from here
   * @param changes dates
   */
  public List<Integer> changesAt(List<String> labels, List<LocalDate> changes) {
    List<Integer> at = new ArrayList<>();
    for (LocalDate change : changes) {
      for (int i = 0; i < labels.size(); i++) {
        if (!LocalDate.parse(labels.get(i)).isBefore(of(change))) {
          at.add(i);
          break;
        }
      }
    }
    return at;
  }
}
