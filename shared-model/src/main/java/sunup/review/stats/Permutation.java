package sunup.review.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Permutation tests of two groups: how often would chance alone, dealing the labels anew, make a
 * difference as large as the one seen? Good for skewed minutes, as no shape is assumed. Two-sided.
 *
 * @param difference the one seen, first less second
 * @param p the chance; of dealt labels (1 + as large) / (1 + dealt), so that it is never 0 (B.
 *     Phipson and G. K. Smyth, Stat Appl Genet Mol Biol 9 (2010) art. 39)
 * @param exact true if all ways to deal were gone through
 * @param deals how many
 * @param least the smallest p that could have come out: above the level, nothing can be found
 */
public record Permutation(double difference, double p, boolean exact, int deals, double least) {
  /** Up to so many ways all of them are gone through. */
  static final int EXACT_MAX = 20_000;

  /** Else so many are dealt. */
  public static final int DEALS = 9_999;

  private static final double SAME = 1e-9;

  /** A unit that keeps together: the sum over its cases, and how many they are. */
  public record Unit(double sum, double count) {}

  /** A block of both groups: labels are dealt within it only. */
  public record Block(List<Double> first, List<Double> second) {}

  /**
   * Units (mornings) are in one group or in the other; the difference is that of the means per
   * case.
   *
   * @return null if one group is empty
   */
  public static Permutation between(List<Unit> first, List<Unit> second, long seed) {
    if (first.isEmpty() || second.isEmpty()) {
      return null;
    }
    List<Unit> all = new ArrayList<>(first);
    all.addAll(second);
    int n = all.size();
    int k = first.size();
    int[] order = new int[n];
    for (int i = 0; i < n; i++) {
      order[i] = i;
    }
    double seen = difference(all, order, k);
    double ways = ways(n, k);
    return ways <= EXACT_MAX ? exactly(all, k, seen, ways) : dealt(all, order, k, seen, ways, seed);
  }

  private static Permutation exactly(List<Unit> all, int k, double seen, double ways) {
    int n = all.size();
    int[] chosen = new int[n];
    for (int i = 0; i < n; i++) {
      chosen[i] = i;
    }
    int large = 0;
    int deals = 0;
    boolean more = true;
    while (more) {
      deals++;
      large += isAsLarge(difference(all, withRest(chosen, k, n), k), seen) ? 1 : 0;
      more = next(chosen, k, n);
    }
    return new Permutation(seen, (double) large / deals, true, deals, Math.min(1, 2 / ways));
  }

  private static int[] withRest(int[] chosen, int k, int n) {
    int[] order = new int[n];
    int at = k;
    int c = 0;
    for (int i = 0; i < n; i++) {
      if (c < k && chosen[c] == i) {
        order[c++] = i;
      } else {
        order[at++] = i;
      }
    }
    return order;
  }

  /** The next choice of k of n in order, or false after the last. */
  private static boolean next(int[] chosen, int k, int n) {
    int i = k - 1;
    while (i >= 0 && chosen[i] == n - k + i) {
      i--;
    }
    if (i < 0) {
      return false;
    }
    chosen[i]++;
    for (int j = i + 1; j < k; j++) {
      chosen[j] = chosen[j - 1] + 1;
    }
    return true;
  }

  private static Permutation dealt(
      List<Unit> all, int[] order, int k, double seen, double ways, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int large = 0;
    for (int d = 0; d < DEALS; d++) {
      for (int i = 0; i < k; i++) {
        int j = i + random.nextInt(order.length - i);
        int held = order[i];
        order[i] = order[j];
        order[j] = held;
      }
      large += isAsLarge(difference(all, order, k), seen) ? 1 : 0;
    }
    double least = Math.max(2 / ways, 1.0 / (DEALS + 1));
    return new Permutation(seen, (1.0 + large) / (DEALS + 1), false, DEALS, least);
  }

  private static double difference(List<Unit> all, int[] order, int k) {
    double[] sum = new double[2];
    double[] count = new double[2];
    for (int i = 0; i < order.length; i++) {
      Unit unit = all.get(order[i]);
      sum[i < k ? 0 : 1] += unit.sum();
      count[i < k ? 0 : 1] += unit.count();
    }
    return mean(sum[0], count[0]) - mean(sum[1], count[1]);
  }

  private static double mean(double sum, double count) {
    return count == 0 ? 0 : sum / count;
  }

  private static double ways(int n, int k) {
    double ways = 1;
    for (int i = 1; i <= Math.min(k, n - k); i++) {
      ways = ways * (n - Math.min(k, n - k) + i) / i;
    }
    return ways;
  }

  private static boolean isAsLarge(double dealt, double seen) {
    return Math.abs(dealt) >= Math.abs(seen) - SAME;
  }

  /**
   * Both groups stand in each block (rooms of one morning); the difference is the mean over blocks
   * of the difference of their means, and labels are dealt within blocks.
   *
   * @return null if no block has both
   */
  public static Permutation within(List<Block> blocks, long seed) {
    List<Dealt> dealt = new ArrayList<>();
    double least = 2;
    for (Block block : blocks) {
      if (!block.first().isEmpty() && !block.second().isEmpty()) {
        dealt.add(Dealt.of(block));
        least /= ways(block.first().size() + block.second().size(), block.first().size());
      }
    }
    if (dealt.isEmpty()) {
      return null;
    }
    double seen = dealt.stream().mapToDouble(Dealt::difference).sum() / dealt.size();
    SplittableRandom random = new SplittableRandom(seed);
    int large = 0;
    for (int d = 0; d < DEALS; d++) {
      double sum = 0;
      for (Dealt block : dealt) {
        block.deal(random);
        sum += block.difference();
      }
      large += isAsLarge(sum / dealt.size(), seen) ? 1 : 0;
    }
    return new Permutation(
        seen,
        (1.0 + large) / (DEALS + 1),
        false,
        DEALS,
        Math.min(1, Math.max(least, 1.0 / (DEALS + 1))));
  }

  /** The values of a block, the smaller group first, so that a deal draws as few as can be. */
  private static final class Dealt {
    final double[] values;
    final int few;
    final double total;
    final int sign;

    private Dealt(List<Double> smaller, List<Double> larger, int sign) {
      List<Double> all = new ArrayList<>(smaller);
      all.addAll(larger);
      values = all.stream().mapToDouble(Double::doubleValue).toArray();
      few = smaller.size();
      total = all.stream().mapToDouble(Double::doubleValue).sum();
      this.sign = sign;
    }

    static Dealt of(Block block) {
      return block.first().size() <= block.second().size()
          ? new Dealt(block.first(), block.second(), 1)
          : new Dealt(block.second(), block.first(), -1);
    }

    double difference() {
      double sum = 0;
      for (int i = 0; i < few; i++) {
        sum += values[i];
      }
      return sign * (sum / few - (total - sum) / (values.length - few));
    }

    void deal(SplittableRandom random) {
      for (int i = 0; i < few; i++) {
        int j = i + random.nextInt(values.length - i);
        double held = values[i];
        values[i] = values[j];
        values[j] = held;
      }
    }
  }
}
