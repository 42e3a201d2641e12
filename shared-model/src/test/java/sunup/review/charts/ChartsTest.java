package sunup.review.charts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import sunup.review.charts.ShareChart.Counted;
import sunup.review.charts.ValueChart.Valued;

class ChartsTest {
  /** NIST/SEMATECH e-Handbook, 6.3.3.2: cans of orange juice (Montgomery), 30 samples of 50. */
  private static final List<Integer> CANS =
      List.of(
          12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9,
          12, 7, 13, 9, 6);

  /** A statistics package's handbook: circuits, 30 samples of 500; limits are computed. */
  private static final List<Integer> CIRCUITS =
      List.of(
          5, 6, 11, 6, 4, 9, 17, 10, 12, 9, 8, 7, 7, 15, 8, 18, 12, 16, 4, 7, 17, 12, 8, 7, 15, 6,
          8, 12, 7, 9);

  private static List<Counted> counted(List<Integer> x, int n) {
    return IntStream.range(0, x.size())
        .mapToObj(i -> new Counted("" + (i + 1), x.get(i), n))
        .toList();
  }

  /** NIST prints .4103 for the upper limit; by its own rule it is .41024. */
  @Test
  void shouldGiveTheHandbooksLimitsForCansOfOrangeJuice() {
    ShareChart chart = ShareChart.of(counted(CANS, 50), List.of());
    ShareChart.Point point = chart.points().get(0);
    assertThat(point.centre()).isCloseTo(.2313, within(5e-5));
    assertThat(point.plainUpper()).isCloseTo(.41024, within(5e-6));
    assertThat(point.plainLower()).isCloseTo(.0524, within(5e-5));
    assertThat(IntStream.range(0, 30).filter(i -> isOutside(chart.points().get(i))))
        .containsExactly(14, 22);
  }

  private static boolean isOutside(ShareChart.Point p) {
    return p.share() > p.plainUpper() || p.share() < p.plainLower();
  }

  @Test
  void shouldGiveTheLimitsWithoutTheTwoSamplesThatWereOut() {
    List<Integer> kept = new ArrayList<>(CANS);
    kept.remove(22);
    kept.remove(14);
    ShareChart.Point point = ShareChart.of(counted(kept, 50), List.of()).points().get(0);
    assertThat(point.centre()).isCloseTo(.2150, within(5e-5));
    assertThat(point.plainUpper()).isCloseTo(.3893, within(5e-5));
    assertThat(point.plainLower()).isCloseTo(.0407, within(5e-5));
  }

  @Test
  void shouldGiveTheLimitsForCircuits() {
    ShareChart.Point point = ShareChart.of(counted(CIRCUITS, 500), List.of()).points().get(0);
    assertThat(point.centre()).isCloseTo(.019467, within(5e-7));
    assertThat(point.plainUpper()).isCloseTo(.0380, within(5e-5));
    assertThat(point.plainLower()).isCloseTo(.00093, within(5e-6));
  }

  /** A textbook's chart of numbers: 50 lots of 200, share .0357: 7.14, 15.01 and 0. */
  @Test
  void shouldGiveTheTextbooksLimitsInNumbersAndNoneBelowNothing() {
    List<Integer> lots = new ArrayList<>(java.util.Collections.nCopies(50, 7));
    for (int i = 0; i < 7; i++) {
      lots.set(i, 8);
    }
    ShareChart.Point point = ShareChart.of(counted(lots, 200), List.of()).points().get(0);
    assertThat(200 * point.centre()).isCloseTo(7.14, within(1e-9));
    assertThat(200 * point.plainUpper()).isCloseTo(15.01, within(0.011));
    assertThat(point.plainLower()).isZero();
  }

  /**
   * Laney 2002 on both; the numbers are computed, no printed pair of data and limits was seen. With
   * them the two samples that were out are inside: the moving range holds the shift already.
   */
  @Test
  void shouldWidenLimitsWhereSharesVaryMoreThanChance() {
    ShareChart cans = ShareChart.of(counted(CANS, 50), List.of());
    ShareChart.Phase phase = cans.phases().get(0);
    assertThat(phase.adjusted()).isTrue();
    assertThat(phase.sigmaZ()).isCloseTo(1.660867, within(5e-7));
    assertThat(phase.dispersion().statistic()).isCloseTo(85.4093, within(5e-5));
    assertThat(phase.dispersion().p()).isCloseTo(1.8e-7, within(5e-9));
    assertThat(cans.points().get(0).upper()).isCloseTo(.528472, within(5e-7));
    assertThat(cans.points().get(0).lower()).isZero();
    assertThat(cans.signals()).noneMatch(s -> s.rule() == RunRule.BEYOND_LIMITS);

    ShareChart circuits = ShareChart.of(counted(CIRCUITS, 500), List.of());
    assertThat(circuits.phases().get(0).sigmaZ()).isCloseTo(1.385348, within(5e-7));
    assertThat(circuits.phases().get(0).dispersion().statistic()).isCloseTo(49.4419, within(5e-5));
    assertThat(circuits.phases().get(0).dispersion().p()).isCloseTo(.010365, within(5e-7));
    assertThat(circuits.points().get(0).upper()).isCloseTo(.045145, within(5e-7));
  }

  /** A review prints 17.1 and 11.3 % for sigma z 4.25, n 5,100, share .142; right: 20.4 and 8.0. */
  @Test
  void shouldNotSlipInTheFactorAsAPrintedExampleDid() {
    double sigma = Math.sqrt(.142 * .858 / 5_100);
    assertThat(.142 + 3 * sigma * 4.25).isCloseTo(.204, within(5e-4));
    assertThat(.142 - 3 * sigma * 4.25).isCloseTo(.080, within(5e-4));
  }

  @Test
  void shouldFindTheShiftOfTheCansWhenTheSeriesIsTooShortToWiden() {
    ShareChart chart = ShareChart.of(counted(CANS.subList(0, 19), 50), List.of());
    assertThat(chart.phases().get(0).adjusted()).isFalse();
    assertThat(chart.signals()).contains(new RunRule.Signal(RunRule.BEYOND_LIMITS, 14, 14));
  }

  @Test
  void shouldGiveAPeriodWithoutCasesNoShareAndNoSignal() {
    ShareChart chart =
        ShareChart.of(
            List.of(new Counted("a", 3, 10), new Counted("b", 0, 0), new Counted("c", 9, 10)),
            List.of());
    assertThat(chart.points().get(1).share()).isNull();
    assertThat(chart.signals()).isEmpty();
    assertThat(ShareChart.of(List.of(), List.of()).points()).isEmpty();
  }

  @Test
  void shouldComputeAnewFromAMarkedChange() {
    List<Counted> counted = new ArrayList<>(counted(List.of(5, 5, 6, 4), 10));
    counted.addAll(counted(List.of(9, 8, 9, 10), 10));
    ShareChart chart = ShareChart.of(counted, List.of(4));
    assertThat(chart.phases()).extracting(ShareChart.Phase::centre).containsExactly(.5, .9);
    assertThat(chart.points().get(3).centre()).isEqualTo(.5);
    assertThat(chart.points().get(4).centre()).isEqualTo(.9);
  }

  @Property
  void shouldKeepLimitsAroundTheCentreAndWiderWhereCasesAreFewer(
      @ForAll @Size(min = 1, max = 40) List<@IntRange(min = 0, max = 60) Integer> n,
      @ForAll @IntRange(min = 0, max = 60) int most) {
    List<Counted> counted =
        IntStream.range(0, n.size())
            .mapToObj(i -> new Counted("" + i, Math.min(most, n.get(i)) / 2, n.get(i)))
            .toList();
    for (ShareChart.Point a : ShareChart.of(counted, List.of()).points()) {
      assertThat(a.lower()).isBetween(0.0, a.centre());
      assertThat(a.upper()).isBetween(a.centre(), 1.0);
      assertThat(a.lower()).isLessThanOrEqualTo(a.plainLower());
      for (ShareChart.Point b : ShareChart.of(counted, List.of()).points()) {
        if (a.n() > b.n()) {
          assertThat(a.upper()).isLessThanOrEqualTo(b.upper() + 1e-12);
        }
      }
    }
  }

  private static List<Valued> valued(double... values) {
    return Arrays.stream(values).mapToObj(v -> new Valued("", v)).toList();
  }

  private static final double NONE = Double.NEGATIVE_INFINITY;
  private static final double[] FLOW = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

  /** NIST/SEMATECH e-Handbook, 6.3.2.2; the range's limit is computed. */
  @Test
  void shouldGiveTheHandbooksLimitsForIndividuals() {
    ValueChart.Phase phase =
        ValueChart.of(valued(FLOW), List.of(), RunRule.NELSON, NONE).phases().get(0);
    assertThat(phase.centre()).isCloseTo(50.81, within(1e-9));
    assertThat(phase.meanRange()).isCloseTo(1.8778, within(5e-5));
    assertThat(phase.upper()).isCloseTo(55.8041, within(5e-5));
    assertThat(phase.lower()).isCloseTo(45.8159, within(5e-5));
    assertThat(phase.rangeUpper()).isCloseTo(6.135, within(5e-4));
  }

  /** A textbook's exercise: mean 53.05, mean range 2.947 give 60.888, 45.212 and 9.628. */
  @Test
  void shouldGiveTheTextbooksLimitsForItsMeanAndRange() {
    double[] values = new double[2_001];
    for (int i = 0; i < values.length; i++) {
      values[i] = 53.05 + (i % 2 == 0 ? 2.947 : -2.947) / 2;
    }
    ValueChart.Phase phase =
        ValueChart.of(valued(values), List.of(), RunRule.NELSON, NONE).phases().get(0);
    assertThat(phase.upper()).isCloseTo(60.888, within(2e-3));
    assertThat(phase.lower()).isCloseTo(45.212, within(2e-3));
    assertThat(phase.rangeUpper()).isCloseTo(9.628, within(5e-4));
  }

  /** Jet engines, a textbook's data; limits are computed. */
  @Test
  void shouldGiveTheLimitsForJetEngines() {
    ValueChart.Phase phase =
        ValueChart.of(
                valued(
                    78.4, 80.1, 84.4, 79.1, 80.4, 83.5, 73.8, 83.5, 75.0, 76.8, 70.5, 80.3, 82.4,
                    79.4, 86.4, 90.5, 77.7, 82.5, 79.9, 83.2),
                List.of(),
                RunRule.NELSON,
                NONE)
            .phases()
            .get(0);
    assertThat(phase.centre()).isCloseTo(80.39, within(5e-3));
    assertThat(phase.meanRange()).isCloseTo(5.326, within(5e-4));
    assertThat(phase.upper()).isCloseTo(94.55, within(6e-3));
    assertThat(phase.lower()).isCloseTo(66.23, within(6e-3));
    assertThat(phase.rangeUpper()).isCloseTo(17.40, within(5e-3));
  }

  /** NIST/SEMATECH e-Handbook, 6.3.2.4: weight .3, target 50, the ten before and the ten above. */
  @Test
  void shouldGiveTheHandbooksSmoothedValues() {
    double[] first = {52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5};
    double[] all = Arrays.copyOf(first, 20);
    System.arraycopy(FLOW, 0, all, 10, 10);
    SmoothedChart chart = SmoothedChart.of(valued(all), 50, 2.0539, .3);
    double[] printed = {
      50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52,
      50.05, 49.38
    };
    for (int i = 0; i < printed.length; i++) {
      assertThat(chart.points().get(i).average()).isCloseTo(printed[i], within(6e-3));
    }
    assertThatThrownBy(() -> SmoothedChart.of(List.of(), 0, 1, 0)).hasMessageContaining("weight");
  }

  @Test
  void shouldNotReachOverAMarkedChangeNorBelowWhatIsPossible() {
    ValueChart chart =
        ValueChart.of(valued(3, 6, 4, 90, 92, 91), List.of(3), RunRule.WESTERN_ELECTRIC, 0);
    assertThat(chart.phases().get(0).lower()).isZero();
    assertThat(chart.phases().get(0).meanRange()).isEqualTo(2.5);
    assertThat(chart.points().get(3).range()).isNull();
    assertThat(chart.phases().get(1).centre()).isEqualTo(91);
    assertThat(chart.signals()).isEmpty();
  }

  @Test
  void shouldTellARunThatGoesOnAsOneSign() {
    List<Double> z = new ArrayList<>(Collections.nCopies(12, 0.5));
    z.addAll(Collections.nCopies(9, -0.5));
    z.addAll(List.of(2.5, 2.5, 0.1, -2.5, -2.5, 3.5, 3.5));
    assertThat(RunRule.signals(List.of(RunRule.EIGHT_ON_ONE_SIDE), z))
        .containsExactly(
            new RunRule.Signal(RunRule.EIGHT_ON_ONE_SIDE, 0, 11),
            new RunRule.Signal(RunRule.EIGHT_ON_ONE_SIDE, 12, 20));
    assertThat(RunRule.signals(RunRule.WESTERN_ELECTRIC, z))
        .filteredOn(s -> s.rule() == RunRule.TWO_OF_THREE_BEYOND_TWO_SIGMA)
        .extracting(RunRule.Signal::to)
        .containsExactly(22, 25, 27);
    assertThat(RunRule.signals(List.of(RunRule.BEYOND_LIMITS), z))
        .as("each point beyond is one of its own")
        .hasSize(2);
  }

  /** Falls to its third point and rises from there: the point where it turns is of both runs. */
  @Test
  void shouldCountThePointWhereARunTurnsAndTellBothRuns() {
    List<RunRule> rule = List.of(RunRule.SIX_RISING_OR_FALLING);
    assertThat(RunRule.signals(rule, List.of(3., 2., 1., 2., 3., 4., 5., 6.)))
        .containsExactly(new RunRule.Signal(RunRule.SIX_RISING_OR_FALLING, 2, 7));
    assertThat(RunRule.signals(rule, List.of(3., 2., 1., 2., 3., 4., 5.))).isEmpty();
    assertThat(RunRule.signals(rule, List.of(1., 2., 3., 4., 5., 6., 7., 6., 5., 4., 3., 2.)))
        .containsExactly(
            new RunRule.Signal(RunRule.SIX_RISING_OR_FALLING, 0, 6),
            new RunRule.Signal(RunRule.SIX_RISING_OR_FALLING, 6, 11));
  }

  /** Nelson 1984: none of the tests alarms falsely at more than five points in a thousand. */
  @Test
  void shouldAlarmAtOneOfThreeHundredAndSixtyOrdersOfSixPoints() {
    List<List<Double>> orders = List.of(List.of());
    for (double next = 1; next <= 6; next++) {
      double value = next;
      orders =
          orders.stream()
              .flatMap(o -> IntStream.rangeClosed(0, o.size()).mapToObj(at -> with(o, at, value)))
              .toList();
    }
    assertThat(orders).hasSize(720);
    List<RunRule> rule = List.of(RunRule.SIX_RISING_OR_FALLING);
    assertThat(orders).filteredOn(o -> !RunRule.signals(rule, o).isEmpty()).hasSize(2);
  }

  private static List<Double> with(List<Double> others, int at, double value) {
    List<Double> list = new ArrayList<>(others);
    list.add(at, value);
    return list;
  }

  private static boolean meets(RunRule rule, double... z) {
    List<Double> list = Arrays.stream(z).boxed().toList();
    return RunRule.signals(List.of(rule), list).stream().anyMatch(s -> s.to() == z.length - 1);
  }

  /** Each rule at its length and one short of it: Nelson 1984, Western Electric 1956. */
  @Test
  void shouldTellARunAtTheLengthOfItsRuleAndNotBefore() {
    double[] up = {.1, .1, .1, .1, .1, .1, .1, .1, .1};
    assertThat(meets(RunRule.NINE_ON_ONE_SIDE, up)).isTrue();
    assertThat(meets(RunRule.NINE_ON_ONE_SIDE, Arrays.copyOf(up, 8))).isFalse();
    assertThat(meets(RunRule.EIGHT_ON_ONE_SIDE, Arrays.copyOf(up, 8))).isTrue();
    assertThat(meets(RunRule.EIGHT_ON_ONE_SIDE, .1, .1, .1, .1, .1, 0, .1, .1)).isFalse();
    assertThat(meets(RunRule.BEYOND_LIMITS, 3)).isFalse();
    assertThat(meets(RunRule.BEYOND_LIMITS, -3.01)).isTrue();
    assertThat(meets(RunRule.SIX_RISING_OR_FALLING, 1, 2, 3, 4, 5, 6)).isTrue();
    assertThat(meets(RunRule.SIX_RISING_OR_FALLING, 1, 2, 3, 3, 5, 6)).isFalse();
    assertThat(meets(RunRule.TWO_OF_THREE_BEYOND_TWO_SIGMA, 2.1, 0, 2.1)).isTrue();
    assertThat(meets(RunRule.TWO_OF_THREE_BEYOND_TWO_SIGMA, 2.1, 0, -2.1)).isFalse();
    assertThat(meets(RunRule.TWO_OF_THREE_BEYOND_TWO_SIGMA, 2.1, 2.1, 0)).isFalse();
    assertThat(meets(RunRule.FOUR_OF_FIVE_BEYOND_ONE_SIGMA, -2, -2, 0, -2, -1.1)).isTrue();
    assertThat(meets(RunRule.FOUR_OF_FIVE_BEYOND_ONE_SIGMA, -2, -2, 0, -2, -1)).isFalse();
    double[] turns = new double[14];
    double[] calm = new double[15];
    for (int i = 0; i < 14; i++) {
      turns[i] = i % 2;
      calm[i] = (i % 3 - 1) * .9;
    }
    assertThat(meets(RunRule.FOURTEEN_ALTERNATING, turns)).isTrue();
    assertThat(meets(RunRule.FOURTEEN_ALTERNATING, Arrays.copyOf(turns, 13))).isFalse();
    assertThat(meets(RunRule.FIFTEEN_WITHIN_ONE_SIGMA, calm)).isTrue();
    assertThat(meets(RunRule.EIGHT_OUTSIDE_ONE_SIGMA, 2, -2, 2, -2, 2, 2, 2, 2)).isTrue();
    assertThat(meets(RunRule.EIGHT_OUTSIDE_ONE_SIGMA, 2, 2, 2, 2, 2, 2, 2, 2)).isFalse();
  }

  /**
   * How long until a false alarm: 370 points by the limits alone, 91.75 by the four rules of
   * Western Electric (Champ and Woodall, Technometrics 29 (1987) 393-399, as NIST/SEMATECH quote
   * it).
   */
  @Test
  void shouldAlarmFalselyAsSeldomAsPublished() {
    SplittableRandom random = new SplittableRandom(1);
    assertThat(meanRun(random, List.of(RunRule.BEYOND_LIMITS), 2_000))
        .isCloseTo(370.4, within(30.0));
    assertThat(meanRun(random, RunRule.WESTERN_ELECTRIC, 4_000)).isCloseTo(91.75, within(4.5));
  }

  private static double meanRun(SplittableRandom random, List<RunRule> rules, int runs) {
    long points = 0;
    for (int run = 0; run < runs; run++) {
      List<Double> window = new ArrayList<>();
      boolean alarm = false;
      while (!alarm) {
        points++;
        window.add(sunup.forecast.Normal.quantile(random.nextDouble()));
        if (window.size() > 8) {
          window.remove(0);
        }
        int last = window.size() - 1;
        alarm = RunRule.signals(rules, window).stream().anyMatch(s -> s.to() == last);
      }
    }
    return (double) points / runs;
  }
}
