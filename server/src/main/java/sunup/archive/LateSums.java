package sunup.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sunup.review.LateIntervals;
import sunup.review.facts.FirstCaseFact;
import sunup.review.stats.Clusters;
import sunup.review.stats.Interval;
import sunup.review.stats.MeanOfClusters;
import sunup.review.stats.OrderRanks;

/**
 * The sums over mornings, and the few sorted values, that the intervals of minutes late are made
 * of.
 */
final class LateSums {
  private static final double MINUTE = FirstCaseFact.MINUTE;

  /** $BY is what to group by, $ROWS are a group and how far its two quantiles reach. */
  private static final String OF_MORNINGS =
      """
      WITH c(k, c0, c1) AS (VALUES $ROWS),
      m AS (SELECT g, suite, day, count(*)::DOUBLE n, sum(late) / 60000e0 l,
        count(*) FILTER (NOT on_time)::DOUBLE ln,
        coalesce(sum(late) FILTER (NOT on_time), 0) / 60000e0 lx,
        count(*) FILTER (late <= c0)::DOUBLE x0, count(*) FILTER (late <= c1)::DOUBLE x1
        FROM (SELECT $BY g, suite, day, late, on_time FROM start $WHERE AND started IS NOT NULL)
        JOIN c ON k = g GROUP BY g, suite, day)
      SELECT g, count(*), sum(n), sum(n * n), sum(l), sum(l * l), sum(l * n),
        count(*) FILTER (ln > 0), sum(ln), sum(ln * ln), sum(lx), sum(lx * lx), sum(lx * ln),
        sum(x0), sum(x0 * x0), sum(x0 * n), sum(x1), sum(x1 * x1), sum(x1 * n)
      FROM m GROUP BY g
      """;

  /** $ROWS are a group and a rank. */
  private static final String RANKED =
      """
      WITH w(k, r) AS (VALUES $ROWS),
      s AS (SELECT $BY g, late, row_number() OVER (PARTITION BY $BY ORDER BY late) r
        FROM start $WHERE AND started IS NOT NULL)
      SELECT g, s.r, late FROM s JOIN w ON w.k = g AND w.r = s.r
      """;

  /** What one group has. */
  private record Sums(MeanOfClusters all, MeanOfClusters late, List<OrderRanks> ranks) {}

  private LateSums() {}

  /**
   * The intervals of each group.
   *
   * @param archive as it was when the quantiles were asked
   * @param by what to group by
   * @param quantiles late milliseconds at {@link LateIntervals#QUANTILES}, of each group with
   *     starts
   */
  static Map<String, LateIntervals> of(
      Snapshot archive, Where where, String by, Map<String, double[]> quantiles) {
    Map<String, LateIntervals> intervals = new HashMap<>();
    if (quantiles.isEmpty()) {
      return intervals;
    }
    Map<String, Sums> sums = new HashMap<>();
    List<Object> cuts = new ArrayList<>();
    quantiles.forEach(
        (group, at) ->
            cuts.addAll(List.of(group, LateIntervals.cutMs(at[0]), LateIntervals.cutMs(at[1]))));
    archive.ask(
        words(OF_MORNINGS, "(?::VARCHAR, ?::BIGINT, ?::BIGINT)", quantiles.size(), by),
        where.after(cuts),
        row -> sums.put(row.getString(1), sums(row)));
    Map<String, Map<Integer, Double>> values = values(archive, where, by, sums);
    sums.forEach(
        (group, of) -> {
          Map<Integer, Double> known = values.getOrDefault(group, Map.of());
          intervals.put(
              group,
              LateIntervals.of(
                  of.all(),
                  of.late(),
                  between(of.ranks().get(0), known),
                  between(of.ranks().get(1), known)));
        });
    return intervals;
  }

  private static Interval between(OrderRanks ranks, Map<Integer, Double> values) {
    return ranks == null
        ? null
        : new Interval(values.get(ranks.lower()), values.get(ranks.upper()));
  }

  /** With so many rows of parameters. */
  private static String words(String question, String row, int rows, String by) {
    return question
        .replace("$ROWS", String.join(", ", Collections.nCopies(rows, row)))
        .replace("$BY", by);
  }

  private static Sums sums(ResultSet r) throws SQLException {
    int mornings = r.getInt(2);
    double n = r.getDouble(3);
    double nn = r.getDouble(4);
    List<OrderRanks> ranks = new ArrayList<>();
    for (int i = 0; i < LateIntervals.QUANTILES.size(); i++) {
      int at = 14 + 3 * i;
      Clusters below =
          Clusters.ofSums(
              r.getDouble(at), n, mornings, r.getDouble(at + 1), r.getDouble(at + 2), nn);
      ranks.add(LateIntervals.ranks(LateIntervals.QUANTILES.get(i), below));
    }
    return new Sums(
        new MeanOfClusters(mornings, r.getDouble(5), n, r.getDouble(6), r.getDouble(7), nn),
        new MeanOfClusters(
            r.getInt(8),
            r.getDouble(11),
            r.getDouble(9),
            r.getDouble(12),
            r.getDouble(13),
            r.getDouble(10)),
        ranks);
  }

  /** Late minutes by rank, of each group. */
  private static Map<String, Map<Integer, Double>> values(
      Snapshot archive, Where where, String by, Map<String, Sums> sums) {
    List<Object> ranks = new ArrayList<>();
    sums.forEach(
        (group, of) ->
            of.ranks().stream()
                .filter(r -> r != null)
                .flatMap(r -> Stream.of(r.lower(), r.upper()))
                .distinct()
                .forEach(r -> ranks.addAll(List.of(group, r))));
    Map<String, Map<Integer, Double>> values = new HashMap<>();
    if (!ranks.isEmpty()) {
      archive.ask(
          words(RANKED, "(?::VARCHAR, ?::BIGINT)", ranks.size() / 2, by),
          where.after(ranks),
          row ->
              values
                  .computeIfAbsent(row.getString(1), k -> new HashMap<>())
                  .put(row.getInt(2), row.getLong(3) / MINUTE));
    }
    return values;
  }
}
