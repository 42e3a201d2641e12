package sunup.archive;

import static sunup.review.Measures.ofEnough;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import sunup.review.Measures;
import sunup.review.Share;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;
import sunup.review.stats.Clusters;

/**
 * The sums that {@link Measures} are made of. Shares are counted by morning first, as the starts of
 * one morning go together.
 */
final class MeasureSums {
  private static final double MINUTE = FirstCaseFact.MINUTE;

  private static final String SUMS =
      "sum($X)::DOUBLE, sum($N)::DOUBLE, count(*) FILTER ($N > 0),"
          + " sum($X * $X)::DOUBLE, sum($X * $N)::DOUBLE, sum($N * $N)::DOUBLE";

  /** $BY is what to group by. */
  static final String BY_MORNING = byMorning();

  /** The same. */
  static final String OVER_STARTS = overStarts();

  /** Columns of {@link #OVER_STARTS}: two of each grace, and after them two of inferred starts. */
  private static final int GRACES_FROM = 20;

  private static final int INFERRED = GRACES_FROM + 2 * Measures.GRACES.size();

  private final int mornings;
  private final Share onTime;
  private final List<Share> graces = new ArrayList<>();
  private final Share cancelled;
  private final Share shown;

  private static String byMorning() {
    StringBuilder inner = new StringBuilder("SELECT $BY g, suite, day, count(*)::BIGINT c,");
    inner.append(" count(*) FILTER (cancelled) cx, count(started) n, count(on_time) j,");
    inner.append(" count(*) FILTER (on_time) x,");
    StringBuilder outer = new StringBuilder("SELECT g, count(*) FILTER (n > 0), ");
    outer.append(sums("x", "j"));
    for (int grace : Measures.GRACES) {
      long ms = grace * FirstCaseFact.MINUTE;
      inner.append(" count(*) FILTER (cut <= ").append(ms).append(") x").append(grace);
      inner.append(", count(*) FILTER (cut <= ").append(ms).append(" OR cut_from > ").append(ms);
      inner.append(") j").append(grace).append(',');
      outer.append(", ").append(sums("x" + grace, "j" + grace));
    }
    inner.append(" count(*) FILTER (shown AND NOT on_time) sx,");
    inner.append(" count(shown) FILTER (NOT on_time) sn FROM start $WHERE GROUP BY g, suite, day");
    outer.append(", ").append(sums("cx", "c")).append(", ").append(sums("sx", "sn"));
    return outer + " FROM (" + inner + ") GROUP BY g";
  }

  private static String sums(String x, String n) {
    return SUMS.replace("$X", x).replace("$N", n);
  }

  private static String overStarts() {
    StringBuilder words = new StringBuilder("SELECT $BY g, count(*), count(*) FILTER (cancelled),");
    words.append(" count(started), sum(late)::DOUBLE, count(*) FILTER (NOT on_time),");
    // One list of both points: each call of its own would keep and sort all values again.
    words.append(" avg(late) FILTER (NOT on_time), quantile_cont(late, [0.5, 0.9])[1]::DOUBLE,");
    words.append(" quantile_cont(late, [0.5, 0.9])[2]::DOUBLE,");
    words.append(" (quantile_cont(late, 0.5) FILTER (NOT on_time))::DOUBLE,");
    words.append(" avg(took) FILTER (started IS NOT NULL),");
    words.append(" (quantile_cont(took, 0.5) FILTER (started IS NOT NULL))::DOUBLE,");
    words.append(" count(took) FILTER (started IS NOT NULL)");
    for (String one :
        List.of("asked", "left_out", "open_at_step", "together", "late_entries", "faults")) {
      words.append(", sum(").append(one).append(") FILTER (started IS NOT NULL)");
    }
    for (int grace : Measures.GRACES) {
      words.append(
          ", avg(late) FILTER (cut_from > $MS), count(*) FILTER (cut_from > $MS)"
              .replace("$MS", String.valueOf(grace * FirstCaseFact.MINUTE)));
    }
    words.append(", count(*) FILTER (inferred), count(*) FILTER (inferred AND NOT on_time)");
    return words + " FROM start $WHERE GROUP BY g";
  }

  /**
   * @param row of {@link #BY_MORNING}
   */
  MeasureSums(ResultSet row) throws SQLException {
    mornings = row.getInt(2);
    onTime = share(row, 3);
    int at = 9;
    for (int i = 0; i < Measures.GRACES.size(); i++, at += 6) {
      graces.add(share(row, at));
    }
    cancelled = share(row, at);
    shown = share(row, at + 6);
  }

  private static Share share(ResultSet row, int at) throws SQLException {
    return Share.of(
        Clusters.ofSums(
            row.getDouble(at),
            row.getDouble(at + 1),
            row.getInt(at + 2),
            row.getDouble(at + 3),
            row.getDouble(at + 4),
            row.getDouble(at + 5)));
  }

  /**
   * All but the intervals of minutes late, which are {@link LateSums}'.
   *
   * @param row of {@link #OVER_STARTS}
   */
  Measures with(ResultSet row) throws SQLException {
    int cases = row.getInt(2);
    int off = row.getInt(3);
    int starts = row.getInt(4);
    return new Measures(
        cases,
        off,
        cases - off - starts,
        starts,
        row.getInt(INFERRED),
        mornings,
        Withheld.isWithheld(starts) ? null : figures(row, starts));
  }

  private Measures.Figures figures(ResultSet row, int starts) throws SQLException {
    double total = row.getDouble(5) / MINUTE;
    int late = row.getInt(6);
    Measures.Minutes minutes =
        new Measures.Minutes(
            total,
            total / starts,
            total / mornings,
            ofEnough(onTime.n(), late),
            ofEnough(late, minutes(row, 7)),
            row.getDouble(8) / MINUTE,
            row.getDouble(9) / MINUTE,
            ofEnough(late, minutes(row, 10)),
            row.getInt(INFERRED),
            ofEnough(onTime.n(), row.getInt(INFERRED + 1)),
            null);
    double asked = row.getDouble(14);
    int took = row.getInt(13);
    Measures.Balancing beside =
        new Measures.Balancing(
            ofEnough(took, minutes(row, 11)),
            ofEnough(took, minutes(row, 12)),
            took,
            cancelled,
            perHundred(row, 15, asked),
            perHundred(row, 16, asked),
            perHundred(row, 17, asked),
            perHundred(row, 18, asked),
            perHundred(row, 19, asked));
    List<Measures.Grace> side = new ArrayList<>();
    for (int i = 0; i < graces.size(); i++) {
      Share share = graces.get(i);
      int at = GRACES_FROM + 2 * i;
      Double mean = ofEnough(row.getInt(at + 1), minutes(row, at));
      side.add(
          new Measures.Grace(Measures.GRACES.get(i), share.orWithheld(), mean, starts - share.n()));
    }
    Measures.Ahead ahead = ofEnough(shown.n(), new Measures.Ahead(shown, late - shown.n()));
    return new Measures.Figures(
        onTime.orWithheld(), side, minutes, beside, ahead, starts - onTime.n());
  }

  private static Double minutes(ResultSet row, int at) throws SQLException {
    double value = row.getDouble(at);
    return row.wasNull() ? null : (Double) (value / MINUTE);
  }

  private static double perHundred(ResultSet row, int at, double asked) throws SQLException {
    return asked == 0 ? 0 : 100 * row.getDouble(at) / asked;
  }
}
