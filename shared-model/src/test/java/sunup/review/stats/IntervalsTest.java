package sunup.review.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sunup.review.stats.Clusters.Cluster;

class IntervalsTest {
  private static final double LEVEL = 0.95;

  /**
   * Newcombe, Two-sided confidence intervals for the single proportion, Stat Med 17 (1998) 857-872,
   * Table I, method 3: the first five. The others are computed from the formula.
   */
  @ParameterizedTest
  @CsvSource({
    "81, 263, .2553, .3662",
    "15, 148, .0624, .1605",
    "0, 20, .0000, .1611",
    "1, 29, .0061, .1718",
    "29, 29, .8830, 1.0000",
    "0, 10, 0, .2775",
    "10, 10, .7225, 1",
    "5, 10, .2366, .7634",
    "1, 2, .0945, .9055",
    "10, 100, .0552, .1744",
    "25, 100, .1755, .3430",
    "50, 100, .4038, .5962",
    "0, 100, 0, .0370"
  })
  void shouldGiveNewcombesTableForAShare(int x, int n, double lower, double upper) {
    Interval interval = Proportions.wilson(x, n, LEVEL);
    assertThat(interval.lower()).isCloseTo(lower, within(5.1e-5));
    assertThat(interval.upper()).isCloseTo(upper, within(5.1e-5));
  }

  @Test
  void shouldGiveNoIntervalForNothingCounted() {
    assertThat(Proportions.wilson(0, 0, LEVEL)).isNull();
    assertThat(Proportions.difference(0, 0, 1, 2, LEVEL)).isNull();
    assertThatThrownBy(() -> Proportions.wilson(3, 2, LEVEL)).hasMessageContaining("3.0 of 2.0");
  }

  /**
   * Newcombe, Interval estimation for the difference between independent proportions, Stat Med 17
   * (1998) 873-890, Table II, method 10.
   */
  @ParameterizedTest
  @CsvSource({
    "56, 70, 48, 80, .0524, .3339",
    "9, 10, 3, 10, .1705, .8090",
    "6, 7, 2, 7, .0582, .8062",
    "5, 56, 0, 29, -.0381, .1926",
    "0, 10, 0, 20, -.1611, .2775",
    "0, 10, 0, 10, -.2775, .2775",
    "10, 10, 0, 20, .6791, 1.0000",
    "10, 10, 0, 10, .6075, 1.0000"
  })
  void shouldGiveNewcombesTableForADifference(
      int x1, int n1, int x2, int n2, double lower, double upper) {
    Interval interval = Proportions.difference(x1, n1, x2, n2, LEVEL);
    assertThat(interval.lower()).isCloseTo(lower, within(5.1e-5));
    assertThat(interval.upper()).isCloseTo(upper, within(5.1e-5));
  }

  @Property
  void shouldHoldTheShareAndBeTheMirrorOfTheOtherShare(
      @ForAll @IntRange(min = 1, max = 500) int n, @ForAll @IntRange(min = 0, max = 500) int x) {
    int k = Math.min(x, n);
    Interval one = Proportions.wilson(k, n, LEVEL);
    Interval other = Proportions.wilson(n - k, n, LEVEL);
    assertThat(one.contains((double) k / n)).isTrue();
    assertThat(one.lower()).isCloseTo(1 - other.upper(), within(1e-12));
    assertThat(Proportions.difference(k, n, k, n, LEVEL).contains(0)).isTrue();
  }

  /** Of mornings with a share of their own the plain interval misses often, the adjusted seldom. */
  @Test
  void shouldHoldTheTruthAsOftenAsItSaysWhenStartsOfAMorningGoTogether() {
    SplittableRandom random = new SplittableRandom(5);
    int plain = 0;
    int adjusted = 0;
    int tries = 2_000;
    for (int t = 0; t < tries; t++) {
      List<Cluster> mornings = new ArrayList<>();
      for (int m = 0; m < 60; m++) {
        double p = random.nextBoolean() ? 0.4 : 0.8;
        int x = 0;
        for (int i = 0; i < 12; i++) {
          x += random.nextDouble() < p ? 1 : 0;
        }
        mornings.add(new Cluster(x, 12));
      }
      Clusters share = Clusters.of(mornings);
      plain += share.plain(LEVEL).contains(0.6) ? 1 : 0;
      adjusted += share.adjusted(LEVEL).contains(0.6) ? 1 : 0;
    }
    assertThat((double) plain / tries).isLessThan(0.87);
    assertThat((double) adjusted / tries).isBetween(0.925, 0.97);
  }

  @Test
  void shouldWidenNothingWhereStartsAreIndependent() {
    Clusters one = Clusters.of(List.of(new Cluster(3, 10)));
    assertThat(one.effect()).isEqualTo(1);
    assertThat(one.adjusted(LEVEL)).isEqualTo(one.plain(LEVEL));
    assertThat(Clusters.of(List.of()).plain(LEVEL)).isNull();
  }

  /** Means of 40 exponential values: the percentile interval holds 1 about 93 times in 100. */
  @Test
  void shouldHoldTheMeanAboutAsOftenAsItSaysWhenMorningsAreResampled() {
    SplittableRandom random = new SplittableRandom(11);
    int held = 0;
    int tries = 200;
    for (int t = 0; t < tries; t++) {
      double[] values = new double[40];
      for (int i = 0; i < values.length; i++) {
        values[i] = -Math.log(1 - random.nextDouble());
      }
      Interval interval =
          Resampling.interval(
              values.length,
              times -> {
                double sum = 0;
                for (int i = 0; i < times.length; i++) {
                  sum += times[i] * values[i];
                }
                return sum / times.length;
              },
              LEVEL,
              t);
      held += interval.contains(1) ? 1 : 0;
    }
    assertThat((double) held / tries).isBetween(0.88, 0.98);
  }

  @Test
  void shouldGiveTheSameIntervalForTheSameSeedAndNoneForOneMorning() {
    Interval one = Resampling.interval(5, times -> times[0], LEVEL, 7);
    assertThat(Resampling.interval(5, times -> times[0], LEVEL, 7)).isEqualTo(one);
    assertThat(Resampling.interval(1, times -> times[0], LEVEL, 7)).isNull();
    assertThat(Resampling.interval(5, times -> Double.NaN, LEVEL, 7)).isNull();
  }
}
