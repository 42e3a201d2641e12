package sunup.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;
import sunup.review.CausesCompared.Minutes;
import sunup.review.CausesCompared.Sums;
import sunup.review.charts.MinutesByCause.Grouping;

/** The sums over mornings that causes of two periods are compared by. */
final class CausePeriodSums {
  /** Of each morning its starts and minutes late, and of each cause of it the minutes. */
  private static final String OF_MORNINGS =
      """
      WITH s AS (SELECT id, suite, day, late, reported FROM start $WHERE AND started IS NOT NULL),
      m AS (SELECT suite, day, count(*)::DOUBLE n, sum(late) / 60000e0 l FROM s
        GROUP BY suite, day),
      x AS ($CAUSES)
      """;

  private static final String COMPUTED =
      "SELECT suite, day, $LABEL c, sum(ms) / 60000e0 x FROM piece JOIN s USING (id)"
          + " GROUP BY suite, day, c";

  private static final String REPORTED =
      "SELECT suite, day, reported c, sum(late) / 60000e0 x FROM s"
          + " WHERE late > 0 AND reported IS NOT NULL GROUP BY suite, day, c";

  private static final String BY_CAUSE =
      " SELECT c, count(*) FILTER (x > $ANY), sum(x), sum(x * x), sum(x * n)"
          + " FROM x JOIN m USING (suite, day) GROUP BY c";

  private static final String ALL =
      """
      , e AS (SELECT suite, day, sum(x) e FROM x GROUP BY suite, day),
      b AS (SELECT n, l, l - coalesce(e, 0) u FROM m LEFT JOIN e USING (suite, day))
      SELECT count(*), sum(n), sum(n * n),
        count(*) FILTER (l > $ANY), sum(l), sum(l * l), sum(l * n),
        count(*) FILTER (u > $ANY), sum(u), sum(u * u), sum(u * n) FROM b
      """;

  private CausePeriodSums() {}

  static Sums of(Snapshot archive, Filter filter, Grouping grouping) {
    Where where = new Where(filter);
    String mornings = OF_MORNINGS.replace("$CAUSES", causes(grouping));
    Map<String, Minutes> causes = new TreeMap<>();
    archive.ask(
        any(mornings + BY_CAUSE), where, row -> causes.put(row.getString(1), minutes(row, 2)));
    Sums[] sums = new Sums[1];
    archive.ask(
        any(mornings + ALL),
        where,
        row ->
            sums[0] =
                new Sums(
                    row.getInt(1),
                    row.getDouble(2),
                    row.getDouble(3),
                    minutes(row, 4),
                    minutes(row, 8),
                    causes));
    return sums[0];
  }

  private static String any(String words) {
    return words.replace("$ANY", String.valueOf(Minutes.ANY));
  }

  private static Minutes minutes(ResultSet row, int at) throws SQLException {
    return new Minutes(
        row.getInt(at), row.getDouble(at + 1), row.getDouble(at + 2), row.getDouble(at + 3));
  }

  private static String causes(Grouping grouping) {
    return switch (grouping) {
      case KIND -> COMPUTED.replace("$LABEL", "kind");
      case SECTION -> COMPUTED.replace("$LABEL", "section");
      case ITEM -> COMPUTED.replace("$LABEL", "item");
      case REPORTED -> REPORTED;
    };
  }
}
