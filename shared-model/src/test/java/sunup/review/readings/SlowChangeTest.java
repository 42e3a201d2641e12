package sunup.review.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** A slow leak is told, chance and a new cylinder are not. */
class SlowChangeTest {
  private static final double LOW = 1000;

  /** What a gauge is read to, psi; common practice. */
  private static final double SCATTER = 25;

  private static final int MORNINGS = 40_000;

  private static SlowChange cylinder(double... psi) {
    return SlowChange.of(DoubleStream.of(psi).boxed().toList(), LOW, null);
  }

  @Test
  void shouldTellACylinderThatFallsAlittleEachMorningThoughEachReadingIsGood() {
    SlowChange slow = cylinder(1900, 1870, 1850, 1820, 1790, 1760, 1740, 1710);
    assertThat(slow.mornings()).isEqualTo(8);
    assertThat(slow.perMorning()).isBetween(-29.0, -25.0);
    assertThat(slow.from()).isBetween(1880.0, 1920.0);
    assertThat(slow.to()).isBetween(1690.0, 1730.0);
  }

  @Test
  void shouldTellALeakThatRisesTowardsItsLimit() {
    List<Double> leak = List.of(40.0, 45.0, 45.0, 55.0, 60.0, 62.0, 70.0, 80.0);
    assertThat(SlowChange.of(leak, null, 150.0).perMorning()).isBetween(4.0, 8.0);
    assertThat(SlowChange.of(leak, 150.0, null)).isNull();
  }

  @Test
  void shouldSayNothingOfFewReadingsOfSteadyOnesOrWithoutABand() {
    assertThat(cylinder(1900, 1800, 1700, 1600, 1500)).isNull();
    assertThat(cylinder(1900, 1900, 1900, 1900, 1900, 1900, 1900, 1900)).isNull();
    assertThat(cylinder(1900, 1899, 1898, 1897, 1896, 1895, 1894, 1893)).isNull();
    List<Double> falling = List.of(9.0, 8.0, 7.0, 6.0, 5.0, 4.0, 3.0);
    assertThat(SlowChange.of(falling, null, null)).isNull();
    assertThat(SlowChange.of(falling, 1.0, 9.0)).isNull();
  }

  @Test
  void shouldBeginAnewAfterANewCylinder() {
    assertThat(cylinder(1300, 1270, 1240, 1210, 1180, 2000, 1990, 2000)).isNull();
    assertThat(cylinder(1000, 1300, 2000, 1960, 1930, 1900, 1870, 1830).mornings()).isEqualTo(6);
  }

  /** Orders of 4 with 0, 1, 2, ... pairs the other way: 1, 3, 5, 6, 5, 3, 1 of 24 (Mahonian). */
  @Test
  void shouldCountTheOrdersThatChanceGives() {
    double[] four = SlowChange.orders(4);
    assertThat(four).hasSize(7);
    assertThat(four[2] * 24).isEqualTo(5, org.assertj.core.api.Assertions.within(1e-9));
    double sum = DoubleStream.of(SlowChange.orders(10)).sum();
    assertThat(sum).isEqualTo(1, org.assertj.core.api.Assertions.within(1e-9));
  }

  /** The page states what is measured here. */
  @Test
  void shouldKeepToItsStatedFalseAlarmsAndSeeALeakInTime() {
    Random random = new Random(7);
    for (double scatter : new double[] {SCATTER, 60, 100}) {
      double steady = alarms(random, scatter);
      assertThat(steady).as("steady, " + scatter).isLessThanOrEqualTo(1.0 / SlowChange.ONE_IN);
    }
    assertThat(until(random, 60)).as("60 psi a morning").isLessThan(6);
    assertThat(until(random, 30)).as("30 psi a morning").isLessThan(7);
    assertThat(until(random, 15)).as("15 psi a morning").isLessThan(11);
  }

  private static double reading(Random random, double psi, double scatter) {
    return Math.round((psi + scatter * random.nextGaussian()) / 10) * 10.0;
  }

  /** Share of mornings with an alarm. */
  private static double alarms(Random random, double scatter) {
    List<Double> all = new ArrayList<>();
    int told = 0;
    for (int i = 0; i < MORNINGS; i++) {
      all.add(reading(random, 1900, scatter));
      List<Double> last = all.subList(Math.max(0, all.size() - 12), all.size());
      told += SlowChange.of(last, LOW, null) == null ? 0 : 1;
    }
    return (double) told / MORNINGS;
  }

  /** Mean mornings from the first leaking one until it is told, after ten steady ones. */
  private static double until(Random random, double leak) {
    int sum = 0;
    int times = 400;
    for (int t = 0; t < times; t++) {
      List<Double> all = new ArrayList<>();
      for (int i = 0; i < 10; i++) {
        all.add(reading(random, 2000, SCATTER));
      }
      int days = 0;
      do {
        days++;
        all.add(reading(random, 2000 - leak * days, SCATTER));
      } while (days < 60 && SlowChange.of(all, LOW, null) == null);
      sum += days;
    }
    return (double) sum / times;
  }
}
