package sunup.forecast;

import java.util.Arrays;

/** Order statistics of one list of values, several at a time. Not thread-safe. */
final class Select {
  /** Buckets of equal width: the wanted ranks fall into a few, and only these are sorted. */
  private static final int BUCKETS = 256;

  private final int[] count = new int[BUCKETS + 1];
  private int[] bucket = new int[64];

  /** The rank, from 0, of the q-quantile of n values: the ceil(q n)-th smallest. */
  static int rank(int n, double q) {
    return Math.min(n, Math.max(1, (int) Math.ceil(q * n - 1e-9))) - 1;
  }

  /**
   * The q-quantiles of the first n values. {@link Moments#NONE} and its opposite are greatest and
   * least.
   *
   * @param out the i-th value gets the quantile of q[i]
   */
  void quantiles(int[] a, int n, double[] q, int[] out) {
    int least = Moments.NONE;
    int most = -Moments.NONE;
    for (int k = 0; k < n; k++) {
      int v = a[k];
      least = v == -Moments.NONE ? least : Math.min(least, v);
      most = v == Moments.NONE ? most : Math.max(most, v);
    }
    if (least >= most) {
      least = Math.min(least, most);
      most = least;
    }
    int shift = Math.max(0, 64 - 8 - Long.numberOfLeadingZeros((long) most - least));
    Arrays.fill(count, 0);
    for (int k = 0; k < n; k++) {
      count[index(a[k], least, most, shift)]++;
    }
    for (int i = 0; i < q.length; i++) {
      out[i] = one(a, n, rank(n, q[i]), least, most, shift);
    }
  }

  private static int index(int v, int least, int most, int shift) {
    return v > most ? BUCKETS : v < least ? 0 : (int) (((long) v - least) >> shift);
  }

  private int one(int[] a, int n, int rank, int least, int most, int shift) {
    int b = 0;
    int below = 0;
    while (below + count[b] <= rank) {
      below += count[b++];
    }
    if (bucket.length < count[b]) {
      bucket = new int[Math.max(count[b], 2 * bucket.length)];
    }
    int found = 0;
    for (int k = 0; k < n; k++) {
      if (index(a[k], least, most, shift) == b) {
        bucket[found++] = a[k];
      }
    }
    Arrays.sort(bucket, 0, found);
    return bucket[rank - below];
  }
}
