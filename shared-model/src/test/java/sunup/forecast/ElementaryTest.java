package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Against the JDK's port of fdlibm, which promises less than one unit in the last place. */
class ElementaryTest {
  private static final int TRIES = 2_000_000;

  private static void near(double mine, double theirs, double x) {
    double ulps = Math.abs(mine - theirs) / Math.ulp(theirs);
    if (!(ulps <= 2)) {
      assertThat(mine).as("%s units off at %s", ulps, x).isEqualTo(theirs);
    }
  }

  @Test
  void shouldRaiseEToAPowerWithinTwoUnits() {
    SplittableRandom random = new SplittableRandom(1);
    for (int n = 0; n < TRIES; n++) {
      double x = random.nextDouble(-40, 40);
      near(Elementary.exp(x), StrictMath.exp(x), x);
    }
    for (double x : new double[] {0, -0.0, 1, -1, 699.9, -699.9, 701, -745, 710, Double.NaN}) {
      double theirs = StrictMath.exp(x);
      if (theirs > 0 && theirs < Double.POSITIVE_INFINITY) {
        near(Elementary.exp(x), theirs, x);
      } else {
        assertThat(Double.compare(Elementary.exp(x), theirs)).as("at %s", x).isZero();
      }
    }
  }

  @Test
  void shouldTakeALogarithmWithinTwoUnits() {
    SplittableRandom random = new SplittableRandom(2);
    for (int n = 0; n < TRIES; n++) {
      double small = random.nextDouble(0x1p-54, 1);
      near(Elementary.log(small), StrictMath.log(small), small);
      double any = StrictMath.exp(random.nextDouble(-300, 300));
      near(Elementary.log(any), StrictMath.log(any), any);
    }
    assertThat(Elementary.log(1)).isZero();
  }
}
