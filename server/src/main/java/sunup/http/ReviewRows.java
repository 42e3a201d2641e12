package sunup.http;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sunup.archive.FactFigures;
import sunup.archive.FactFigures.SaidThen;
import sunup.review.Measures;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.FirstCaseFact.Came;
import sunup.review.facts.Withheld;

/**
 * The rows one by one, as CSV or as they are; ARCHIVE.md says what each column holds. No cell of
 * the CSV begins with what a spreadsheet would take for a formula.
 */
final class ReviewRows {
  /** Rows of one file; who needs more asks for one year, or one month, after the other. */
  private static final int ROWS_MOST = 50_000;

  private static final String HEAD =
      "suite,date,room,service,technique,booked,agreed,started,start inferred,cancelled,grace"
          + " minutes,minutes late,on time,computed cause,reported cause,settled,source,start event"
          + ",arrivals,ready reported,sent for,wheels in,induction,release,incision"
          + ",reported instead"
          + BoardSaid.MOMENTS.stream().map(ReviewRows::head).collect(Collectors.joining())
          + "\r\n";

  private ReviewRows() {}

  private static String head(int before) {
    return Stream.of(
            "chance on time",
            "start 10 %",
            "start median",
            "start 90 %",
            "holdup named",
            "forecast",
            "desk acted after",
            "came on time")
        .map(what -> ",T-" + before + ' ' + what)
        .collect(Collectors.joining());
  }

  /**
   * All of them.
   *
   * @throws Answers.Wrong if there are too few starts to show any, or more rows than a file may
   *     have
   */
  static List<FactFigures.Row> rows(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    mayBeHad(figures, query);
    List<FactFigures.Row> rows = new ArrayList<>();
    figures.rows(query.filter(), rows::add);
    return rows;
  }

  /** The same as CSV. */
  static String csv(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    mayBeHad(figures, query);
    StringBuilder lines = new StringBuilder(HEAD);
    figures.rows(query.filter(), row -> lines.append(line(row)));
    return lines.toString();
  }

  private static void mayBeHad(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    Measures measures = figures.measures(query.filter());
    int starts = measures.starts();
    if (Withheld.isWithheld(starts)) {
      throw new Answers.Wrong(
          "Too few",
          422,
          "These are "
              + starts
              + " starts; rows are given of "
              + Withheld.LEAST_STARTS
              + " or more.");
    }
    // A row is a case, whether it started or not.
    if (measures.cases() > ROWS_MOST) {
      throw new Answers.Wrong(
          "Too many", 422, "A file has " + ROWS_MOST + " rows at most. Ask for a shorter period.");
    }
  }

  private static String line(FactFigures.Row r) {
    Stream<Object> own =
        Stream.of(
            r.suite(),
            r.date(),
            r.room(),
            r.service(),
            r.technique(),
            time(r.bookedAt()),
            time(r.agreedAt()),
            time(r.startedAt()),
            r.startedAt() == null ? null : yes(r.inferred()),
            yes(r.cancelled()),
            r.graceMinutes(),
            r.lateMinutes() == null ? null : String.format(Locale.ROOT, "%.2f", r.lateMinutes()),
            yes(r.onTime()),
            r.cause(),
            r.reported(),
            r.settled(),
            r.source().name().toLowerCase(Locale.ROOT),
            r.startEvent(),
            arrivals(r.times().arrivals()),
            time(r.times().readyAt()),
            time(r.times().sentFor()),
            time(r.times().wheelsIn()),
            time(r.times().induction()),
            time(r.times().release()),
            time(r.times().incision()),
            r.instead());
    return Stream.concat(own, BoardSaid.MOMENTS.stream().flatMap(before -> said(r, before)))
        .map(ReviewRows::cell)
        .collect(Collectors.joining(",", "", "\r\n"));
  }

  private static Stream<Object> said(FactFigures.Row row, int before) {
    for (SaidThen s : row.said()) {
      if (s.minutesBefore() == before) {
        return Stream.of(
            String.format(Locale.ROOT, "%.3f", s.onTime()),
            time(s.start10()),
            time(s.start50()),
            time(s.start90()),
            s.holdup(),
            s.kept() ? "kept" : "made again",
            yes(s.deskActed()),
            yes(s.came()));
      }
    }
    return Stream.of(null, null, null, null, null, null, null, null);
  }

  /** Roles and items with when they came, the first one first. */
  private static String arrivals(List<Came> came) {
    return came.stream().map(c -> c.what() + ' ' + time(c.at())).collect(Collectors.joining("; "));
  }

  private static String yes(Boolean is) {
    return is == null ? null : is ? "yes" : "no";
  }

  private static String time(Long at) {
    return at == null ? null : Instant.ofEpochMilli(at).toString();
  }

  /** Quoted where it must be; harmless where a spreadsheet would calculate. */
  static String cell(Object value) {
    String text = value == null ? "" : value.toString();
    String safe = !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    return safe.matches("(?s).*[\",\r\n].*") ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
  }
}
