package sunup.review.readings;

import java.util.Arrays;
import java.util.List;

/**
 * A reading that goes slowly to the worse over the last mornings: a leak that no single reading
 * shows, as each of them is still good.
 *
 * <p>The rule: of the last ten readings (at least six) since the machine was last renewed, more
 * pairs go to the worse than chance gives in one of {@link #ONE_IN} mornings (Mann 1945, Kendall:
 * exact, whatever the readings' scatter is), and the median pair's pace makes at least a tenth of
 * the good band's limit over them. Renewed: from one reading to the next it became better by three
 * tenths of the limit, as after a new cylinder or a mend.
 *
 * @param from the reading at the beginning of the line through them
 * @param to the reading at its end
 * @param perMorning change from one reading to the next, below 0 if it falls
 * @param mornings how many readings
 */
public record SlowChange(double from, double to, double perMorning, int mornings) {
  /**
   * Mornings for one false alarm of a reading whose order is chance, of one run of readings: where
   * a run begins is chosen by the readings, so that large scatter gives more (REVIEW.md).
   */
  public static final int ONE_IN = 500;

  /** Readings that are looked at. */
  public static final int READINGS_MAX = 10;

  static final int READINGS_MIN = 6;
  static final double CHANGE_SHARE = 0.1;
  static final double RENEWED_SHARE = 0.3;

  /** By number of readings: the least surplus of worse pairs that chance gives so seldom. */
  private static final int[] SURPLUS = surplus();

  /**
   * @param readings oldest first
   * @param low end of the good band or null: what falls towards it gets worse
   * @param high end of the good band or null: what rises towards it gets worse
   * @return null if there is no such change, or no band to say what is worse
   */
  static SlowChange of(List<Double> readings, Double low, Double high) {
    if ((low == null) == (high == null)) {
      return null;
    }
    // Turned so that more is worse.
    double sign = low == null ? 1 : -1;
    double limit = Math.abs(low == null ? high : low);
    double[] worse = run(readings.stream().mapToDouble(r -> sign * r).toArray(), limit);
    int n = worse.length;
    if (n < READINGS_MIN) {
      return null;
    }
    double[] paces = new double[n * (n - 1) / 2];
    int surplus = 0;
    int pair = 0;
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        surplus += (int) Math.signum(worse[j] - worse[i]);
        paces[pair++] = (worse[j] - worse[i]) / (j - i);
      }
    }
    double pace = median(paces);
    if (surplus < SURPLUS[n] || pace * (n - 1) < CHANGE_SHARE * limit) {
      return null;
    }
    double middle = median(worse.clone());
    double half = pace * (n - 1) / 2;
    return new SlowChange(sign * (middle - half), sign * (middle + half), sign * pace, n);
  }

  /** The last readings since it was renewed. */
  private static double[] run(double[] worse, double limit) {
    int from = Math.max(0, worse.length - READINGS_MAX);
    for (int i = from + 1; i < worse.length; i++) {
      if (worse[i] <= worse[i - 1] - RENEWED_SHARE * limit) {
        from = i;
      }
    }
    return Arrays.copyOfRange(worse, from, worse.length);
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    int half = values.length / 2;
    return values.length % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
  }

  private static int[] surplus() {
    int[] least = new int[READINGS_MAX + 1];
    for (int n = 2; n <= READINGS_MAX; n++) {
      double[] share = orders(n);
      int pairs = n * (n - 1) / 2;
      double tail = 0;
      int inversions = 0;
      while (inversions <= pairs && tail + share[inversions] <= 1.0 / ONE_IN) {
        tail += share[inversions++];
      }
      // With so many pairs the other way or fewer; none at all may still be too common.
      least[n] = pairs - 2 * (inversions - 1);
    }
    return least;
  }

  /** Of all orders of n different readings, the share with so many pairs the other way. */
  static double[] orders(int n) {
    double[] share = {1};
    for (int k = 2; k <= n; k++) {
      double[] next = new double[share.length + k - 1];
      for (int i = 0; i < share.length; i++) {
        for (int j = 0; j < k; j++) {
          next[i + j] += share[i] / k;
        }
      }
      share = next;
    }
    return share;
  }
}
