package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.forecast.Mornings.MINUTE;

import org.junit.jupiter.api.Test;

class DrawsTest {
  /** Odeh and Evans, Applied Statistics 23 (1974), and any printed table of the normal. */
  @Test
  void shouldGiveThePrintedQuantilesOfTheNormal() {
    double[][] table = {
      {0.5, 0},
      {0.9, 1.2815515655446004},
      {0.95, 1.6448536269514722},
      {0.975, 1.959963984540054},
      {0.99, 2.3263478740408408},
      {0.999, 3.090232306167813},
      {1e-4, -3.719016485455709},
      {1e-9, -5.997807015007182}
    };
    for (double[] row : table) {
      assertThat(Normal.quantile(row[0])).isCloseTo(row[1], within(1e-9));
      assertThat(Normal.lower(row[1])).isCloseTo(row[0], within(1e-9));
    }
  }

  @Test
  void shouldComeBackFromTheTailToTheSamePoint() {
    for (double z = -6; z <= 8; z += 0.37) {
      assertThat(Normal.upperQuantile(Normal.upper(z))).isCloseTo(z, within(2e-6));
    }
  }

  /**
   * Log-normal with mean 21 and SD 16 minutes (Escobar 2006, anaesthesia release): what is left
   * after t minutes; computed from E[T - t | T > t] and printed in the project's check values.
   */
  @Test
  void shouldDrawWhatIsLeftOfAnItemInHand() {
    double usual = StrictMath.exp(2.8157);
    double oneInTen = StrictMath.exp(2.8157 + 1.2816 * 0.6766);
    Dist d =
        new Dist(new Draw.LogNormal(Math.round(usual * MINUTE), Math.round(oneInTen * MINUTE)));
    double[][] table = {
      {0, 1, 21, 16.704, .2241},
      {10, .7759, 15.018, 10.252, .4908},
      {20, .3951, 15.043, 9.697, .5105},
      {30, .1934, 16.159, 10.270, .4911},
      {40, .0984, 17.526, 11.099, .4659},
      {60, .0294, 20.401, 12.926, .4181}
    };
    int n = 200_000;
    for (double[] row : table) {
      long elapsed = Math.round(row[0] * MINUTE);
      assertThat(d.upper(elapsed)).isCloseTo(row[1], within(2e-4));
      assertThat(d.remaining(0.5, elapsed) / (double) MINUTE).isCloseTo(row[3], within(0.01));
      double sum = 0;
      int soon = 0;
      for (int i = 0; i < n; i++) {
        long left = d.remaining((i + 0.5) / n, elapsed);
        sum += left;
        soon += left <= 10 * MINUTE ? 1 : 0;
      }
      assertThat(sum / n / MINUTE).isCloseTo(row[2], within(0.03));
      assertThat((double) soon / n).isCloseTo(row[4], within(1e-3));
    }
  }

  @Test
  void shouldTakeNoItemForLaterThanOneInTenThousand() {
    Dist d = new Dist(new Draw.LogNormal(MINUTE, 2 * MINUTE));
    long cap = Math.round(MINUTE * StrictMath.exp(3.719016 * StrictMath.log(2) / 1.2816));
    assertThat(d.remaining(0.5, 100 * cap)).isCloseTo(d.remaining(0.5, cap), within(50L));
  }

  @Test
  void shouldKeepTheTwoNumbersOfTheSheet() {
    Dist d = new Dist(new Draw.LogNormal(7 * MINUTE, 14 * MINUTE));
    assertThat(d.at(0.5)).isCloseTo(7 * MINUTE, within(1L));
    assertThat(d.atNormal(1.2816)).isCloseTo(14 * MINUTE, within(1L));
  }

  /** Malcolm, Roseboom, Clark and Fazar, Operations Research 7 (1959): mean (a + 4m + b) / 6. */
  @Test
  void shouldGiveThreePointDurationsTheirMean() {
    Dist d = new Dist(new Draw.ThreePoint(MINUTE, 4 * MINUTE, 10 * MINUTE));
    double sum = 0;
    int n = 2000;
    for (int i = 0; i < n; i++) {
      sum += d.at((i + 0.5) / n);
    }
    assertThat(sum / n / MINUTE).isCloseTo((1 + 4 * 4 + 10) / 6.0, within(0.003));
  }

  @Test
  void shouldCallAnItemForgottenByRuleThree() {
    Dist d = new Dist(new Draw.LogNormal(MINUTE, 2 * MINUTE));
    assertThat(d.forgotten(0.03, 0)).isCloseTo(0.03, within(1e-12));
    assertThat(d.forgotten(0.03, MINUTE)).isCloseTo(0.03 / (0.03 + 0.97 * 0.5), within(1e-9));
    assertThat(d.forgotten(0.03, 600 * MINUTE)).isEqualTo(0.9);
  }

  @Test
  void shouldHashNamesTheSameOnEveryMachine() {
    // FNV-1a of "a" and "foobar": Fowler, Noll and Vo, the published 64-bit test vectors.
    assertThat(Hash.text("a")).isEqualTo(0xaf63dc4c8601ec8cL);
    assertThat(Hash.text("foobar")).isEqualTo(0x85944171f73967e8L);
    // SplitMix64 seeded with 1234567: Steele, Lea and Flood's generator, as widely printed.
    assertThat(Hash.mix(1234567 + 0x9E3779B97F4A7C15L)).isEqualTo(6457827717110365317L);
    assertThat(Hash.mix(1234567 + 0x3C6EF372FE94F82AL)).isEqualTo(3203168211198807973L);
  }

  @Test
  void shouldDrawUniformly() {
    long stream = Hash.stream(Hash.scope(1, "room:1", "item:a"), Hash.HANDS, 0);
    int[] bins = new int[20];
    int n = 200_000;
    for (int i = 0; i < n; i++) {
      bins[(int) (Hash.uniform(stream, i) * 20)]++;
    }
    double chi = 0;
    for (int b : bins) {
      chi += Math.pow(b - n / 20.0, 2) / (n / 20.0);
    }
    assertThat(chi).isLessThan(43.8); // chi-square with 19 degrees of freedom, 0.1 %
  }
}
