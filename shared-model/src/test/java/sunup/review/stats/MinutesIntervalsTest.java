package sunup.review.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.hipparchus.stat.StatUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sunup.review.stats.Clusters.Cluster;

/** Intervals of what starts of one morning have in common: means and quantiles of minutes. */
class MinutesIntervalsTest {
  private static final double LEVEL = 0.95;

  /**
   * R. L. Scheaffer, W. Mendenhall, R. L. Ott, Elementary Survey Sampling, chapter on cluster
   * sampling: incomes of 25 of a city's 415 blocks, 8,801 a head with a bound of 1,617 (two
   * standard errors, with the correction for a finite city).
   */
  @Test
  void shouldGiveThePublishedMeanOfBlocksAndItsError() {
    double[] residents = {
      8, 12, 4, 5, 6, 6, 7, 5, 8, 3, 2, 6, 5, 10, 9, 3, 6, 5, 5, 4, 6, 8, 7, 3, 8
    };
    double[] thousands = {
      96, 121, 42, 65, 52, 40, 75, 65, 45, 50, 85, 43, 54, 49, 53, 50, 32, 22, 45, 37, 51, 30, 39,
      47, 41
    };
    MeanOfClusters mean = of(thousands, residents);
    assertThat(mean.mean()).isCloseTo(8.801, within(5e-4));
    double bound = 2 * Math.sqrt(mean.variance() * (1 - 25.0 / 415));
    assertThat(bound).isCloseTo(1.617, within(5e-4));
    double t = new TDistribution(24).inverseCumulativeProbability(0.975);
    assertThat(mean.interval(LEVEL, 0).upper())
        .isCloseTo(8.8013 + t * bound / 2 / Math.sqrt(1 - 25.0 / 415), within(1e-3));
  }

  /** Where all mornings have as many starts it is the plain interval of their means. */
  @Property
  void shouldAgreeWithALibraryWhereMorningsAreOfOneSize(
      @ForAll @Size(min = 2, max = 60) List<@DoubleRange(min = 0, max = 99) Double> means,
      @ForAll @IntRange(min = 1, max = 40) int starts) {
    double[] of = means.stream().mapToDouble(Double::doubleValue).toArray();
    double[] n = new double[of.length];
    Arrays.fill(n, starts);
    Interval ours = of(Arrays.stream(of).map(v -> v * starts).toArray(), n).interval(LEVEL, -1e9);
    double reach =
        new TDistribution(of.length - 1).inverseCumulativeProbability(0.975)
            * Math.sqrt(StatUtils.variance(of) / of.length);
    assertThat(ours.lower()).isCloseTo(StatUtils.mean(of) - reach, within(1e-4));
    assertThat(ours.upper()).isCloseTo(StatUtils.mean(of) + reach, within(1e-4));
  }

  /** The chance that sorted values hold a quantile between them is a binomial one. */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.9})
  void shouldHoldTheQuantileOfIndependentStartsAsOftenAsItSays(double q) {
    int told = 0;
    for (int n = 10; n <= 500; n++) {
      OrderRanks ranks = OrderRanks.of(q, new Clusters(q * n, n, n, 1), LEVEL);
      if (ranks != null) {
        told++;
        BinomialDistribution below = new BinomialDistribution(n, q);
        double holds =
            below.cumulativeProbability(ranks.upper() - 1)
                - below.cumulativeProbability(ranks.lower() - 1);
        assertThat(holds).as("of %d", n).isBetween(0.95, 0.992);
      }
    }
    assertThat(told).isGreaterThan(450);
  }

  @Test
  void shouldNotSayWhatTooFewStartsCannotTell() {
    assertThat(OrderRanks.of(0.9, new Clusters(9, 10, 5, 1), LEVEL)).isNull();
    assertThat(OrderRanks.of(0.5, new Clusters(5, 10, 5, 1), LEVEL))
        .isEqualTo(new OrderRanks(2, 9));
    assertThat(new MeanOfClusters(1, 30, 10, 900, 300, 100).interval(LEVEL, 0)).isNull();
  }

  /**
   * Mornings of twelve rooms that share a slow hour now and then, half of all starts on time: the
   * truth is of 40,000 mornings. Seeded.
   */
  @Test
  void shouldHoldTheTruthWhereStartsOfOneMorningGoTogether() {
    SplittableRandom random = new SplittableRandom(7);
    double[][] all = mornings(random, 40_000);
    double[] sorted = Arrays.stream(all).flatMapToDouble(Arrays::stream).sorted().toArray();
    double mean = Arrays.stream(sorted).average().orElseThrow();
    double median = Quantiles.ofSorted(sorted, 0.5);
    double ninth = Quantiles.ofSorted(sorted, 0.9);
    int[] held = new int[3];
    int rounds = 1_000;
    for (int r = 0; r < rounds; r++) {
      double[][] seen = mornings(random, 40);
      double[] x = Arrays.stream(seen).mapToDouble(m -> Arrays.stream(m).sum()).toArray();
      double[] n = Arrays.stream(seen).mapToDouble(m -> m.length).toArray();
      held[0] += of(x, n).interval(LEVEL, 0).contains(mean) ? 1 : 0;
      held[1] += quantile(seen, 0.5).contains(median) ? 1 : 0;
      held[2] += quantile(seen, 0.9).contains(ninth) ? 1 : 0;
    }
    for (int h : held) {
      assertThat(h / (double) rounds).as("of %s", Arrays.toString(held)).isBetween(0.92, 0.985);
    }
  }

  private static double[][] mornings(SplittableRandom random, int count) {
    double[][] mornings = new double[count][];
    for (int m = 0; m < count; m++) {
      double shared = random.nextDouble() < 0.3 ? 12 * random.nextDouble() : -2;
      mornings[m] = new double[8 + random.nextInt(5)];
      for (int s = 0; s < mornings[m].length; s++) {
        double own = -8 * Math.log(1 - random.nextDouble()) - 5;
        mornings[m][s] = Math.max(0, shared + own);
      }
    }
    return mornings;
  }

  private static Interval quantile(double[][] mornings, double q) {
    double[] sorted = Arrays.stream(mornings).flatMapToDouble(Arrays::stream).sorted().toArray();
    double at = Quantiles.ofSorted(sorted, q);
    List<Cluster> below =
        Arrays.stream(mornings)
            .map(m -> new Cluster(Arrays.stream(m).filter(v -> v <= at).count(), m.length))
            .toList();
    OrderRanks ranks = OrderRanks.of(q, Clusters.of(below), LEVEL);
    return new Interval(sorted[ranks.lower() - 1], sorted[ranks.upper() - 1]);
  }

  private static MeanOfClusters of(double[] x, double[] n) {
    double[] sums = new double[5];
    for (int i = 0; i < x.length; i++) {
      sums[0] += x[i];
      sums[1] += n[i];
      sums[2] += x[i] * x[i];
      sums[3] += x[i] * n[i];
      sums[4] += n[i] * n[i];
    }
    return new MeanOfClusters(x.length, sums[0], sums[1], sums[2], sums[3], sums[4]);
  }
}
