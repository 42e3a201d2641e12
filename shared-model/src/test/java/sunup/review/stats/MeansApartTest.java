package sunup.review.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.hipparchus.stat.inference.TTest;
import org.junit.jupiter.api.Test;

/** Two means of mornings, of two periods that share none. */
class MeansApartTest {
  private static final double LEVEL = 0.95;

  private static MeanOfClusters of(double[] x, double[] n) {
    double[] s = new double[5];
    for (int i = 0; i < x.length; i++) {
      s[0] += x[i];
      s[1] += n[i];
      s[2] += x[i] * x[i];
      s[3] += x[i] * n[i];
      s[4] += n[i] * n[i];
    }
    return new MeanOfClusters(x.length, s[0], s[1], s[2], s[3], s[4]);
  }

  private static MeanOfClusters ofOnes(double... x) {
    double[] ones = new double[x.length];
    Arrays.fill(ones, 1);
    return of(x, ones);
  }

  /**
   * The hours of sleep of Student 1908, as R's help has them: Welch's t = -1.8608 on 17.776
   * degrees, p = 0.07939, -3.3654832 to 0.2054832.
   */
  @Test
  void shouldGiveWelchsTestOfStudentsSleepers() {
    double[] one = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
    double[] other = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
    MeansApart apart = MeansApart.of(ofOnes(one), ofOnes(other));
    assertThat(apart.value()).isCloseTo(-1.58, within(1e-9));
    assertThat(apart.value() / Math.sqrt(apart.variance())).isCloseTo(-1.8608, within(5e-5));
    assertThat(apart.degrees()).isCloseTo(17.776, within(5e-4));
    assertThat(apart.p()).isCloseTo(0.07939, within(5e-6));
    assertThat(apart.interval(LEVEL).lower()).isCloseTo(-3.3654832, within(5e-7));
    assertThat(apart.interval(LEVEL).upper()).isCloseTo(0.2054832, within(5e-7));
    assertThat(apart.p()).isCloseTo(new TTest().tTest(one, other), within(1e-9));
  }

  /** Where the short side is the steadier one, both together: the library's pooled test. */
  @Test
  void shouldTakeAShortSideForNoSteadierThanTheOther() {
    SplittableRandom random = new SplittableRandom(3);
    double[] one = random.doubles(12).toArray();
    double[] other = random.doubles(90).map(v -> v * 9).toArray();
    MeansApart apart = MeansApart.of(ofOnes(one), ofOnes(other));
    assertThat(apart.degrees()).isEqualTo(100);
    assertThat(apart.p()).isCloseTo(new TTest().homoscedasticTTest(one, other), within(1e-9));
  }

  @Test
  void shouldSayNothingOfWhatNeverVaries() {
    MeansApart none = MeansApart.of(ofOnes(0, 0, 0), ofOnes(0, 0));
    assertThat(none.p()).isEqualTo(1);
    assertThat(none.interval(LEVEL)).isEqualTo(new Interval(0, 0));
  }

  /**
   * A cause that comes on some mornings, to all rooms that need the place: how often the interval
   * holds the truth, and how often "differs" is said where nothing does. Seeded. Rare causes and
   * sides of very different length are what a plain Welch interval gets wrong: a cause of one
   * morning in thirty, 15 beside 200 mornings, is held by it in 51 of 100.
   */
  @Test
  void shouldHoldTheTruthOfRareCausesAndOfSidesOfDifferentLength() {
    double[][] designs = {
      // mornings of one and other, chance of a morning with the cause on either side
      {12, 12, 0.3, 0.3},
      {15, 200, 0.3, 0.3},
      {15, 200, 1 / 30.0, 1 / 30.0},
      {60, 200, 0.7, 0.05},
      {200, 60, 0.7, 0.05},
      {40, 65, 0.1, 0.1},
    };
    for (double[] design : designs) {
      SplittableRandom random = new SplittableRandom(11);
      int held = 0;
      int found = 0;
      int rounds = 1_500;
      // A room needs it in half of all starts, for 25 minutes in the mean.
      double truth = (design[2] - design[3]) * 0.5 * 25;
      for (int r = 0; r < rounds; r++) {
        MeansApart apart =
            MeansApart.of(
                mornings(random, (int) design[0], design[2]),
                mornings(random, (int) design[1], design[3]));
        held += apart.interval(LEVEL).contains(truth) ? 1 : 0;
        found += apart.p() <= 0.05 ? 1 : 0;
      }
      String what = Arrays.toString(design) + " held " + held + " found " + found;
      assertThat(held / (double) rounds).as(what).isBetween(0.92, 1.0);
      if (truth == 0) {
        assertThat(found / (double) rounds).as(what).isLessThan(0.06);
      }
    }
  }

  private static MeanOfClusters mornings(SplittableRandom random, int mornings, double chance) {
    double[] x = new double[mornings];
    double[] n = new double[mornings];
    for (int m = 0; m < mornings; m++) {
      n[m] = 9 + random.nextInt(4);
      boolean slow = random.nextDouble() < chance;
      for (int start = 0; slow && start < n[m]; start++) {
        x[m] += random.nextBoolean() ? 12.5 + 25 * random.nextDouble() : 0;
      }
    }
    return of(x, n);
  }
}
