package sunup.review.trial;

import java.util.List;
import sunup.codec.Maybe;
import sunup.review.facts.FirstCaseFact;
import sunup.review.stats.Chances;
import sunup.review.stats.Interval;

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
  /**
   * Figures of a set of forecasts. Intervals are 95 %, by drawing whole mornings anew.
   *
   * @param n forecasts
   * @param mornings that they are of
   * @param brier the score and its parts, by ten bins
   * @param brierInterval of the score, or null
   * @param spiegelhalter z of the test that the chances said are right, beyond 2 or -2 they are not
   *     (D. J. Spiegelhalter, Stat Med 5 (1986) 421-433); null where it has no spread
   * @param large whether as many came on time as was said
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
      InTheLarge large,
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
   * @param x null if of fewer than ten, as the share and its interval: withheld
   */
  public record Named(@Maybe Integer x, int n, @Maybe Double share, @Maybe Interval interval) {}

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
    Baselines.Learning learning = new Baselines.Learning();
    said.forEach(s -> learning.count(s.morning().date(), s.done(), s.came() ? 1 : 0, 1));
    TrialSums sums = new TrialSums(learning.learned());
    said.forEach(sums::add);
    return sums.trial(minutesBefore, seed);
  }

  /** Chance of so large a z, either way, if the chances said are right. */
  public static double chanceOf(double z) {
    return Chances.normalBoth(z);
  }
}
