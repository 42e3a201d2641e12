package sunup.review.charts;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collector;
import java.util.stream.Collectors;
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
  /** The points that are told. */
  public static final List<Double> QUANTILES = List.of(0.1, 0.25, 0.5, 0.75, 0.9);

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
    List<Double> points = QUANTILES.stream().map(q -> Quantiles.of(minutes, q)).toList();
    return of(minutes.size(), minutes.stream().collect(counts()), points);
  }

  private static Collector<Double, ?, Map<Integer, Integer>> counts() {
    return Collectors.toMap(Lateness::binOf, m -> 1, Integer::sum);
  }

  /** Which bin a start lies in that is so many minutes late; counted from the first, 0. */
  public static int binOf(double minutes) {
    int bin = (int) Math.floor((minutes - FROM) / WIDTH) + 1;
    return Math.max(0, Math.min((TO - FROM) / WIDTH + 1, bin));
  }

  /**
   * The same from what was counted.
   *
   * @param counts starts by bin, as {@link #binOf} numbers them
   * @param quantiles in the order of {@link #QUANTILES}
   */
  public static Lateness of(int starts, Map<Integer, Integer> counts, List<Double> quantiles) {
    if (Withheld.isWithheld(starts)) {
      return new Lateness(starts, null, null);
    }
    List<Bin> bins = new ArrayList<>();
    int at = 0;
    for (int from = FROM - WIDTH; from <= TO; from += WIDTH) {
      Integer low = from < FROM ? null : (Integer) from;
      Integer high = from >= TO ? null : (Integer) (from + WIDTH);
      bins.add(new Bin(low, high, counts.getOrDefault(at++, 0)));
    }
    return new Lateness(starts, bins, List.copyOf(quantiles));
  }
}
