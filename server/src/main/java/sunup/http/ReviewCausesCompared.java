package sunup.http;

import java.util.List;
import java.util.Map;
import sunup.archive.FactFigures;
import sunup.review.CausesCompared;
import sunup.review.CausesCompared.Row;
import sunup.review.charts.MinutesByCause.Grouping;

/** Late minutes by cause of two periods, with what the suite's sheets call their items. */
final class ReviewCausesCompared {
  private ReviewCausesCompared() {}

  /**
   * Causes of two periods.
   *
   * @param names what to show for a label that has an item's key in it; labels without one, and
   *     items that no sheet has any more, are not in it
   */
  record Compared(Grouping by, CausesCompared causes, Map<String, String> names) {}

  static Compared of(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    TwoPeriods two = TwoPeriods.of(query);
    Grouping by = query.grouping();
    CausesCompared causes =
        CausesCompared.of(
            two.firstName(),
            figures.causeSums(two.first(), by),
            two.secondName(),
            figures.causeSums(two.second(), by));
    List<Row> rows = causes.rows() == null ? List.of() : causes.rows();
    Map<String, String> items = ReviewCauses.items(figures, query);
    return new Compared(by, causes, ReviewCauses.names(rows.stream().map(Row::label), items));
  }
}
