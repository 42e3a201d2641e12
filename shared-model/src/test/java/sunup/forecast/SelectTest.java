package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SelectTest {
  private static final double[] Q = {0.1, 0.5, 0.9};

  @Test
  void shouldFindWhatSortingFinds() {
    SplittableRandom random = new SplittableRandom(1);
    Select select = new Select();
    for (int tries = 0; tries < 3_000; tries++) {
      int n = random.nextInt(1, 300);
      int width = 1 << random.nextInt(0, 31);
      int[] a = new int[n];
      for (int k = 0; k < n; k++) {
        int what = random.nextInt(0, 12);
        a[k] =
            tries % 3 == 0 && what < 4
                ? Moments.NONE
                : tries % 5 == 0 && what < 6 ? -Moments.NONE : random.nextInt(-width, width);
      }
      int[] found = new int[Q.length];
      select.quantiles(a, n, Q, found);
      int[] sorted = a.clone();
      Arrays.sort(sorted);
      for (int q = 0; q < Q.length; q++) {
        int rank = Math.max(1, (int) Math.ceil(Q[q] * n - 1e-9)) - 1;
        assertThat(found[q]).as("n %d, %s", n, Q[q]).isEqualTo(sorted[rank]);
      }
    }
  }
}
