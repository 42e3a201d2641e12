package sunup.review.trial;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import sunup.board.MorningId;
import sunup.codec.Maybe;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;
import sunup.review.stats.Chances;
import sunup.review.stats.Clusters;
import sunup.review.stats.Interval;
import sunup.review.stats.Resampling;
import sunup.review.trial.Baselines.Beside;

/**
 * Whether to believe what the board says so many minutes before the target: forecasts of a start on
 * time against what came.
 *
 * <p>Where the desk acted after a forecast, what came is no longer what was forecast: a board that
 * is listened to looks too gloomy there. The split stands beside the whole; neither half alone is
 * fair, as the desk acts where starts are in danger.
 *
 * @param minutesBefore 60, 40, 20 or 10
 * @param forecasts that the board kept when it said them, with an outcome
 * @param recomputed beside these: of moments that nobody kept, computed by today's model; they are
 *     in no figure but {@code replayed}, and in what the plain ways learned from
 * @param all of those kept; null if too few: withheld
 * @param deskActed after these; null if too few
 * @param deskDidNot after these; null if too few
 * @param replayed today's model on the moments that nobody kept; null if too few
 */
public record Trial(
    int minutesBefore,
    int forecasts,
    int recomputed,
    @Maybe Score all,
    @Maybe Score deskActed,
    @Maybe Score deskDidNot,
    @Maybe Score replayed) {
  private static final double LEVEL = 0.95;
  private static final int BINS = 10;

  /** Up to so many mornings are drawn anew: ten years of one suite are. */
  private static final int DRAWN_MOST = 2_600;

  /**
   * Figures of a set of forecasts. Intervals are 95 %, by drawing whole mornings anew.
   *
   * @param n forecasts
   * @param mornings that they are of
   * @param brier the score and its parts, by ten bins
   * @param brierInterval of the score, or null
   * @param spiegelhalter z of the test that the chances said are right, beyond 2 or -2 they are not
   *     (D. J. Spiegelhalter, Stat Med 5 (1986) 421-433); null where it has no spread
   * @param curve the calibration curve
   * @param overAverage skill over the site's share on time up to then, or null
   * @param overPercentDone skill over percent done by a logistic fit, or null
   * @param named how often the first holdup named was the as-run one, of late starts
   */
  public record Score(
      int n,
      int mornings,
      Murphy brier,
      @Maybe Interval brierInterval,
      @Maybe Double spiegelhalter,
      List<Bin> curve,
      @Maybe Skill overAverage,
      @Maybe Skill overPercentDone,
      Named named) {}

  /**
   * Forecasts of one tenth of chances.
   *
   * @param from least chance, inclusive
   * @param to largest, exclusive but for 1
   * @param said mean chance of them, or null of none
   * @param came share that came; null of fewer than ten: withheld
   * @param interval of it, Wilson's at the effective number of starts; null with it
   */
  public record Bin(
      double from,
      double to,
      int n,
      @Maybe Double said,
      @Maybe Double came,
      @Maybe Interval interval) {}

  /**
   * How much better than a plain way: 1 - score / its score, on the forecasts that both have. 0 is
   * no better, 1 perfect, below 0 worse.
   *
   * @param n forecasts that both have
   * @param board the board's score on them
   * @param other the plain way's
   */
  public record Skill(int n, double board, double other, double skill, @Maybe Interval interval) {}

  /**
   * Late starts of which the first holdup named was the as-run cause with most minutes.
   *
   * @param share null if of fewer than ten: withheld
   */
  public record Named(int x, int n, @Maybe Double share, @Maybe Interval interval) {}

  /**
   * The trial of one moment.
   *
   * @param seed of the drawing; equal seeds give equal figures
   */
  public static Trial of(List<FirstCaseFact> facts, int minutesBefore, long seed) {
    return ofSaid(Said.of(facts, minutesBefore), minutesBefore, seed);
  }

  /**
   * The same of forecasts that were taken from facts before.
   *
   * @param said of this moment, by date and suite
   */
  public static Trial ofSaid(List<Said> said, int minutesBefore, long seed) {
    List<Beside> beside = Baselines.of(said);
    Predicate<Said> kept = s -> !s.recomputed();
    int logged = (int) said.stream().filter(kept).count();
    return new Trial(
        minutesBefore,
        logged,
        said.size() - logged,
        score(said, beside, kept, seed),
        score(said, beside, kept.and(Said::deskActed), seed),
        score(said, beside, kept.and(s -> !s.deskActed()), seed),
        score(said, beside, Said::recomputed, seed));
  }

  private static Score score(
      List<Said> said, List<Beside> beside, Predicate<Said> which, long seed) {
    return score(
        said.stream().filter(which).toList(),
        beside.stream().filter(b -> which.test(b.said())).toList(),
        seed);
  }

  private static Score score(List<Said> said, List<Beside> beside, long seed) {
    if (Withheld.isWithheld(said.size())) {
      return null;
    }
    double sum = said.stream().mapToDouble(Said::squared).sum();
    List<Bin> curve = new ArrayList<>();
    List<Murphy.Cell> cells = new ArrayList<>();
    for (int b = 0; b < BINS; b++) {
      bin(said, b, curve, cells);
    }
    int mornings = (int) said.stream().map(Said::morning).distinct().count();
    return new Score(
        said.size(),
        mornings,
        Murphy.of(cells, sum / said.size()),
        ratio(said, Said::morning, Said::squared, s -> 1, seed),
        spiegelhalter(said),
        curve,
        skill(beside, b -> b.said().squared(b.average()), seed),
        skill(beside, b -> b.said().squared(b.fitted()), seed),
        named(said));
  }

  private static void bin(List<Said> said, int b, List<Bin> curve, List<Murphy.Cell> cells) {
    double from = (double) b / BINS;
    double to = (double) (b + 1) / BINS;
    List<Said> in =
        said.stream()
            .filter(s -> s.chance() >= from && (s.chance() < to || b == BINS - 1))
            .toList();
    int n = in.size();
    if (n == 0) {
      curve.add(new Bin(from, to, 0, null, null, null));
      return;
    }
    double mean = in.stream().mapToDouble(Said::chance).sum() / n;
    double came = in.stream().filter(Said::came).count();
    cells.add(new Murphy.Cell(mean, came / n, n));
    boolean few = Withheld.isWithheld(n);
    curve.add(
        new Bin(
            from,
            to,
            n,
            mean,
            few ? null : (Double) (came / n),
            few ? null : clusters(in, x -> x.came() ? 1 : 0).adjusted(LEVEL)));
  }

  private static Double spiegelhalter(List<Said> said) {
    List<Double> chances = said.stream().map(Said::chance).toList();
    return spiegelhalter(chances, said.stream().map(Said::came).toList());
  }

  /** Spiegelhalter's z, or null where all chances are 0, 1/2 or 1. */
  static Double spiegelhalter(List<Double> chances, List<Boolean> came) {
    double off = 0;
    double variance = 0;
    for (int i = 0; i < chances.size(); i++) {
      double p = chances.get(i);
      off += ((came.get(i) ? 1 : 0) - p) * (1 - 2 * p);
      variance += p * (1 - p) * (1 - 2 * p) * (1 - 2 * p);
    }
    return variance <= 0 ? null : Double.valueOf(off / Math.sqrt(variance));
  }

  /** Chance of so large a z, either way, if the chances said are right. */
  public static double chanceOf(double z) {
    return Chances.normalBoth(z);
  }

  private static Skill skill(List<Beside> beside, ToDoubleFunction<Beside> other, long seed) {
    if (Withheld.isWithheld(beside.size())) {
      return null;
    }
    int n = beside.size();
    double board = beside.stream().mapToDouble(b -> b.said().squared()).sum() / n;
    double theirs = beside.stream().mapToDouble(other).sum() / n;
    if (theirs == 0) {
      return null;
    }
    Interval ratio = ratio(beside, b -> b.said().morning(), b -> b.said().squared(), other, seed);
    Interval interval = ratio == null ? null : new Interval(1 - ratio.upper(), 1 - ratio.lower());
    return new Skill(n, board, theirs, 1 - board / theirs, interval);
  }

  /** The interval of one sum over the other, by mornings drawn anew. */
  private static <T> Interval ratio(
      List<T> all,
      java.util.function.Function<T, MorningId> morning,
      ToDoubleFunction<T> above,
      ToDoubleFunction<T> below,
      long seed) {
    Map<MorningId, double[]> sums = new LinkedHashMap<>();
    for (T one : all) {
      double[] sum = sums.computeIfAbsent(morning.apply(one), k -> new double[2]);
      sum[0] += above.applyAsDouble(one);
      sum[1] += below.applyAsDouble(one);
    }
    List<double[]> list = List.copyOf(sums.values());
    if (list.size() > DRAWN_MOST) {
      return ofMany(list);
    }
    return Resampling.interval(
        list.size(),
        times -> {
          double a = 0;
          double b = 0;
          for (int i = 0; i < times.length; i++) {
            a += times[i] * list.get(i)[0];
            b += times[i] * list.get(i)[1];
          }
          return b == 0 ? Double.NaN : a / b;
        },
        LEVEL,
        seed);
  }

  /** Over so many mornings the ratio of two sums is normal, by its first-order variance. */
  private static Interval ofMany(List<double[]> mornings) {
    double a = 0;
    double b = 0;
    for (double[] sums : mornings) {
      a += sums[0];
      b += sums[1];
    }
    if (b == 0) {
      return null;
    }
    double squares = 0;
    for (double[] sums : mornings) {
      double off = sums[0] - a / b * sums[1];
      squares += off * off;
    }
    double half = Chances.normalQuantile((1 + LEVEL) / 2) * Math.sqrt(squares) / b;
    return new Interval(a / b - half, a / b + half);
  }

  private static Named named(List<Said> said) {
    Clusters c = clusters(said.stream().filter(s -> s.named() != null).toList(), Said::named);
    boolean few = Withheld.isWithheld((int) c.n());
    return new Named(
        (int) c.x(),
        (int) c.n(),
        few ? null : (Double) (c.x() / c.n()),
        few ? null : c.adjusted(LEVEL));
  }

  private static Clusters clusters(List<Said> said, ToDoubleFunction<Said> is) {
    Map<MorningId, Clusters.Cluster> mornings = new LinkedHashMap<>();
    for (Said s : said) {
      mornings.merge(
          s.morning(),
          new Clusters.Cluster(is.applyAsDouble(s), 1),
          (a, b) -> new Clusters.Cluster(a.x() + b.x(), a.n() + b.n()));
    }
    return Clusters.of(List.copyOf(mornings.values()));
  }
}
