package sunup.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import sunup.review.ComparisonSums;
import sunup.review.ComparisonSums.Moments;
import sunup.review.ComparisonSums.Within;

/** The sums that comparisons of many mornings are made of. */
final class CompareSums {
  /** Of one group on one morning: starts, on time, late minutes and their squares. */
  private static final String OF_MORNINGS =
      """
      g AS (SELECT suite, day, $KEY k, count(*)::DOUBLE n, count(*) FILTER (on_time)::DOUBLE o,
        sum(late / 60000e0) l, sum((late / 60000e0) * (late / 60000e0)) q
        FROM start $WHERE AND on_time IS NOT NULL GROUP BY suite, day, k),
      t AS (SELECT suite, day, sum(n) n, sum(o) o, sum(l) l, sum(q) q FROM g GROUP BY suite, day)
      """;

  private static final String MOMENTS =
      "count(*), sum($n), sum($o), sum($o * $o), sum($o * $n), sum($n * $n),"
          + " sum($l), sum($l * $l), sum($l * $n)";

  /** The same of all others on that morning, with a letter r before. */
  private static final String GROUPS =
      "WITH "
          + OF_MORNINGS
          + """
            , r AS (SELECT k, g.n n, g.o o, g.l l, t.n - g.n rn, t.o - g.o ro, t.l - g.l rl,
              g.o / g.n - ro / rn dox, g.l / g.n - rl / rn dlx, (1 / g.n + 1 / rn) / (t.n - 1) w,
              t.o - t.o * t.o / t.n vo, t.q - t.l * t.l / t.n vl
              FROM g JOIN t ON g.suite = t.suite AND g.day = t.day)
            SELECT k, $MOMENTS,
              count(*) FILTER (rn > 0), coalesce(sum(n) FILTER (rn > 0), 0),
              coalesce(sum(rn), 0),
              coalesce(sum(dox) FILTER (rn > 0), 0), coalesce(sum(dox * dox) FILTER (rn > 0), 0),
              coalesce(sum(vo * w) FILTER (rn > 0), 0),
              coalesce(sum(dlx) FILTER (rn > 0), 0), coalesce(sum(dlx * dlx) FILTER (rn > 0), 0),
              coalesce(sum(vl * w) FILTER (rn > 0), 0)
            FROM r GROUP BY k
            """
              .replace("$MOMENTS", moments());

  private static final String ALL = "WITH " + OF_MORNINGS + " SELECT '', " + moments() + " FROM t";

  private CompareSums() {}

  /** Both kinds of moments of one row, from its second column on. */
  private record Both(Moments onTime, Moments minutes) {
    static Both of(ResultSet r) throws SQLException {
      int mornings = r.getInt(2);
      double n = r.getDouble(3);
      double nn = r.getDouble(7);
      return new Both(
          new Moments(mornings, r.getDouble(4), n, r.getDouble(5), r.getDouble(6), nn),
          new Moments(mornings, r.getDouble(8), n, r.getDouble(9), r.getDouble(10), nn));
    }
  }

  private static String moments() {
    return MOMENTS.replace("$", "");
  }

  static Map<String, ComparisonSums> of(
      Snapshot archive, Where where, String key, UnaryOperator<String> name) {
    Both all = all(archive, where, key);
    Map<String, ComparisonSums> groups = new TreeMap<>();
    archive.ask(
        GROUPS.replace("$KEY", key),
        where,
        row -> groups.put(name.apply(row.getString(1)), group(row, all)));
    return groups;
  }

  /** Of two sets of starts that share no morning. */
  static ComparisonSums apart(Snapshot archive, Where one, Where other) {
    Both own = all(archive, one, "''");
    Both others = all(archive, other, "''");
    return ComparisonSums.apart(own.onTime(), others.onTime(), own.minutes(), others.minutes());
  }

  private static Both all(Snapshot archive, Where where, String key) {
    Both[] all = new Both[1];
    archive.ask(ALL.replace("$KEY", key), where, row -> all[0] = Both.of(row));
    return all[0];
  }

  private static ComparisonSums group(ResultSet row, Both all) throws SQLException {
    Both own = Both.of(row);
    return new ComparisonSums(
        row.getInt(11),
        row.getLong(12),
        row.getLong(13),
        new Within(row.getDouble(14), row.getDouble(15), row.getDouble(16)),
        new Within(row.getDouble(17), row.getDouble(18), row.getDouble(19)),
        own.onTime(),
        all.onTime().less(own.onTime()),
        own.minutes(),
        all.minutes().less(own.minutes()));
  }
}
