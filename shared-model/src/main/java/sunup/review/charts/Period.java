package sunup.review.charts;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
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

  private Map<LocalDate, List<FirstCaseFact>> apart(List<FirstCaseFact> facts) {
    Map<LocalDate, List<FirstCaseFact>> periods = new TreeMap<>();
    for (FirstCaseFact fact : facts) {
      if (fact.hasStarted()) {
        periods.computeIfAbsent(of(fact.morning().date()), k -> new ArrayList<>()).add(fact);
      }
    }
    return periods;
  }

  /** Starts that are so, of all starts, by period. */
  public List<ShareChart.Counted> shares(List<FirstCaseFact> facts, Predicate<FirstCaseFact> is) {
    List<ShareChart.Counted> counted = new ArrayList<>();
    apart(facts)
        .forEach(
            (from, group) -> {
              boolean few = Withheld.isWithheld(group.size());
              int x = few ? 0 : (int) group.stream().filter(is).count();
              counted.add(new ShareChart.Counted(from.toString(), x, few ? 0 : group.size()));
            });
    return counted;
  }

  /** Mean minutes late per start, by period; periods with too few starts are left out. */
  public List<ValueChart.Valued> minutes(List<FirstCaseFact> facts) {
    List<ValueChart.Valued> values = new ArrayList<>();
    apart(facts)
        .forEach(
            (from, group) -> {
              if (!Withheld.isWithheld(group.size())) {
                double sum = group.stream().mapToDouble(FirstCaseFact::lateMinutes).sum();
                values.add(new ValueChart.Valued(from.toString(), sum / group.size()));
              }
            });
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
