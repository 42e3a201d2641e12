package sunup.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sunup.archive.FactFigures.Row;
import sunup.archive.FactFigures.SaidThen;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.Cause;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Came;
import sunup.review.facts.FirstCaseFact.Times;

/** Whole rows, as they are exported. Only these read all columns. */
final class FactRows {
  /** All rows that pass. */
  static final String QUESTION = question();

  private static final String AT = "@";
  private static final String NEXT = ";";

  private FactRows() {}

  private static String question() {
    StringBuilder words =
        new StringBuilder(
            "SELECT suite, day, room, service, technique, booked, agreed, started, cancelled,"
                + " grace, late, on_time, cause, reported, settled, source, inferred, instead,"
                + " event, arrivals, ready, sent_for, wheels_in, induction, release, incision");
    for (int before : BoardSaid.MOMENTS) {
      String columns = ", chance_M, low_M, mid_M, high_M, holdup_M, again_M, acted_M, came_M";
      words.append(columns.replace("M", String.valueOf(before)));
    }
    return words + " FROM start $WHERE ORDER BY day, suite, room, id";
  }

  /** A cause in one cell: kind, item, what it waits for and where that is. */
  static String word(Cause cause) {
    return Stream.of(cause.kind(), cause.item(), cause.thing(), cause.where())
        .filter(Objects::nonNull)
        .collect(Collectors.joining(" "));
  }

  /** Who or what came when, in one cell; null of nobody. */
  static String word(List<Came> arrivals) {
    return arrivals.isEmpty()
        ? null
        : arrivals.stream().map(c -> c.what() + AT + c.at()).collect(Collectors.joining(NEXT));
  }

  private static List<Came> arrivals(String word) {
    List<Came> came = new ArrayList<>();
    for (String one : word == null ? new String[0] : word.split(NEXT)) {
      int at = one.lastIndexOf(AT);
      came.add(new Came(one.substring(0, at), Long.parseLong(one.substring(at + 1))));
    }
    return came;
  }

  static Row row(ResultSet row) throws SQLException {
    return new Row(
        row.getString(1),
        LocalDate.ofEpochDay(row.getInt(2)),
        row.getString(3),
        known(row.getString(4)),
        known(row.getString(5)),
        row.getString(19),
        row.getLong(6),
        (Long) row.getObject(7),
        (Long) row.getObject(8),
        row.getBoolean(17),
        row.getBoolean(9),
        row.getInt(10),
        row.getObject(11) == null
            ? null
            : (Double) ((double) row.getLong(11) / FirstCaseFact.MINUTE),
        (Boolean) row.getObject(12),
        new Times(
            arrivals(row.getString(20)),
            (Long) row.getObject(21),
            (Long) row.getObject(22),
            (Long) row.getObject(23),
            (Long) row.getObject(24),
            (Long) row.getObject(25),
            (Long) row.getObject(26)),
        row.getString(13),
        row.getString(14),
        row.getString(15),
        row.getString(18),
        said(row),
        FactStore.Source.valueOf(row.getString(16).toUpperCase(Locale.ROOT)));
  }

  /** Moments of which there is a forecast. */
  private static List<SaidThen> said(ResultSet row) throws SQLException {
    List<SaidThen> said = new ArrayList<>();
    int at = 27;
    for (int before : BoardSaid.MOMENTS) {
      if (row.getObject(at) != null) {
        said.add(
            new SaidThen(
                before,
                row.getDouble(at),
                row.getLong(at + 1),
                row.getLong(at + 2),
                row.getLong(at + 3),
                row.getString(at + 4),
                !row.getBoolean(at + 5),
                row.getBoolean(at + 6),
                (Boolean) row.getObject(at + 7)));
      }
      at += 8;
    }
    return said;
  }

  private static String known(String name) {
    return name.equals("none") ? null : name;
  }
}
