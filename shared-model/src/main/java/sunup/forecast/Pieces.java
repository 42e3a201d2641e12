package sunup.forecast;

/** Rule 6's arithmetic: late minutes in pieces that add up exactly. Whole milliseconds. */
final class Pieces {
  private Pieces() {}

  /**
   * Splits max(0, start - target) over a chain that tiles the time from its beginning to the start.
   *
   * @param begins the chain's beginning, B
   * @param target T
   * @param n elements
   * @param length of each element, first to last
   * @param allowed what was allowed for each
   * @param out the pieces: at 0 "plan too tight", at k the k-th element's; none is negative
   */
  static void split(long begins, long target, int n, long[] length, long[] allowed, long[] out) {
    long plan = 0;
    for (int k = 0; k < n; k++) {
      plan += allowed[k];
    }
    long l = begins - (target - plan);
    out[0] = Math.max(0, l);
    for (int k = 1; k <= n; k++) {
      long next = l + length[k - 1] - allowed[k - 1];
      out[k] = Math.max(0, next) - Math.max(0, l);
      l = next;
      long over = -out[k];
      if (over > 0) {
        out[k] = 0;
        for (int j = k - 1; over > 0; j--) {
          long taken = Math.min(out[j], over);
          out[j] -= taken;
          over -= taken;
        }
      }
    }
  }
}
