package sunup.review.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.special.Gamma;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.inference.MannWhitneyUTest;
import org.hipparchus.stat.interval.BinomialProportion;
import org.hipparchus.stat.interval.ConfidenceInterval;

/** The same figures by a general-purpose library (Hipparchus, tests only). */
class SecondLibraryTest {
  @Property
  void shouldAgreeOnNormalChiSquareAndStudent(
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double u,
      @ForAll @DoubleRange(min = -8, max = 8) double t,
      @ForAll @IntRange(min = 1, max = 400) int degrees) {
    assertThat(Chances.normalQuantile(u))
        .isCloseTo(new NormalDistribution().inverseCumulativeProbability(u), within(1e-8));
    TDistribution student = new TDistribution(degrees);
    assertThat(Chances.studentLower(t, degrees))
        .isCloseTo(student.cumulativeProbability(t), within(1e-10));
    assertThat(student.cumulativeProbability(Chances.studentQuantile(u, degrees)))
        .isCloseTo(u, within(1e-9));
    double x = degrees * Math.exp(t / 4);
    assertThat(Chances.chiSquareUpper(x, degrees))
        .isCloseTo(1 - new ChiSquaredDistribution(degrees).cumulativeProbability(x), within(1e-10));
  }

  @Property
  void shouldAgreeOnTheGammaFunction(@ForAll @DoubleRange(min = 0.01, max = 500) double x) {
    assertThat(Chances.logGamma(x))
        .isCloseTo(Gamma.logGamma(x), within(1e-10 * Math.max(1, Math.abs(Gamma.logGamma(x)))));
  }

  @Property
  void shouldAgreeOnQuantilesAndMeans(
      @ForAll @Size(min = 1, max = 60) List<@DoubleRange(min = -99, max = 99) Double> values,
      @ForAll @DoubleRange(min = 0.01, max = 1) double q) {
    double[] array = values.stream().mapToDouble(Double::doubleValue).toArray();
    Percentile seven = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
    assertThat(Quantiles.of(values, q)).isCloseTo(seven.evaluate(array, 100 * q), within(1e-9));
    assertThat(Quantiles.mean(values)).isCloseTo(StatUtils.mean(array), within(1e-9));
    assertThat(Quantiles.of(List.<Double>of(), q)).isNull();
  }

  @Property
  void shouldAgreeOnWilson(
      @ForAll @IntRange(min = 1, max = 400) int n, @ForAll @IntRange(min = 0, max = 400) int x) {
    int k = Math.min(x, n);
    ConfidenceInterval theirs = BinomialProportion.getWilsonScoreInterval(n, (double) k / n, 0.95);
    Interval ours = Proportions.wilson(k, n, 0.95);
    assertThat(ours.lower()).isCloseTo(theirs.getLowerBound(), within(1e-8));
    assertThat(ours.upper()).isCloseTo(theirs.getUpperBound(), within(1e-8));
  }

  @Property
  void shouldAgreeOnTheRankSumTest(
      @ForAll @Size(min = 3, max = 12) List<@IntRange(min = 0, max = 1_000_000) Integer> first,
      @ForAll @Size(min = 3, max = 12) List<@IntRange(min = 0, max = 1_000_000) Integer> second) {
    List<Double> x = first.stream().distinct().map(i -> i + 0.25).toList();
    List<Double> y = second.stream().distinct().map(i -> i + 0.75).toList();
    double theirs = new MannWhitneyUTest().mannWhitneyUTest(array(x), array(y), true);
    RankSum ours = RankSum.of(x, y, 0.95);
    if (2 * ours.w() == x.size() * y.size()) {
      // In the very middle the library does not double its half: twice what is at least a half is
      // 1.
      assertThat(ours.pBoth()).isEqualTo(1);
    } else {
      assertThat(ours.pBoth()).isCloseTo(theirs, within(1e-9));
    }
  }

  private static double[] array(List<Double> values) {
    double[] array = values.stream().mapToDouble(Double::doubleValue).toArray();
    return Arrays.copyOf(array, array.length);
  }
}
