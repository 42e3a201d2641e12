package sunup.http;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sunup.archive.FactFigures;
import sunup.review.facts.Withheld;

/** The rows as CSV. No cell begins with what a spreadsheet would take for a formula. */
final class ReviewRows {
  /** Rows of one file; who needs more asks year by year. */
  private static final int ROWS_MOST = 200_000;

  private static final String HEAD =
      "suite,date,room,service,technique,booked,agreed,started,start inferred,cancelled,grace"
          + " minutes,minutes late,on time,computed cause,reported cause,settled,source\r\n";

  private ReviewRows() {}

  /**
   * @throws Answers.Wrong if there are too few starts to show any, or more rows than a file may
   *     have
   */
  static String csv(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    int starts = figures.measures(query.filter()).starts();
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
    if (starts > ROWS_MOST) {
      throw new Answers.Wrong(
          "Too many", 422, "A file has " + ROWS_MOST + " rows at most. Ask for a shorter period.");
    }
    List<String> lines = new ArrayList<>();
    figures.rows(query.filter(), row -> lines.add(line(row)));
    return HEAD + String.join("", lines);
  }

  private static String line(FactFigures.Row r) {
    return Stream.<Object>of(
            r.suite(),
            r.date(),
            r.room(),
            r.service(),
            r.technique(),
            time(r.bookedAt()),
            time(r.agreedAt()),
            time(r.startedAt()),
            r.startedAt() == null ? null : r.inferred() ? "yes" : "no",
            r.cancelled() ? "yes" : "no",
            r.graceMinutes(),
            r.lateMinutes() == null ? null : String.format(Locale.ROOT, "%.2f", r.lateMinutes()),
            r.onTime() == null ? null : r.onTime() ? "yes" : "no",
            r.cause(),
            r.reported(),
            r.settled(),
            r.source().name().toLowerCase(Locale.ROOT))
        .map(ReviewRows::cell)
        .collect(Collectors.joining(",", "", "\r\n"));
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
