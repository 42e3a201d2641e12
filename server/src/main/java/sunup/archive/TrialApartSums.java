package sunup.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import sunup.review.stats.MeanOfClusters;
import sunup.review.trial.Baselines;
import sunup.review.trial.TrialApart.Sums;

/** The sums over mornings by which the board is judged in each group by itself. */
final class TrialApartSums {
  /**
   * $BY is what to group by, M a moment. The average of a date knows all forecasts of earlier
   * dates, those that were made again too; what is judged are the kept ones.
   */
  private static final String OF_GROUPS =
      """
      WITH f AS (SELECT $BY k, suite, day, chance_M c, came_M::INTEGER y, again_M a
        FROM start $WHERE AND chance_M IS NOT NULL AND came_M IS NOT NULL),
      d AS (SELECT k, day, count(*) n, sum(y) y FROM f GROUP BY k, day),
      b AS (SELECT k, day, sum(n) OVER w n, sum(y) OVER w y, count(*) OVER w dates FROM d
        WINDOW w AS (PARTITION BY k ORDER BY day
          ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING)),
      v AS (SELECT k, day, y / n::DOUBLE average FROM b WHERE n >= $STARTS AND dates >= $DATES),
      m AS (SELECT f.k, suite, f.day, count(*)::DOUBLE n, sum(y)::DOUBLE y, sum(c - y) x,
        sum(c * (1 - c)) chance, sum(y) FILTER (average IS NOT NULL) beside_y,
        count(average)::DOUBLE beside,
        sum((c - y) * (c - y)) FILTER (average IS NOT NULL) board,
        sum((average - y) * (average - y)) plain
        FROM f LEFT JOIN v ON f.k = v.k AND f.day = v.day WHERE NOT a GROUP BY f.k, suite, f.day)
      SELECT k, count(*), sum(x), sum(n), sum(x * x), sum(x * n), sum(n * n), sum(y),
        count(board), sum(board), sum(plain), sum(board * board), sum(board * plain),
        sum(plain * plain), sum(beside), sum(chance), coalesce(sum(beside_y), 0)
      FROM m GROUP BY k
      """;

  private TrialApartSums() {}

  static Map<String, Sums> of(
      Snapshot archive, Where where, String by, int minutesBefore, UnaryOperator<String> name) {
    Map<String, Sums> sums = new TreeMap<>();
    archive.ask(
        OF_GROUPS
            .replace("_M", "_" + minutesBefore)
            .replace("$BY", by)
            .replace("$STARTS", String.valueOf(Baselines.LEAST_STARTS))
            .replace("$DATES", String.valueOf(Baselines.LEAST_MORNINGS)),
        where,
        row -> sums.put(name.apply(row.getString(1)), sums(row)));
    return sums;
  }

  private static Sums sums(ResultSet r) throws SQLException {
    return new Sums(
        mean(r, 2), r.getDouble(8), r.getDouble(16), mean(r, 9), r.getInt(15), r.getInt(17));
  }

  /** Clusters, x, n, and the sums of their squares and product, from a column on. */
  private static MeanOfClusters mean(ResultSet r, int at) throws SQLException {
    return new MeanOfClusters(
        r.getInt(at),
        r.getDouble(at + 1),
        r.getDouble(at + 2),
        r.getDouble(at + 3),
        r.getDouble(at + 4),
        r.getDouble(at + 5));
  }
}
