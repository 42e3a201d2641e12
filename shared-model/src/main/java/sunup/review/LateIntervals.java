package sunup.review;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.codec.Maybe;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;
import sunup.review.stats.Clusters;
import sunup.review.stats.Interval;
import sunup.review.stats.MeanOfClusters;
import sunup.review.stats.OrderRanks;
import sunup.review.stats.Quantiles;

/**
 * The 95 % intervals of the figures of minutes late, in minutes. Starts of one morning go together:
 * means by {@link MeanOfClusters}, quantiles by {@link OrderRanks}. Null where it can't be told: a
 * single morning, or too few starts for the quantile.
 *
 * @param meanOverAll per start, which is tardiness per room and day
 * @param perMorning of the suite per day
 * @param meanOverLate of starts that were not on time; null as well if these are too few to show
 * @param median over all starts
 * @param ninth the 90 % point over all starts
 */
public record LateIntervals(
    @Maybe Interval meanOverAll,
    @Maybe Interval perMorning,
    @Maybe Interval meanOverLate,
    @Maybe Interval median,
    @Maybe Interval ninth) {
  /** The quantiles that have an interval. */
  public static final List<Double> QUANTILES = List.of(0.5, 0.9);

  /**
   * What is added to a quantile before it is cut to milliseconds: more than rounding, less than any
   * step between two.
   */
  private static final double NEARLY = 1e-4;

  /**
   * The whole millisecond up to which values count as at or below a quantile, which may lie between
   * two of them.
   */
  public static long cutMs(double quantileMs) {
    return (long) Math.floor(quantileMs + NEARLY);
  }

  /** The ranks of each of {@link #QUANTILES}; null where it can't be told. */
  public static OrderRanks ranks(double q, Clusters atOrBelow) {
    return atOrBelow.clusters() < 2 ? null : OrderRanks.of(q, atOrBelow, Share.LEVEL);
  }

  /**
   * @param all late minutes of mornings, over their starts
   * @param late late minutes of the starts that were not on time, over these; of mornings with one
   * @param median null if unknown
   * @param ninth null if unknown
   */
  public static LateIntervals of(
      MeanOfClusters all, MeanOfClusters late, Interval median, Interval ninth) {
    int m = all.clusters();
    return new LateIntervals(
        all.interval(Share.LEVEL, 0),
        new MeanOfClusters(m, all.x(), m, all.xx(), all.x(), m).interval(Share.LEVEL, 0),
        Withheld.isWithheld((int) late.n()) ? null : late.interval(Share.LEVEL, 0),
        median,
        ninth);
  }

  static LateIntervals of(List<FirstCaseFact> starts) {
    List<FirstCaseFact> late = starts.stream().filter(FirstCaseFact::late).toList();
    long[] sorted = starts.stream().mapToLong(FirstCaseFact::lateMs).sorted().toArray();
    return of(
        minutes(starts),
        minutes(late),
        quantile(0.5, starts, sorted),
        quantile(0.9, starts, sorted));
  }

  private static MeanOfClusters minutes(List<FirstCaseFact> starts) {
    Map<MorningId, double[]> mornings = new LinkedHashMap<>();
    for (FirstCaseFact fact : starts) {
      double[] sums = mornings.computeIfAbsent(fact.morning(), k -> new double[2]);
      sums[0] += fact.lateMinutes();
      sums[1]++;
    }
    double[] sums = new double[5];
    for (double[] m : mornings.values()) {
      sums[0] += m[0];
      sums[1] += m[1];
      sums[2] += m[0] * m[0];
      sums[3] += m[0] * m[1];
      sums[4] += m[1] * m[1];
    }
    return new MeanOfClusters(mornings.size(), sums[0], sums[1], sums[2], sums[3], sums[4]);
  }

  private static Interval quantile(double q, List<FirstCaseFact> starts, long[] sorted) {
    long cut = cutMs(Quantiles.of(Arrays.stream(sorted).boxed().toList(), q));
    OrderRanks ranks = ranks(q, Share.clusters(starts, f -> f.lateMs() <= cut));
    return ranks == null
        ? null
        : new Interval(
            (double) sorted[ranks.lower() - 1] / FirstCaseFact.MINUTE,
            (double) sorted[ranks.upper() - 1] / FirstCaseFact.MINUTE);
  }
}
