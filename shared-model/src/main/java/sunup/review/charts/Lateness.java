package sunup.review.charts;

import java.util.ArrayList;
import java.util.List;
import sunup.codec.Maybe;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;
import sunup.review.stats.Quantiles;

/**
 * How starts lie about their targets: start less target in minutes, negative if early.
 *
 * @param starts all of them
 * @param bins of five minutes from 30 early to 60 late, and one for all beyond on either side; null
 *     if there are too few starts: withheld
 * @param quantiles 10, 25, 50, 75 and 90 % points, or null
 */
public record Lateness(int starts, @Maybe List<Bin> bins, @Maybe List<Double> quantiles) {
  static final int WIDTH = 5;
  static final int FROM = -30;
  static final int TO = 60;

  /**
   * A bin.
   *
   * @param from minutes, inclusive; null of the first
   * @param to minutes, exclusive; null of the last
   */
  public record Bin(@Maybe Integer from, @Maybe Integer to, int starts) {}

  /** The distribution of these starts. */
  public static Lateness of(List<FirstCaseFact> facts) {
    List<Double> minutes =
        facts.stream()
            .filter(FirstCaseFact::hasStarted)
            .map(f -> (double) f.latenessMs() / FirstCaseFact.MINUTE)
            .toList();
    if (Withheld.isWithheld(minutes.size())) {
      return new Lateness(minutes.size(), null, null);
    }
    List<Bin> bins = new ArrayList<>();
    for (int from = FROM - WIDTH; from <= TO; from += WIDTH) {
      Integer low = from < FROM ? null : (Integer) from;
      Integer high = from >= TO ? null : (Integer) (from + WIDTH);
      int n =
          (int)
              minutes.stream()
                  .filter(m -> (low == null || m >= low) && (high == null || m < high))
                  .count();
      bins.add(new Bin(low, high, n));
    }
    List<Double> points =
        List.of(0.1, 0.25, 0.5, 0.75, 0.9).stream().map(q -> Quantiles.of(minutes, q)).toList();
    return new Lateness(minutes.size(), bins, points);
  }
}
