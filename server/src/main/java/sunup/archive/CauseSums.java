package sunup.archive;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.MinutesByCause.Grouping;
import sunup.review.charts.MinutesByCause.Sum;

/** Late minutes by cause, of all that pass a filter or of each group of them. */
final class CauseSums {
  private static final String TOTALS =
      "SELECT $BY g, count(started), coalesce(sum(late), 0)::BIGINT,"
          + " coalesce(sum(weak) FILTER (started IS NOT NULL), 0)::BIGINT"
          + " FROM start $WHERE GROUP BY g";

  private static final String REPORTED =
      "SELECT $BY g, reported, sum(late)::BIGINT, sum(weak)::BIGINT, count(*) FROM start $WHERE"
          + " AND late > 0 AND reported IS NOT NULL GROUP BY g, reported";

  private static final String COMPUTED =
      "SELECT g, $LABEL, sum(ms)::BIGINT, sum(p.weak)::BIGINT, $STARTS FROM piece p"
          + " JOIN (SELECT id, $BY g FROM start $WHERE AND started IS NOT NULL) USING (id)"
          + " GROUP BY g, $LABEL";

  private CauseSums() {}

  /**
   * @param by what to group by
   * @param name of a group
   */
  static Map<String, MinutesByCause> of(
      Snapshot archive, Filter filter, Grouping grouping, String by, UnaryOperator<String> name) {
    Where where = new Where(filter);
    Map<String, Map<String, Sum>> sums = new LinkedHashMap<>();
    archive.ask(
        words(grouping).replace("$BY", by),
        where,
        row ->
            sums.computeIfAbsent(row.getString(1), k -> new LinkedHashMap<>())
                .put(row.getString(2), new Sum(row.getLong(3), row.getLong(4), row.getInt(5))));
    Map<String, MinutesByCause> causes = new TreeMap<>();
    archive.ask(
        TOTALS.replace("$BY", by),
        where,
        row ->
            causes.put(
                name.apply(row.getString(1)),
                MinutesByCause.of(
                    row.getInt(2),
                    row.getLong(3),
                    row.getLong(4),
                    sums.getOrDefault(row.getString(1), Map.of()))));
    return causes;
  }

  private static String words(Grouping grouping) {
    return switch (grouping) {
      case KIND -> computed("kind", "count(*) FILTER (new_kind)");
      case SECTION -> computed("section", "count(*) FILTER (new_section)");
      case ITEM -> computed("item", "count(*)");
      case REPORTED -> REPORTED;
    };
  }

  private static String computed(String label, String starts) {
    return COMPUTED.replace("$LABEL", label).replace("$STARTS", starts);
  }
}
