package sunup.archive;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.duckdb.DuckDBConnection;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.review.CausesCompared;
import sunup.review.Comparison;
import sunup.review.ComparisonSums;
import sunup.review.LateIntervals;
import sunup.review.Measures;
import sunup.review.Split;
import sunup.review.charts.Lateness;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.Period;
import sunup.review.charts.RoomByWeekday;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;
import sunup.review.learn.Closing;
import sunup.review.trial.Baselines;
import sunup.review.trial.Said;
import sunup.review.trial.Trial;
import sunup.review.trial.TrialApart;
import sunup.review.trial.TrialSums;

/** Asks the tables. What is more than a sum is made of the sums by {@code sunup.review} itself. */
final class DuckFigures implements FactFigures {
  private static final double MINUTE = FirstCaseFact.MINUTE;

  /** What the plain ways of a trial learn from, by date. */
  private static final String DONE =
      "SELECT day, done_M, count(*) FILTER (came_M), count(*) FROM start $WHERE"
          + " AND chance_M IS NOT NULL AND came_M IS NOT NULL GROUP BY day, done_M ORDER BY day";

  /** Each forecast, in any order. */
  private static final String SAID =
      "SELECT suite, day, chance_M, came_M, done_M, acted_M, again_M, named_M"
          + " FROM start $WHERE AND chance_M IS NOT NULL AND came_M IS NOT NULL";

  private final DuckDBConnection connection;

  DuckFigures(DuckDBConnection connection) {
    this.connection = connection;
  }

  /** What is asked of it sees one state of the archive. */
  private Snapshot snapshot() {
    return new Snapshot(connection);
  }

  private void ask(String words, Where where, Snapshot.Reading reading) {
    try (Snapshot now = snapshot()) {
      now.ask(words, where, reading);
    }
  }

  private <T> List<T> list(String words, Where where, Snapshot.One<T> one) {
    try (Snapshot now = snapshot()) {
      return now.list(words, where, one);
    }
  }

  @Override
  public Choices choices(Filter filter) {
    Where where = new Where(filter);
    try (Snapshot now = snapshot()) {
      List<String> suites = names(now, "suite", where);
      List<String> rooms = names(now, "room", where);
      List<String> services = names(now, "service", where);
      List<String> techniques = names(now, "technique", where);
      return now.list(
              "SELECT count(*), min(day), max(day) FROM start $WHERE",
              where,
              row ->
                  new Choices(
                      row.getLong(1),
                      date(row, 2),
                      date(row, 3),
                      suites,
                      rooms,
                      services,
                      techniques))
          .get(0);
    }
  }

  private static List<String> names(Snapshot now, String column, Where where) {
    return now
        .list("SELECT DISTINCT " + column + " FROM start $WHERE", where, row -> row.getString(1))
        .stream()
        .sorted(Comparator.comparingInt(String::length).thenComparing(s -> s))
        .toList();
  }

  private static LocalDate date(ResultSet row, int at) throws SQLException {
    int day = row.getInt(at);
    return row.wasNull() ? null : LocalDate.ofEpochDay(day);
  }

  @Override
  public Measures measures(Filter filter) {
    Map<String, Measures> one = measured(filter, "''", key -> key);
    return one.getOrDefault("", new Measures(0, 0, 0, 0, 0, 0, null));
  }

  @Override
  public Map<String, Measures> measures(Filter filter, Split split) {
    return measured(filter, column(split), key -> name(split, key));
  }

  private Map<String, Measures> measured(Filter filter, String by, UnaryOperator<String> name) {
    Where where = new Where(filter);
    Map<String, MeasureSums> sums = new HashMap<>();
    Map<String, Measures> most = new HashMap<>();
    Map<String, double[]> quantiles = new HashMap<>();
    Map<String, LateIntervals> late;
    try (Snapshot now = snapshot()) {
      now.ask(
          MeasureSums.BY_MORNING.replace("$BY", by),
          where,
          row -> sums.put(row.getString(1), new MeasureSums(row)));
      now.ask(
          MeasureSums.OVER_STARTS.replace("$BY", by),
          where,
          row -> {
            String key = row.getString(1);
            most.put(key, sums.get(key).with(row));
            if (!Withheld.isWithheld(row.getInt(4))) {
              quantiles.put(key, new double[] {row.getDouble(8), row.getDouble(9)});
            }
          });
      late = LateSums.of(now, where, by, quantiles);
    }
    Map<String, Measures> measures = new TreeMap<>();
    most.forEach((key, of) -> measures.put(name.apply(key), of.with(late.get(key))));
    return measures;
  }

  private static String column(Split split) {
    return switch (split) {
      case ROOM -> "room";
      case SERVICE -> "service";
      case TECHNIQUE -> "technique";
      case WEEKDAY -> "weekday::VARCHAR";
      case MONTH -> "strftime(DATE '1970-01-01' + day, '%Y-%m')";
      case SUITE -> "suite";
    };
  }

  private static String name(Split split, String key) {
    return split == Split.WEEKDAY ? Split.weekday(DayOfWeek.of(Integer.parseInt(key))) : key;
  }

  @Override
  public List<Period.Day> days(Filter filter) {
    return days(filter, "false", "started IS NOT NULL");
  }

  @Override
  public List<Period.Day> days(Filter filter, Integer grace) {
    String is = grace == null ? "on_time" : "cut <= " + grace * FirstCaseFact.MINUTE;
    return days(filter, is, judged(grace));
  }

  /** Known whether on time. */
  private static String judged(Integer grace) {
    return grace == null
        ? "on_time IS NOT NULL"
        : "(cut <= $MS OR cut_from > $MS)"
            .replace("$MS", String.valueOf(grace * FirstCaseFact.MINUTE));
  }

  @Override
  public int unjudged(Filter filter, Integer grace) {
    // What cut_from is not known of is not known, and neither true nor false.
    String words =
        "SELECT count(started) - count(*) FILTER ("
            + judged(grace)
            + ") FROM start $WHERE AND started IS NOT NULL";
    return list(words, new Where(filter), row -> row.getInt(1)).get(0);
  }

  /** Of the starts that count, how many are so. */
  private List<Period.Day> days(Filter filter, String is, String counts) {
    return list(
        "SELECT day, count(*), count(*) FILTER ("
            + is
            + "), sum(late)::BIGINT FROM start $WHERE AND "
            + counts
            + " GROUP BY day ORDER BY day",
        new Where(filter),
        row ->
            new Period.Day(
                LocalDate.ofEpochDay(row.getInt(1)), row.getInt(2), row.getInt(3), row.getLong(4)));
  }

  @Override
  public MinutesByCause causes(Filter filter, MinutesByCause.Grouping grouping) {
    Map<String, MinutesByCause> one = causes(filter, grouping, "''", k -> k);
    return one.getOrDefault("", MinutesByCause.of(0, 0, 0, Map.of()));
  }

  @Override
  public Map<String, MinutesByCause> causes(
      Filter filter, MinutesByCause.Grouping grouping, Split split) {
    return causes(filter, grouping, column(split), k -> name(split, k));
  }

  private Map<String, MinutesByCause> causes(
      Filter filter, MinutesByCause.Grouping grouping, String by, UnaryOperator<String> name) {
    try (Snapshot now = snapshot()) {
      return CauseSums.of(now, filter, grouping, by, name);
    }
  }

  @Override
  public CausesCompared.Sums causeSums(Filter filter, MinutesByCause.Grouping grouping) {
    try (Snapshot now = snapshot()) {
      return CausePeriodSums.of(now, filter, grouping);
    }
  }

  @Override
  public Map<String, String> itemNames(SuiteId suite) {
    Map<String, String> names = new TreeMap<>();
    try (Connection c = connection.duplicate()) {
      LessonTable.items(c, suite.value()).forEach(item -> names.put(item.key(), item.desk()));
    } catch (SQLException e) {
      throw DuckFacts.trouble(e);
    }
    return names;
  }

  @Override
  public List<MinutesByCause.Beside> sideBySide(Filter filter) {
    List<MinutesByCause.Beside> all =
        list(
            "SELECT coalesce(cause, 'none') c, coalesce(reported, 'none') r, count(*) n,"
                + " count(*) FILTER (settled = 'agreed') FROM start $WHERE AND NOT on_time"
                + " GROUP BY c, r ORDER BY n DESC, c, r",
            new Where(filter),
            row ->
                new MinutesByCause.Beside(
                    row.getString(1), row.getString(2), row.getInt(3), row.getInt(4)));
    int late = all.stream().mapToInt(MinutesByCause.Beside::starts).sum();
    return Withheld.isWithheld(late) ? null : all;
  }

  @Override
  public RoomByWeekday roomByWeekday(Filter filter) {
    return RoomByWeekday.of(
        list(
            "SELECT room, weekday, count(*), count(on_time), count(*) FILTER (on_time),"
                + " sum(late)::BIGINT"
                + " FROM start $WHERE AND started IS NOT NULL GROUP BY room, weekday",
            new Where(filter),
            row ->
                new RoomByWeekday.Counted(
                    row.getString(1),
                    DayOfWeek.of(row.getInt(2)),
                    row.getInt(3),
                    row.getInt(4),
                    row.getInt(5),
                    row.getLong(6))));
  }

  @Override
  public Lateness lateness(Filter filter) {
    Where where = new Where(filter);
    Map<Integer, Integer> bins = new HashMap<>();
    String points = String.join(", ", Lateness.QUANTILES.stream().map(String::valueOf).toList());
    List<Double> quantiles = new ArrayList<>();
    try (Snapshot now = snapshot()) {
      now.ask(
          "SELECT bin, count(*) FROM start $WHERE AND bin IS NOT NULL GROUP BY bin",
          where,
          row -> bins.put(row.getInt(1), row.getInt(2)));
      now.ask(
          "SELECT unnest(quantile_cont(started - coalesce(agreed, booked), ["
              + points
              + "])) FROM start $WHERE AND started IS NOT NULL",
          where,
          row -> quantiles.add(row.getDouble(1) / MINUTE));
    }
    int starts = bins.values().stream().mapToInt(Integer::intValue).sum();
    return Lateness.of(starts, bins, quantiles);
  }

  @Override
  public Trial trial(Filter filter, int minutesBefore, long seed) {
    Where where = new Where(filter);
    TrialSums sums;
    try (Snapshot now = snapshot()) {
      Baselines.Learning learning = new Baselines.Learning();
      now.ask(
          DONE.replace("_M", "_" + minutesBefore),
          where,
          row ->
              learning.count(
                  LocalDate.ofEpochDay(row.getInt(1)),
                  row.getDouble(2),
                  row.getInt(3),
                  row.getInt(4)));
      sums = new TrialSums(learning.learned());
      String said = SAID.replace("_M", "_" + minutesBefore);
      now.ask(said, where, new Forecasts(sums));
    }
    return sums.trial(minutesBefore, seed);
  }

  @Override
  public TrialApart trial(Filter filter, int minutesBefore, Split split) {
    try (Snapshot now = snapshot()) {
      return TrialApart.of(
          minutesBefore,
          TrialApartSums.of(
              now, new Where(filter), column(split), minutesBefore, k -> name(split, k)));
    }
  }

  /** Rows of {@link #SAID}. */
  private static final class Forecasts implements Snapshot.Reading {
    private final TrialSums sums;
    private MorningId last;

    Forecasts(TrialSums sums) {
      this.sums = sums;
    }

    @Override
    public void row(ResultSet row) throws SQLException {
      last = morning(row, last);
      int first = row.getInt(8);
      Integer named = row.wasNull() ? null : (Integer) first;
      sums.add(
          new Said(
              last,
              row.getDouble(3),
              row.getBoolean(4),
              row.getDouble(5),
              row.getBoolean(6),
              row.getBoolean(7),
              named));
    }
  }

  private static MorningId morning(ResultSet row) throws SQLException {
    return new MorningId(new SuiteId(row.getString(1)), LocalDate.ofEpochDay(row.getInt(2)));
  }

  /** Rows of one morning stand together: they share its id. */
  private static MorningId morning(ResultSet row, MorningId last) throws SQLException {
    boolean same =
        last != null
            && last.date().toEpochDay() == row.getInt(2)
            && last.suite().value().equals(row.getString(1));
    return same ? last : morning(row);
  }

  @Override
  public List<Comparison.Start> starts(Filter filter) {
    return list(
        "SELECT suite, day, on_time, late FROM start $WHERE AND on_time IS NOT NULL"
            + " ORDER BY day, suite, id",
        new Where(filter),
        DuckFigures::start);
  }

  private static Comparison.Start start(ResultSet row) throws SQLException {
    return new Comparison.Start(morning(row), row.getBoolean(3), row.getLong(4) / MINUTE);
  }

  @Override
  public Map<String, List<Comparison.Start>> starts(Filter filter, Split split) {
    Map<String, List<Comparison.Start>> groups = new TreeMap<>();
    ask(
        "SELECT suite, day, on_time, late, "
            + column(split)
            + " FROM start $WHERE AND on_time IS NOT NULL ORDER BY day, suite, id",
        new Where(filter),
        row ->
            groups
                .computeIfAbsent(name(split, row.getString(5)), k -> new ArrayList<>())
                .add(start(row)));
    return groups;
  }

  @Override
  public int mornings(Filter filter) {
    return list(
            "SELECT count(*) FROM (SELECT DISTINCT suite, day FROM start $WHERE"
                + " AND on_time IS NOT NULL)",
            new Where(filter),
            row -> row.getInt(1))
        .get(0);
  }

  @Override
  public Map<String, ComparisonSums> sums(Filter filter, Split split) {
    return sums(filter, column(split), k -> name(split, k));
  }

  @Override
  public ComparisonSums sums(Filter one, Filter other) {
    try (Snapshot now = snapshot()) {
      return CompareSums.apart(now, new Where(one), new Where(other));
    }
  }

  private Map<String, ComparisonSums> sums(Filter filter, String key, UnaryOperator<String> name) {
    try (Snapshot now = snapshot()) {
      return CompareSums.of(now, new Where(filter), key, name);
    }
  }

  @Override
  public Closing closing(SuiteId suite) {
    try (Connection c = connection.duplicate()) {
      return LessonTable.closing(c, suite.value());
    } catch (SQLException e) {
      throw DuckFacts.trouble(e);
    }
  }

  @Override
  public List<LocalDate> closed(SuiteId suite) {
    return list(
        "SELECT day FROM lesson $WHERE ORDER BY day DESC",
        new Where(Filter.ALL.inSuite(suite.value())),
        row -> LocalDate.ofEpochDay(row.getInt(1)));
  }

  @Override
  public void rows(Filter filter, Consumer<Row> taker) {
    ask(FactRows.QUESTION, new Where(filter), row -> taker.accept(FactRows.row(row)));
  }
}
