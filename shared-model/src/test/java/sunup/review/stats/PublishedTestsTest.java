package sunup.review.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import sunup.review.stats.Permutation.Block;
import sunup.review.stats.Permutation.Unit;

class PublishedTestsTest {
  /**
   * Benjamini and Hochberg, J R Stat Soc B 57 (1995) 289-300, section 4: 15 comparisons of a
   * thrombolysis trial. The adjusted values are computed from the definition.
   */
  private static final List<Double> TRIAL =
      List.of(
          .0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528,
          .7590, 1.0);

  @Test
  void shouldRejectTheFirstFourOfBenjaminiAndHochbergsTrial() {
    List<Double> adjusted = Corrections.benjaminiHochberg(TRIAL);
    assertThat(adjusted.stream().filter(p -> p <= 0.05)).hasSize(4);
    List<Double> computed =
        List.of(
            .0015, .0030, .0095, .035625, .0603, .063857, .063857, .0645, .0765, .4860, .581182,
            .714875, .753231, .813214, 1.0);
    for (int i = 0; i < computed.size(); i++) {
      assertThat(adjusted.get(i)).isCloseTo(computed.get(i), within(5e-7));
    }
  }

  /** Holm by hand on the same: 15 x .0001, 14 x .0004, 13 x .0019, 12 x .0095. */
  @Test
  void shouldRejectTheFirstThreeByHolm() {
    List<Double> adjusted = Corrections.holm(TRIAL);
    assertThat(adjusted.stream().filter(p -> p <= 0.05)).hasSize(3);
    assertThat(adjusted.subList(0, 4))
        .containsExactly(15 * .0001, 14 * .0004, 13 * .0019, 12 * .0095);
  }

  @Property
  void shouldNeverMakeAPValueSmallerNorChangeTheOrder(
      @ForAll @Size(min = 1, max = 30) List<@DoubleRange(min = 0, max = 1) Double> p) {
    List<Double> holm = Corrections.holm(p);
    List<Double> screened = Corrections.benjaminiHochberg(p);
    for (int i = 0; i < p.size(); i++) {
      assertThat(screened.get(i)).isBetween(p.get(i), 1.0);
      assertThat(holm.get(i)).isBetween(screened.get(i) - 1e-12, 1.0);
      for (int j = 0; j < p.size(); j++) {
        if (p.get(i) < p.get(j)) {
          assertThat(holm.get(i)).isLessThanOrEqualTo(holm.get(j));
          assertThat(screened.get(i)).isLessThanOrEqualTo(screened.get(j));
        }
      }
    }
  }

  private static final List<Double> TERM =
      List.of(.80, .83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, .73, 1.46);
  private static final List<Double> EARLY = List.of(1.15, .88, .90, .74, 1.21);

  /**
   * Hollander and Wolfe, Nonparametric Statistical Methods, 1973, permeability of placental
   * membranes: W = 35, one-sided p .1272. Shift and interval are computed.
   */
  @Test
  void shouldGiveHollanderAndWolfesRankSum() {
    RankSum test = RankSum.of(TERM, EARLY, 0.95);
    assertThat(test.w()).isEqualTo(35);
    assertThat(test.exact()).isTrue();
    assertThat(test.pGreater()).isCloseTo(.127206, within(5e-7));
    assertThat(test.shift()).isCloseTo(.305, within(1e-9));
    assertThat(test.interval().lower()).isCloseTo(-.15, within(1e-9));
    assertThat(test.interval().upper()).isCloseTo(.76, within(1e-9));
  }

  @Test
  void shouldSayTwoInThirtyFiveOfThreeAllBelowFour() {
    RankSum test = RankSum.of(List.of(1.0, 2.0, 3.0), List.of(4.0, 5.0, 6.0, 7.0), 0.95);
    assertThat(test.w()).isZero();
    assertThat(test.pBoth()).isCloseTo(2.0 / 35, within(1e-12));
    assertThat(test.interval()).as("too few for such an interval").isNotNull();
  }

  /** The rank sum test is the permutation test of ranks: all 3,003 ways to deal 10 of 15. */
  @Test
  void shouldGiveTheSameChanceWhenRanksAreDealt() {
    List<Double> all = new ArrayList<>(TERM);
    all.addAll(EARLY);
    Collections.sort(all);
    Permutation dealt = Permutation.between(ranks(TERM, all), ranks(EARLY, all), 1);
    assertThat(dealt.exact()).isTrue();
    assertThat(dealt.deals()).isEqualTo(3_003);
    assertThat(dealt.p()).isCloseTo(RankSum.of(TERM, EARLY, 0.95).pBoth(), within(1e-9));
  }

  private static List<Unit> ranks(List<Double> values, List<Double> all) {
    return values.stream().map(v -> new Unit(1.0 + all.indexOf(v), 1)).toList();
  }

  @Test
  void shouldFindNothingSignificantWhereTheTruthIsTheSame() {
    SplittableRandom random = new SplittableRandom(3);
    int found = 0;
    int tries = 300;
    for (int t = 0; t < tries; t++) {
      List<Unit> one = skewed(random, 7, 1);
      List<Unit> other = skewed(random, 7, 1);
      found += Permutation.between(one, other, t).p() <= 0.05 ? 1 : 0;
    }
    assertThat((double) found / tries).isLessThan(0.09);
  }

  @Test
  void shouldFindADifferenceThatIsThereWhetherAllWaysAreDealtOrSome() {
    SplittableRandom random = new SplittableRandom(4);
    Permutation few = Permutation.between(skewed(random, 8, 1), skewed(random, 8, 20), 9);
    Permutation many = Permutation.between(skewed(random, 60, 1), skewed(random, 60, 3), 9);
    assertThat(few.exact()).isTrue();
    assertThat(many.exact()).isFalse();
    assertThat(few.p()).isLessThan(0.05);
    assertThat(many.p()).isLessThan(0.05);
    assertThat(many.p()).isGreaterThan(0);
  }

  @Test
  void shouldSayThatTwoAgainstTwoCanShowNothing() {
    Permutation test =
        Permutation.between(
            List.of(new Unit(0, 1), new Unit(1, 1)), List.of(new Unit(90, 1), new Unit(99, 1)), 1);
    assertThat(test.p()).isEqualTo(2.0 / 6);
    assertThat(test.least()).isEqualTo(2.0 / 6);
    assertThat(Permutation.between(List.of(), List.of(new Unit(1, 1)), 1)).isNull();
  }

  @Test
  void shouldCompareRoomsWithinTheirMorningsHoweverMuchMorningsDiffer() {
    SplittableRandom random = new SplittableRandom(6);
    List<Block> blocks = new ArrayList<>();
    for (int m = 0; m < 20; m++) {
      double morning = 200 * random.nextDouble();
      blocks.add(
          new Block(
              List.of(morning + 5 + random.nextDouble(), morning + 5 + random.nextDouble()),
              List.of(morning + random.nextDouble())));
    }
    blocks.add(new Block(List.of(3.0), List.of()));
    Permutation test = Permutation.within(blocks, 2);
    assertThat(test.difference()).isCloseTo(5, within(0.5));
    assertThat(test.p()).isLessThan(0.001);
    assertThat(Permutation.within(List.of(), 2)).isNull();
  }

  private static List<Unit> skewed(SplittableRandom random, int n, double scale) {
    List<Unit> units = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      units.add(new Unit(-scale * Math.log(1 - random.nextDouble()) * 3, 3));
    }
    return units;
  }

  /**
   * Wetherill and Brown, Statistical Process Control, 1991, pp. 212-218, data of a quality-control
   * package's help; the results are computed.
   */
  @Test
  void shouldTellWetherillAndBrownsCountsThatVaryTooMuch() {
    List<Integer> shares =
        List.of(
            12, 11, 18, 11, 10, 16, 9, 11, 14, 15, 11, 9, 10, 13, 12, 8, 12, 13, 10, 12, 13, 16, 12,
            18, 16, 10, 16, 10, 12, 14);
    Dispersion binomial = Dispersion.ofShares(shares, Collections.nCopies(30, 50));
    assertThat(binomial.ratio()).isCloseTo(.7644566, within(5e-8));
    assertThat(binomial.statistic()).isCloseTo(22.16924, within(5e-6));
    assertThat(binomial.p()).isCloseTo(.8131, within(5e-5));
    List<Integer> counts =
        List.of(
            11, 8, 13, 11, 13, 17, 25, 23, 11, 16, 9, 15, 10, 16, 12, 8, 9, 15, 4, 12, 12, 12, 15,
            17, 14, 17, 12, 12, 7, 16);
    Dispersion poisson = Dispersion.ofCounts(counts);
    assertThat(poisson.ratio()).isCloseTo(1.472203, within(5e-7));
    assertThat(poisson.statistic()).isCloseTo(42.69388, within(5e-6));
    assertThat(poisson.p()).isCloseTo(.04858, within(5e-6));
  }

  @Test
  void shouldTellNothingOfSpreadWhereThereIsNone() {
    assertThat(Dispersion.ofShares(List.of(3), List.of(5))).isNull();
    assertThat(Dispersion.ofShares(List.of(5, 5), List.of(5, 5))).isNull();
    assertThat(Dispersion.ofCounts(List.of(0, 0))).isNull();
  }

  /**
   * Hoff, A First Course in Bayesian Statistical Methods, 2009, pp. 73-76, wing lengths of midges;
   * the posterior is computed (the book prints 1.814 and .015 - from memory).
   */
  @Test
  void shouldLearnHoffsMidgesInAnyOrder() {
    List<Double> wings = List.of(1.64, 1.70, 1.72, 1.74, 1.82, 1.82, 1.82, 1.90, 2.08);
    NormalGamma prior = new NormalGamma(1.9, 1, 0.5, 0.005);
    NormalGamma after = prior.learned(wings);
    assertThat(after.mu()).isCloseTo(1.814, within(5e-7));
    assertThat(after.kappa()).isEqualTo(10);
    assertThat(after.alpha()).isEqualTo(5);
    assertThat(after.beta() / after.alpha()).isCloseTo(.0153240, within(5e-8));
    assertThat(after.scale()).isCloseTo(.129832, within(5e-7));
    assertThat(after.quantile(0.025)).isCloseTo(1.52472, within(5e-6));
    assertThat(after.quantile(0.975)).isCloseTo(2.10328, within(5e-6));
    NormalGamma one = prior;
    for (int i = wings.size() - 1; i >= 0; i--) {
      one = one.learned(List.of(wings.get(i)));
    }
    assertThat(one.mu()).isCloseTo(after.mu(), within(1e-12));
    assertThat(one.beta()).isCloseTo(after.beta(), within(1e-12));
    assertThat(one.learned(List.of())).isEqualTo(one);
  }

  /** With half a yes and half a no at both ends a fit on two points is their log odds. */
  @Test
  void shouldFitTheLogOddsOfTwoPoints() {
    Logistic.Cases cases = new Logistic.Cases();
    add(cases, 0, 10, 30);
    add(cases, 1, 45, 5);
    Logistic fit = cases.fit();
    assertThat(fit.at(0)).isCloseTo(10.5 / 41, within(1e-9));
    assertThat(fit.at(1)).isCloseTo(45.5 / 51, within(1e-9));
  }

  /** Greatest likelihood: what is foretold adds up to what came, for a and for b. */
  @Test
  void shouldForetellInSumWhatCame() {
    Logistic.Cases cases = new Logistic.Cases();
    SplittableRandom random = new SplittableRandom(8);
    double came = 1;
    double cameByX = 0.5;
    List<Double> xs = new ArrayList<>();
    for (int i = 0; i < 400; i++) {
      double x = random.nextInt(11) / 10.0;
      boolean yes = random.nextDouble() < 1 / (1 + Math.exp(2 - 5 * x));
      cases.add(x, yes);
      xs.add(x);
      came += yes ? 1 : 0;
      cameByX += yes ? x : 0;
    }
    Logistic fit = cases.fit();
    double foretold = fit.at(0) + fit.at(1);
    double foretoldByX = fit.at(1);
    for (double x : xs) {
      foretold += fit.at(x);
      foretoldByX += x * fit.at(x);
    }
    assertThat(foretold).isCloseTo(came, within(1e-6));
    assertThat(foretoldByX).isCloseTo(cameByX, within(1e-6));
  }

  @Test
  void shouldStayFiniteWhereAllWentOneWay() {
    Logistic.Cases cases = new Logistic.Cases();
    add(cases, 1, 200, 0);
    assertThat(cases.fit().at(1)).isBetween(0.99, 0.9999);
    assertThat(cases.fit().at(0)).isBetween(0.4, 0.6);
  }

  private static void add(Logistic.Cases cases, double x, int yes, int no) {
    for (int i = 0; i < yes + no; i++) {
      cases.add(x, i < yes);
    }
  }
}
