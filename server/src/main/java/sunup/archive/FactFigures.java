package sunup.archive;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import sunup.board.SuiteId;
import sunup.codec.Maybe;
import sunup.review.Comparison;
import sunup.review.ComparisonSums;
import sunup.review.Measures;
import sunup.review.Split;
import sunup.review.charts.Lateness;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.Period;
import sunup.review.charts.RoomByWeekday;
import sunup.review.learn.Closing;
import sunup.review.trial.Trial;

/**
 * Figures of the facts that pass a filter: the same that {@code sunup.review} makes of the facts
 * themselves. May be called from any thread.
 */
public interface FactFigures {
  /** What there is to choose from in one suite, or in all. */
  record Choices(
      long cases,
      @Maybe LocalDate first,
      @Maybe LocalDate last,
      List<String> suites,
      List<String> rooms,
      List<String> services,
      List<String> techniques) {}

  /**
   * One row as exported.
   *
   * @param startedAt null if it has no start
   * @param inferred true if nobody told the start: it had started by then
   * @param lateMinutes null if it has no start
   * @param cause the section of the as-run cause with most late minutes, or null
   * @param reported word of the reported reason, or null
   * @param settled how that stands, or null
   */
  record Row(
      String suite,
      LocalDate date,
      String room,
      @Maybe String service,
      @Maybe String technique,
      long bookedAt,
      @Maybe Long agreedAt,
      @Maybe Long startedAt,
      boolean inferred,
      boolean cancelled,
      int graceMinutes,
      @Maybe Double lateMinutes,
      @Maybe Boolean onTime,
      @Maybe String cause,
      @Maybe String reported,
      @Maybe String settled,
      FactStore.Source source) {}

  Choices choices(Filter filter);

  Measures measures(Filter filter);

  /** By group; groups of few starts are there with their figures withheld. */
  Map<String, Measures> measures(Filter filter, Split split);

  /**
   * The starts of each date.
   *
   * @param grace on time under so many minutes of grace, or null for each morning's own
   */
  List<Period.Day> days(Filter filter, Integer grace);

  MinutesByCause causes(Filter filter, MinutesByCause.Grouping grouping);

  /** Null if there are too few late starts: withheld. */
  List<MinutesByCause.Beside> sideBySide(Filter filter);

  RoomByWeekday roomByWeekday(Filter filter);

  Lateness lateness(Filter filter);

  /**
   * What the board said at one of the moments, on trial.
   *
   * @param seed of the drawing of mornings
   */
  Trial trial(Filter filter, int minutesBefore, long seed);

  /** Starts as comparisons need them. */
  List<Comparison.Start> starts(Filter filter);

  /** The same by group. */
  Map<String, List<Comparison.Start>> starts(Filter filter, Split split);

  /** Mornings with a start. */
  int mornings(Filter filter);

  /** Sums by which each group is compared with all others together. */
  Map<String, ComparisonSums> sums(Filter filter, Split split);

  /** The same of the starts {@code from} a date on and {@code before} it. */
  Map<String, ComparisonSums> sums(Filter filter, LocalDate at);

  /** What the last closed morning of a suite taught. */
  Closing closing(SuiteId suite);

  /** Dates of the closed mornings of a suite, the newest first. */
  List<LocalDate> closed(SuiteId suite);

  /** All rows by date, suite and room, one after the other. */
  void rows(Filter filter, Consumer<Row> taker);
}
