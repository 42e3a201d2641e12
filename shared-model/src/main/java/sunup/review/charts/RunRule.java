package sunup.review.charts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Rules that say that a run of points is no chance: each with its source. A point on the centre
 * line is on no side. What is told is the points of the run, the last of them the one that
 * completes it.
 */
public enum RunRule {
  /** Western Electric, Statistical Quality Control Handbook, 1956, test 1; L. S. Nelson, test 1. */
  BEYOND_LIMITS("beyond a limit", "Western Electric 1956 and Nelson 1984, test 1"),
  /**
   * L. S. Nelson, The Shewhart control chart - tests for special causes, J Qual Technol 16 (1984).
   */
  NINE_ON_ONE_SIDE("9 in a row on one side of the centre", "Nelson 1984, test 2"),
  EIGHT_ON_ONE_SIDE("8 in a row on one side of the centre", "Western Electric 1956, test 4"),
  /**
   * Six points "in a row steadily increasing or decreasing": points are counted, the one where a
   * run turns among them, so five rises will do. Nelson has no test alarm falsely at more than five
   * points in a thousand (1984 and 1985, quoted in the SAS/QC User's Guide, The SHEWHART Procedure,
   * Interpreting Standard Tests for Special Causes): six points lie in order by chance once in 360,
   * five once in 60. Some programs ask for seven, once in 2,520.
   */
  SIX_RISING_OR_FALLING("6 in a row rising or falling", "Nelson 1984, test 3"),
  FOURTEEN_ALTERNATING("14 in a row up and down by turns", "Nelson 1984, test 4"),
  TWO_OF_THREE_BEYOND_TWO_SIGMA(
      "2 of 3 beyond 2 sigma on one side", "Western Electric 1956, test 2; Nelson 1984, test 5"),
  FOUR_OF_FIVE_BEYOND_ONE_SIGMA(
      "4 of 5 beyond 1 sigma on one side", "Western Electric 1956, test 3; Nelson 1984, test 6"),
  FIFTEEN_WITHIN_ONE_SIGMA("15 in a row within 1 sigma", "Nelson 1984, test 7"),
  EIGHT_OUTSIDE_ONE_SIGMA("8 in a row outside 1 sigma, on both sides", "Nelson 1984, test 8");

  /** For individuals: the four of Western Electric. */
  public static final List<RunRule> WESTERN_ELECTRIC =
      List.of(
          BEYOND_LIMITS,
          TWO_OF_THREE_BEYOND_TWO_SIGMA,
          FOUR_OF_FIVE_BEYOND_ONE_SIGMA,
          EIGHT_ON_ONE_SIDE);

  /** For individuals: the eight of Nelson. */
  public static final List<RunRule> NELSON =
      List.of(
          BEYOND_LIMITS,
          NINE_ON_ONE_SIDE,
          SIX_RISING_OR_FALLING,
          FOURTEEN_ALTERNATING,
          TWO_OF_THREE_BEYOND_TWO_SIGMA,
          FOUR_OF_FIVE_BEYOND_ONE_SIGMA,
          FIFTEEN_WITHIN_ONE_SIGMA,
          EIGHT_OUTSIDE_ONE_SIGMA);

  /** For shares: rules of zones are not meant for charts of attributes. */
  public static final List<RunRule> FOR_SHARES = List.of(BEYOND_LIMITS, EIGHT_ON_ONE_SIDE);

  private final String words;
  private final String source;

  RunRule(String words, String source) {
    this.words = words;
    this.source = source;
  }

  public String words() {
    return words;
  }

  public String source() {
    return source;
  }

  /**
   * A rule that was met. A run that goes on is one sign, however many of its points complete it.
   *
   * @param rule which
   * @param from index of the first point of the run
   * @param to index of the last point that completes it
   */
  public record Signal(RunRule rule, int from, int to) {}

  /**
   * Where points meet rules.
   *
   * @param z the points' distances from the centre in sigmas
   */
  public static List<Signal> signals(List<RunRule> rules, List<Double> z) {
    List<Signal> signals = new ArrayList<>();
    for (RunRule rule : rules) {
      Signal run = null;
      for (int to = rule.length() - 1; to < z.size(); to++) {
        int from = to - rule.length() + 1;
        if (!rule.isMet(z, from, to)) {
          continue;
        }
        if (run != null && from <= run.to() && rule.goesOn(z, run.to(), to)) {
          signals.remove(signals.size() - 1);
          run = new Signal(rule, run.from(), to);
        } else {
          run = new Signal(rule, from, to);
        }
        signals.add(run);
      }
    }
    signals.sort(Comparator.comparingInt(Signal::to).thenComparingInt(Signal::from));
    return signals;
  }

  /** Whether a run of this rule that is met at one point and at a later one may be the same. */
  private boolean goesOn(List<Double> z, int before, int then) {
    return switch (this) {
      case TWO_OF_THREE_BEYOND_TWO_SIGMA, FOUR_OF_FIVE_BEYOND_ONE_SIGMA ->
          z.get(before) * z.get(then) > 0;
      // One that turns is two: the point where it does is the last of one and the first of the
      // next.
      case SIX_RISING_OR_FALLING -> rise(z, before) * rise(z, then) > 0;
      default -> true;
    };
  }

  private static double rise(List<Double> z, int to) {
    return z.get(to) - z.get(to - 1);
  }

  private int length() {
    return switch (this) {
      case BEYOND_LIMITS -> 1;
      case TWO_OF_THREE_BEYOND_TWO_SIGMA -> 3;
      case FOUR_OF_FIVE_BEYOND_ONE_SIGMA -> 5;
      case SIX_RISING_OR_FALLING -> 6;
      case EIGHT_ON_ONE_SIDE, EIGHT_OUTSIDE_ONE_SIGMA -> 8;
      case NINE_ON_ONE_SIDE -> 9;
      case FOURTEEN_ALTERNATING -> 14;
      case FIFTEEN_WITHIN_ONE_SIGMA -> 15;
    };
  }

  private boolean isMet(List<Double> z, int from, int to) {
    List<Double> run = z.subList(from, to + 1);
    double last = z.get(to);
    return switch (this) {
      case BEYOND_LIMITS -> Math.abs(last) > 3;
      case EIGHT_ON_ONE_SIDE, NINE_ON_ONE_SIDE ->
          run.stream().allMatch(v -> v > 0) || run.stream().allMatch(v -> v < 0);
      case SIX_RISING_OR_FALLING -> isMonotone(run, 1) || isMonotone(run, -1);
      case FOURTEEN_ALTERNATING -> isAlternating(run);
      case TWO_OF_THREE_BEYOND_TWO_SIGMA -> isBeyond(run, 2, 2);
      case FOUR_OF_FIVE_BEYOND_ONE_SIGMA -> isBeyond(run, 1, 4);
      case FIFTEEN_WITHIN_ONE_SIGMA -> run.stream().allMatch(v -> Math.abs(v) < 1);
      case EIGHT_OUTSIDE_ONE_SIGMA ->
          run.stream().allMatch(v -> Math.abs(v) > 1)
              && run.stream().anyMatch(v -> v > 0)
              && run.stream().anyMatch(v -> v < 0);
    };
  }

  private static boolean isMonotone(List<Double> run, int sign) {
    for (int i = 1; i < run.size(); i++) {
      if (!(sign * (run.get(i) - run.get(i - 1)) > 0)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isAlternating(List<Double> run) {
    for (int i = 2; i < run.size(); i++) {
      double before = run.get(i - 1) - run.get(i - 2);
      double then = run.get(i) - run.get(i - 1);
      if (!(before * then < 0)) {
        return false;
      }
    }
    return true;
  }

  /** The last one among them: else an old run would be told again. */
  private static boolean isBeyond(List<Double> run, double sigmas, int least) {
    double last = run.get(run.size() - 1);
    if (Math.abs(last) <= sigmas) {
      return false;
    }
    return run.stream().filter(v -> last > 0 ? v > sigmas : v < -sigmas).count() >= least;
  }
}
