package sunup.review;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import sunup.board.MorningId;
import sunup.codec.Maybe;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;
import sunup.review.stats.Clusters;
import sunup.review.stats.Clusters.Cluster;
import sunup.review.stats.Interval;

/**
 * A share of starts with its 95 % intervals.
 *
 * @param x how many of them
 * @param n of how many
 * @param share x / n, or null of none
 * @param interval Wilson's, as if starts were independent; null of none
 * @param byMornings Wilson's at the effective number of starts, as those of one morning go
 *     together; null of none. The one to believe
 * @param effect how many times the variance of independent starts it has
 */
public record Share(
    int x,
    int n,
    @Maybe Double share,
    @Maybe Interval interval,
    @Maybe Interval byMornings,
    double effect) {
  static final double LEVEL = 0.95;

  /** The share of the facts that are so. */
  static Share of(List<FirstCaseFact> facts, Predicate<FirstCaseFact> is) {
    return of(clusters(facts, is));
  }

  /** The same, or null if it is a share of too few: withheld. */
  public Share orWithheld() {
    return Withheld.isWithheld(n) ? null : this;
  }

  /** The share that these clusters add up to. */
  public static Share of(Clusters c) {
    return new Share(
        (int) c.x(),
        (int) c.n(),
        c.n() == 0 ? null : (Double) (c.x() / c.n()),
        c.plain(LEVEL),
        c.adjusted(LEVEL),
        c.effect());
  }

  static Clusters clusters(List<FirstCaseFact> facts, Predicate<FirstCaseFact> is) {
    Map<MorningId, Cluster> mornings = new LinkedHashMap<>();
    for (FirstCaseFact fact : facts) {
      mornings.merge(
          fact.morning(),
          new Cluster(is.test(fact) ? 1 : 0, 1),
          (a, b) -> new Cluster(a.x() + b.x(), a.n() + b.n()));
    }
    return Clusters.of(List.copyOf(mornings.values()));
  }
}
