package sunup.review.stats;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** P-values put right when many comparisons are looked at. Order is kept. */
public final class Corrections {
  private Corrections() {}

  /**
   * Holm's step-down: keeps the chance of even one wrong "differs" in the family under the level
   * (S. Holm, Scand J Stat 6 (1979) 65-70). What the review uses.
   */
  public static List<Double> holm(List<Double> p) {
    return adjusted(p, false);
  }

  /**
   * Benjamini and Hochberg's step-up: keeps the share of wrong ones among the "differs" under the
   * level (J R Stat Soc B 57 (1995) 289-300). For screening many places at once.
   */
  public static List<Double> benjaminiHochberg(List<Double> p) {
    return adjusted(p, true);
  }

  private static List<Double> adjusted(List<Double> p, boolean stepUp) {
    int n = p.size();
    List<Integer> order =
        IntStream.range(0, n).boxed().sorted(Comparator.comparing(p::get)).toList();
    Double[] out = new Double[n];
    double last = stepUp ? 1 : 0;
    for (int k = 0; k < n; k++) {
      int rank = stepUp ? n - 1 - k : k;
      int i = order.get(rank);
      double factor = stepUp ? (double) n / (rank + 1) : n - rank;
      double own = Math.min(1, p.get(i) * factor);
      last = stepUp ? Math.min(last, own) : Math.max(last, own);
      out[i] = last;
    }
    return new ArrayList<>(List.of(out));
  }
}
