package sunup.http;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import sunup.archive.FactFigures;
import sunup.archive.Filter;
import sunup.review.Comparison;
import sunup.review.ComparisonSums;

/** Groups with all others, or one period with another. */
final class ReviewCompare {
  /** Groups that are compared with the rest at once. */
  private static final int COMPARED_MOST = 80;

  /** Starts of many mornings that are dealt where sums would have too few mornings on a side. */
  private static final int DEALT_STARTS_MOST = 20_000;

  private ReviewCompare() {}

  /**
   * Comparisons, corrected for their number.
   *
   * @param unjudged starts that they leave out, as nobody knows whether they were on time
   */
  record Compared(List<Comparison> comparisons, int unjudged) {}

  static Compared all(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    if (!TwoPeriods.areGiven(query)) {
      return new Compared(groups(figures, query), unjudged(figures, query.filter()));
    }
    TwoPeriods two = TwoPeriods.of(query);
    return new Compared(
        Comparison.corrected(List.of(periods(figures, two))),
        unjudged(figures, two.first()) + unjudged(figures, two.second()));
  }

  private static List<Comparison> groups(FactFigures figures, ReviewQuery query)
      throws Answers.Wrong {
    Filter filter = query.filter();
    if (figures.mornings(filter) > ComparisonSums.DEALT_MOST) {
      Map<String, ComparisonSums> groups = figures.sums(filter, query.split());
      mustBeFew(groups.size());
      if (!areDealt(
          groups.values(), groups.values().stream().mapToDouble(ReviewCompare::own).sum())) {
        return Comparison.eachOfSums(groups);
      }
    }
    Map<String, List<Comparison.Start>> groups = figures.starts(filter, query.split());
    mustBeFew(groups.size());
    return Comparison.eachWithTheRest(groups, ReviewApi.SEED);
  }

  private static Comparison periods(FactFigures figures, TwoPeriods two) {
    int mornings = figures.mornings(two.first()) + figures.mornings(two.second());
    if (mornings > ComparisonSums.DEALT_MOST) {
      ComparisonSums sums = figures.sums(two.first(), two.second());
      if (!areDealt(List.of(sums), own(sums) + sums.otherOnTime().n())) {
        return sums.compare(two.firstName(), two.secondName());
      }
    }
    return Comparison.ofStarts(
        two.firstName(),
        figures.starts(two.first()),
        two.secondName(),
        figures.starts(two.second()),
        ReviewApi.SEED);
  }

  /** Under each morning's own grace. */
  private static int unjudged(FactFigures figures, Filter filter) {
    return figures.unjudged(filter, null);
  }

  private static double own(ComparisonSums sums) {
    return sums.ownOnTime().n();
  }

  /** True if one has too few mornings for sums, and there are not too many starts to deal them. */
  private static boolean areDealt(Collection<ComparisonSums> sums, double starts) {
    return starts <= DEALT_STARTS_MOST && sums.stream().anyMatch(ComparisonSums::askForDealing);
  }

  private static void mustBeFew(int groups) throws Answers.Wrong {
    if (groups > COMPARED_MOST) {
      throw new Answers.Wrong(
          "Too many",
          422,
          "There are " + groups + " groups. Choose fewer: " + COMPARED_MOST + " at most.");
    }
  }
}
