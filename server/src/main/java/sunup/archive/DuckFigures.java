package sunup.archive;

import java.sql.Connection;
import java.sql.PreparedStatement;
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
import org.duckdb.DuckDBConnection;
import sunup.board.MorningId;
import sunup.board.SuiteId;
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

  /** What is read of one row. */
  interface Reading {
    void row(ResultSet row) throws SQLException;
  }

  /** Asks on a connection of its own, so that questions of several threads go side by side. */
  private void ask(String words, Where where, Reading reading) {
    try (Connection c = connection.duplicate();
        PreparedStatement s = c.prepareStatement(words.replace("$WHERE", where.toString()))) {
      where.fill(s);
      try (ResultSet row = s.executeQuery()) {
        while (row.next()) {
          reading.row(row);
        }
      }
    } catch (SQLException e) {
      throw DuckFacts.trouble(e);
    }
  }

  private <T> List<T> list(String words, Where where, One<T> one) {
    List<T> all = new ArrayList<>();
    ask(words, where, row -> all.add(one.of(row)));
    return all;
  }

  /** One row as a value. */
  private interface One<T> {
    T of(ResultSet row) throws SQLException;
  }

  @Override
  public Choices choices(Filter filter) {
    Where where = new Where(filter);
    List<Choices> counted =
        list(
            "SELECT count(*), min(day), max(day) FROM start $WHERE",
            where,
            row ->
                new Choices(
                    row.getLong(1),
                    date(row, 2),
                    date(row, 3),
                    names("suite", where),
                    names("room", where),
                    names("service", where),
                    names("technique", where)));
    return counted.get(0);
  }

  private List<String> names(String column, Where where) {
    return list("SELECT DISTINCT " + column + " FROM start $WHERE", where, row -> row.getString(1))
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

  private Map<String, Measures> measured(
      Filter filter, String by, java.util.function.UnaryOperator<String> name) {
    Where where = new Where(filter);
    Map<String, MeasureSums> sums = new HashMap<>();
    ask(
        MeasureSums.BY_MORNING.replace("$BY", by),
        where,
        row -> sums.put(row.getString(1), new MeasureSums(row)));
    Map<String, Measures> most = new HashMap<>();
    Map<String, double[]> quantiles = new HashMap<>();
    ask(
        MeasureSums.OVER_STARTS.replace("$BY", by),
        where,
        row -> {
          String key = row.getString(1);
          most.put(key, sums.get(key).with(row));
          if (!Withheld.isWithheld(row.getInt(4))) {
            quantiles.put(key, new double[] {row.getDouble(8), row.getDouble(9)});
          }
        });
    Map<String, LateIntervals> late = LateSums.of(this::ask, where, by, quantiles);
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
    if (grace == null) {
      return days(filter, "on_time", "on_time IS NOT NULL");
    }
    long ms = grace * FirstCaseFact.MINUTE;
    return days(filter, "cut <= " + ms, "(cut <= " + ms + " OR cut_from > " + ms + ")");
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
    Map<String, MinutesByCause> one = CauseSums.of(this::ask, filter, grouping, "''", k -> k);
    return one.getOrDefault("", MinutesByCause.of(0, 0, 0, Map.of()));
  }

  @Override
  public Map<String, MinutesByCause> causes(
      Filter filter, MinutesByCause.Grouping grouping, Split split) {
    return CauseSums.of(this::ask, filter, grouping, column(split), k -> name(split, k));
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
    ask(
        "SELECT bin, count(*) FROM start $WHERE AND bin IS NOT NULL GROUP BY bin",
        where,
        row -> bins.put(row.getInt(1), row.getInt(2)));
    String points = String.join(", ", Lateness.QUANTILES.stream().map(String::valueOf).toList());
    List<Double> quantiles = new ArrayList<>();
    ask(
        "SELECT unnest(quantile_cont(started - coalesce(agreed, booked), ["
            + points
            + "])) FROM start $WHERE AND started IS NOT NULL",
        where,
        row -> quantiles.add(row.getDouble(1) / MINUTE));
    int starts = bins.values().stream().mapToInt(Integer::intValue).sum();
    return Lateness.of(starts, bins, quantiles);
  }

  @Override
  public Trial trial(Filter filter, int minutesBefore, long seed) {
    Where where = new Where(filter);
    Baselines.Learning learning = new Baselines.Learning();
    ask(
        DONE.replace("_M", "_" + minutesBefore),
        where,
        row ->
            learning.count(
                LocalDate.ofEpochDay(row.getInt(1)),
                row.getDouble(2),
                row.getInt(3),
                row.getInt(4)));
    TrialSums sums = new TrialSums(learning.learned());
    MorningId[] last = new MorningId[1];
    ask(
        SAID.replace("_M", "_" + minutesBefore),
        where,
        row -> {
          last[0] = morning(row, last[0]);
          int first = row.getInt(8);
          Integer named = row.wasNull() ? null : (Integer) first;
          sums.add(
              new Said(
                  last[0],
                  row.getDouble(3),
                  row.getBoolean(4),
                  row.getDouble(5),
                  row.getBoolean(6),
                  row.getBoolean(7),
                  named));
        });
    return sums.trial(minutesBefore, seed);
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
    return CompareSums.of(this::ask, new Where(filter), column(split), k -> name(split, k));
  }

  @Override
  public Map<String, ComparisonSums> sums(Filter filter, LocalDate at) {
    String key = "CASE WHEN day < " + at.toEpochDay() + " THEN 'before' ELSE 'from' END";
    return CompareSums.of(this::ask, new Where(filter), key, k -> k);
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
