package sunup.review;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import sunup.board.MorningId;
import sunup.codec.Maybe;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;
import sunup.review.stats.Clusters;
import sunup.review.stats.Corrections;
import sunup.review.stats.Interval;
import sunup.review.stats.Permutation;
import sunup.review.stats.Permutation.Block;
import sunup.review.stats.Permutation.Unit;
import sunup.review.stats.Resampling;

/**
 * Two sets of starts compared: periods, rooms, services. The unit is the morning, as the starts of
 * one morning go together. Where the two share no morning (periods, weekdays), whole mornings are
 * dealt anew; where they share some (rooms, services), starts are dealt within each shared morning
 * and the others are left out. Tests are permutation tests: minutes late are skewed.
 *
 * @param first name of the one
 * @param second name of the other
 * @param design how mornings were used
 * @param firstStarts starts of the one that the tests used
 * @param secondStarts of the other
 * @param mornings that the tests used
 * @param onTime first less second in on-time share, under each morning's own grace; 0.1 is ten in a
 *     hundred
 * @param minutes first less second in mean minutes late per start
 */
public record Comparison(
    String first,
    String second,
    Design design,
    int firstStarts,
    int secondStarts,
    int mornings,
    Difference onTime,
    Difference minutes) {
  /** Fewer mornings on either side say nothing. */
  public static final int LEAST_MORNINGS = 5;

  /** A chance up to this, after correction, is called a difference. */
  public static final double LEVEL = 0.05;

  /** How mornings were used. */
  public enum Design {
    BETWEEN_MORNINGS,
    WITHIN_MORNINGS
  }

  /** What can be said. */
  public enum Verdict {
    TOO_FEW,
    /** The interval says how large a difference can hide. Never "no difference". */
    NONE_SEEN,
    DIFFERS
  }

  /**
   * A difference, first less second.
   *
   * @param verdict after correction if this was one of many
   * @param value null if too few
   * @param newcombe of shares between mornings: Newcombe's interval as if starts were independent,
   *     else null
   * @param interval 95 %, by mornings: Newcombe's at the effective numbers for shares between
   *     mornings, else from mornings drawn anew; null if too few
   * @param p by permutation, or null
   * @param adjusted by Holm for all that were looked at together, or null; of one alone p itself
   */
  public record Difference(
      Verdict verdict,
      @Maybe Double value,
      @Maybe Interval newcombe,
      @Maybe Interval interval,
      @Maybe Double p,
      @Maybe Double adjusted) {
    public static final Difference TOO_FEW =
        new Difference(Verdict.TOO_FEW, null, null, null, null, null);

    /** The same with its chance corrected. */
    public Difference adjusted(double by) {
      Verdict then = by <= LEVEL ? Verdict.DIFFERS : Verdict.NONE_SEEN;
      return new Difference(then, value, newcombe, interval, p, by);
    }
  }

  /**
   * What a comparison needs of one start; {@code onTime} under its morning's own grace. Those of
   * which nobody knows whether they were on time are left out of both differences.
   */
  public record Start(MorningId morning, boolean onTime, double lateMinutes) {
    /** The starts among these cases. */
    public static List<Start> of(List<FirstCaseFact> facts) {
      return facts.stream()
          .filter(FirstCaseFact::judged)
          .map(f -> new Start(f.morning(), f.onTime(), f.lateMinutes()))
          .toList();
    }
  }

  /**
   * Compares two sets of starts.
   *
   * @param seed of the dealing and drawing; equal seeds give equal figures
   */
  public static Comparison of(
      String first, List<FirstCaseFact> one, String second, List<FirstCaseFact> other, long seed) {
    return ofStarts(first, Start.of(one), second, Start.of(other), seed);
  }

  /** The same of starts that were taken from facts before. */
  public static Comparison ofStarts(
      String first, List<Start> one, String second, List<Start> other, long seed) {
    Map<MorningId, List<Start>> ones = byMorning(one);
    Map<MorningId, List<Start>> others = byMorning(other);
    Set<MorningId> all = new HashSet<>(ones.keySet());
    all.addAll(others.keySet());
    if (all.size() > ComparisonSums.DEALT_MOST) {
      ComparisonSums sums = ComparisonSums.of(ones, others);
      if (!sums.askForDealing()) {
        return sums.compare(first, second);
      }
    }
    Set<MorningId> shared = new TreeSet<>((a, b) -> a.toString().compareTo(b.toString()));
    shared.addAll(ones.keySet());
    shared.retainAll(others.keySet());
    Design design = shared.isEmpty() ? Design.BETWEEN_MORNINGS : Design.WITHIN_MORNINGS;
    if (design == Design.WITHIN_MORNINGS) {
      ones.keySet().retainAll(shared);
      others.keySet().retainAll(shared);
    }
    int n = count(ones);
    int m = count(others);
    boolean few =
        Withheld.isWithheld(n)
            || Withheld.isWithheld(m)
            || ones.size() < LEAST_MORNINGS
            || others.size() < LEAST_MORNINGS;
    Difference onTime = Difference.TOO_FEW;
    Difference minutes = Difference.TOO_FEW;
    if (!few) {
      ToDoubleFunction<Start> isOnTime = f -> f.onTime() ? 1 : 0;
      if (design == Design.WITHIN_MORNINGS) {
        onTime = within(ones, others, isOnTime, seed);
        minutes = within(ones, others, Start::lateMinutes, seed + 1);
      } else {
        onTime = shares(ones, others, isOnTime, seed);
        minutes = between(ones, others, Start::lateMinutes, seed + 1);
      }
    }
    int mornings = design == Design.WITHIN_MORNINGS ? shared.size() : ones.size() + others.size();
    return new Comparison(first, second, design, n, m, mornings, onTime, minutes);
  }

  /**
   * Each group with all the others together, corrected by Holm over all differences of both kinds.
   */
  public static List<Comparison> eachWithTheRest(
      Split split, List<FirstCaseFact> facts, long seed) {
    Map<String, List<Start>> groups = new LinkedHashMap<>();
    split.apart(facts).forEach((name, group) -> groups.put(name, Start.of(group)));
    return eachWithTheRest(groups, seed);
  }

  /** The same of starts by group. */
  public static List<Comparison> eachWithTheRest(Map<String, List<Start>> groups, long seed) {
    List<Comparison> all = new ArrayList<>();
    groups.forEach(
        (name, group) -> {
          List<Start> rest = new ArrayList<>();
          groups.forEach((other, starts) -> rest.addAll(other.equals(name) ? List.of() : starts));
          all.add(ofStarts(name, group, "all others", rest, seed));
        });
    return corrected(all);
  }

  /** The same of the sums of each group beside all others. */
  public static List<Comparison> eachOfSums(Map<String, ComparisonSums> groups) {
    List<Comparison> all = new ArrayList<>();
    groups.forEach((name, sums) -> all.add(sums.compare(name, "all others")));
    return corrected(all);
  }

  /** The same comparisons with chances corrected by Holm for their number. */
  public static List<Comparison> corrected(List<Comparison> all) {
    List<Double> p = new ArrayList<>();
    for (Comparison c : all) {
      add(p, c.onTime);
      add(p, c.minutes);
    }
    List<Double> holm = Corrections.holm(p);
    List<Comparison> corrected = new ArrayList<>();
    int at = 0;
    for (Comparison c : all) {
      Difference onTime = c.onTime.p() == null ? c.onTime : c.onTime.adjusted(holm.get(at++));
      Difference minutes = c.minutes.p() == null ? c.minutes : c.minutes.adjusted(holm.get(at++));
      corrected.add(
          new Comparison(
              c.first,
              c.second,
              c.design,
              c.firstStarts,
              c.secondStarts,
              c.mornings,
              onTime,
              minutes));
    }
    return corrected;
  }

  private static void add(List<Double> p, Difference d) {
    if (d.p() != null) {
      p.add(d.p());
    }
  }

  private static Map<MorningId, List<Start>> byMorning(List<Start> facts) {
    Map<MorningId, List<Start>> mornings = new LinkedHashMap<>();
    for (Start fact : facts) {
      mornings.computeIfAbsent(fact.morning(), k -> new ArrayList<>()).add(fact);
    }
    return mornings;
  }

  private static int count(Map<MorningId, List<Start>> mornings) {
    return mornings.values().stream().mapToInt(List::size).sum();
  }

  private static List<Unit> units(
      Map<MorningId, List<Start>> mornings, ToDoubleFunction<Start> of) {
    return mornings.values().stream()
        .map(facts -> new Unit(facts.stream().mapToDouble(of).sum(), facts.size()))
        .toList();
  }

  private static Difference shares(
      Map<MorningId, List<Start>> one,
      Map<MorningId, List<Start>> other,
      ToDoubleFunction<Start> of,
      long seed) {
    List<Unit> ones = units(one, of);
    List<Unit> others = units(other, of);
    Clusters first = clusters(ones);
    Clusters second = clusters(others);
    Interval plain =
        sunup.review.stats.Proportions.difference(
            first.x(), first.n(), second.x(), second.n(), Share.LEVEL);
    return judged(Permutation.between(ones, others, seed), plain, first.less(second, Share.LEVEL));
  }

  private static Clusters clusters(List<Unit> units) {
    return Clusters.of(units.stream().map(u -> new Clusters.Cluster(u.sum(), u.count())).toList());
  }

  private static Difference between(
      Map<MorningId, List<Start>> one,
      Map<MorningId, List<Start>> other,
      ToDoubleFunction<Start> of,
      long seed) {
    List<Unit> ones = units(one, of);
    List<Unit> others = units(other, of);
    List<Unit> all = new ArrayList<>(ones);
    all.addAll(others);
    int k = ones.size();
    Interval interval =
        Resampling.interval(
            all.size(),
            times -> mean(all, times, 0, k) - mean(all, times, k, all.size()),
            Share.LEVEL,
            seed);
    return judged(Permutation.between(ones, others, seed), null, interval);
  }

  private static double mean(List<Unit> units, int[] times, int from, int to) {
    double sum = 0;
    double count = 0;
    for (int i = from; i < to; i++) {
      sum += times[i] * units.get(i).sum();
      count += times[i] * units.get(i).count();
    }
    return sum / count;
  }

  private static Difference within(
      Map<MorningId, List<Start>> one,
      Map<MorningId, List<Start>> other,
      ToDoubleFunction<Start> of,
      long seed) {
    List<Block> blocks = new ArrayList<>();
    one.forEach(
        (morning, facts) ->
            blocks.add(new Block(values(facts, of), values(other.get(morning), of))));
    double[] differences =
        blocks.stream().mapToDouble(b -> mean(b.first()) - mean(b.second())).toArray();
    Interval interval =
        Resampling.interval(
            differences.length,
            times -> {
              double sum = 0;
              for (int i = 0; i < times.length; i++) {
                sum += times[i] * differences[i];
              }
              return sum / times.length;
            },
            Share.LEVEL,
            seed);
    return judged(Permutation.within(blocks, seed), null, interval);
  }

  private static List<Double> values(List<Start> facts, ToDoubleFunction<Start> of) {
    return facts.stream().map(of::applyAsDouble).toList();
  }

  private static double mean(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).average().orElse(0);
  }

  private static Difference judged(Permutation test, Interval plain, Interval interval) {
    if (test.least() > LEVEL) {
      return Difference.TOO_FEW;
    }
    return new Difference(Verdict.NONE_SEEN, test.difference(), plain, interval, test.p(), test.p())
        .adjusted(test.p());
  }
}
