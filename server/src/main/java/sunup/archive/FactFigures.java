package sunup.archive;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import sunup.board.SuiteId;
import sunup.codec.Maybe;
import sunup.review.CausesCompared;
import sunup.review.Comparison;
import sunup.review.ComparisonSums;
import sunup.review.Measures;
import sunup.review.Split;
import sunup.review.charts.Lateness;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.Period;
import sunup.review.charts.RoomByWeekday;
import sunup.review.facts.FirstCaseFact;
import sunup.review.learn.Closing;
import sunup.review.trial.Trial;
import sunup.review.trial.TrialApart;

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
   * @param startEvent the step that counts as the start
   * @param startedAt null if it has no start
   * @param inferred true if nobody told the start: it had started by then
   * @param lateMinutes null if it has no start
   * @param onTime null if it has no start, or if nobody knows whether it was
   * @param times when who and what came, and the steps; roles and items, no person
   * @param cause the section of the as-run cause with most late minutes, or null
   * @param reported word of the reported reason, or null
   * @param settled how that stands, or null
   * @param instead what the other side named where it disputed, or null
   * @param said forecasts of the moments that there is one of
   */
  record Row(
      String suite,
      LocalDate date,
      String room,
      @Maybe String service,
      @Maybe String technique,
      String startEvent,
      long bookedAt,
      @Maybe Long agreedAt,
      @Maybe Long startedAt,
      boolean inferred,
      boolean cancelled,
      int graceMinutes,
      @Maybe Double lateMinutes,
      @Maybe Boolean onTime,
      FirstCaseFact.Times times,
      @Maybe String cause,
      @Maybe String reported,
      @Maybe String settled,
      @Maybe String instead,
      List<SaidThen> said,
      FactStore.Source source) {}

  /**
   * What the board said at one of its moments.
   *
   * @param minutesBefore the target
   * @param onTime chance of a start on time
   * @param start10 10 % point of the start; times are epoch milliseconds
   * @param start50 median
   * @param start90 90 % point
   * @param holdup the largest that it named, or null: kind, item, thing and room
   * @param kept true if the board said so then; false if its model was asked again afterwards
   * @param deskActed true if the desk acted on the room after it and before the start
   * @param came whether the start was on time by the target of then; null if that is not known
   */
  record SaidThen(
      int minutesBefore,
      double onTime,
      long start10,
      long start50,
      long start90,
      @Maybe String holdup,
      boolean kept,
      boolean deskActed,
      @Maybe Boolean came) {}

  Choices choices(Filter filter);

  Measures measures(Filter filter);

  /** By group; groups of few starts are there with their figures withheld. */
  Map<String, Measures> measures(Filter filter, Split split);

  /** The starts of each date, with their late minutes. */
  List<Period.Day> days(Filter filter);

  /**
   * The starts of each date of which it is known whether they were on time.
   *
   * @param grace on time under so many minutes of grace, or null for each morning's own
   */
  List<Period.Day> days(Filter filter, Integer grace);

  /** Starts of which it is not known whether they were on time: those that {@link #days} lacks. */
  int unjudged(Filter filter, Integer grace);

  MinutesByCause causes(Filter filter, MinutesByCause.Grouping grouping);

  /** The same by group. */
  Map<String, MinutesByCause> causes(Filter filter, MinutesByCause.Grouping grouping, Split split);

  /** Sums over mornings by which the causes of two periods are compared. */
  CausesCompared.Sums causeSums(Filter filter, MinutesByCause.Grouping grouping);

  /** What the sheets of a suite's last closed morning call their items, by key. */
  Map<String, String> itemNames(SuiteId suite);

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

  /** The same in each group by itself. */
  TrialApart trial(Filter filter, int minutesBefore, Split split);

  /** Starts as comparisons need them. */
  List<Comparison.Start> starts(Filter filter);

  /** The same by group. */
  Map<String, List<Comparison.Start>> starts(Filter filter, Split split);

  /** Mornings with a start. */
  int mornings(Filter filter);

  /** Sums by which each group is compared with all others together. */
  Map<String, ComparisonSums> sums(Filter filter, Split split);

  /** Sums by which two sets of starts that share no morning are compared. */
  ComparisonSums sums(Filter one, Filter other);

  /** What the last closed morning of a suite taught. */
  Closing closing(SuiteId suite);

  /** Dates of the closed mornings of a suite, the newest first. */
  List<LocalDate> closed(SuiteId suite);

  /** All rows by date, suite and room, one after the other. */
  void rows(Filter filter, Consumer<Row> taker);
}
