package sunup.review;

import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.review.Comparison.Difference;
import sunup.review.Comparison.Start;
import sunup.review.Comparison.Verdict;
import sunup.review.facts.Withheld;
import sunup.review.stats.Chances;
import sunup.review.stats.Clusters;
import sunup.review.stats.Interval;
import sunup.review.stats.Permutation;
import sunup.review.stats.Proportions;

/**
 * What a comparison needs of more mornings than labels are dealt over: sums, as a database adds
 * them up. Over so many mornings the dealt difference is normal, with the variance that dealing
 * gives it exactly within mornings and to first order between them; so is the mean of mornings
 * drawn anew.
 *
 * @param shared mornings that both have
 * @param first starts of the one on them
 * @param second starts of the other on them
 * @param withinOnTime of the shared mornings
 * @param withinMinutes of the same
 * @param ownOnTime of all mornings of the one
 * @param otherOnTime of all of the other; asked for only if they share none
 * @param ownMinutes of all mornings of the one
 * @param otherMinutes of all of the other, in the same way
 */
public record ComparisonSums(
    int shared,
    long first,
    long second,
    Within withinOnTime,
    Within withinMinutes,
    Moments ownOnTime,
    Moments otherOnTime,
    Moments ownMinutes,
    Moments otherMinutes) {
  /**
   * Up to so many mornings labels are dealt and mornings drawn; beyond, sums say the same unless
   * they {@linkplain #askForDealing ask for dealing}.
   */
  public static final int DEALT_MOST = 120;

  /** A side of fewer mornings is too far from normal for sums. */
  public static final int LEAST_MORNINGS = 30;

  /**
   * Sums over shared mornings.
   *
   * @param d of the differences of the two means
   * @param dd of their squares
   * @param v of their variances under dealing: s^2 (1/n + 1/m), s^2 that of all starts of the
   *     morning
   */
  public record Within(double d, double dd, double v) {}

  /**
   * Sums over mornings.
   *
   * @param mornings how many
   * @param x of a morning's sum
   * @param n of its starts
   */
  public record Moments(int mornings, double x, double n, double xx, double xn, double nn) {
    public Moments less(Moments part) {
      return new Moments(
          mornings - part.mornings,
          x - part.x,
          n - part.n,
          xx - part.xx,
          xn - part.xn,
          nn - part.nn);
    }

    Moments plus(Moments other) {
      return new Moments(
          mornings + other.mornings,
          x + other.x,
          n + other.n,
          xx + other.xx,
          xn + other.xn,
          nn + other.nn);
    }

    double mean() {
      return n == 0 ? 0 : x / n;
    }

    /** Sum of the squares of x - mean n. */
    double offs() {
      return Math.max(0, xx - 2 * mean() * xn + mean() * mean() * nn);
    }

    Clusters clusters() {
      return Clusters.ofSums(x, n, mornings, xx, xn, nn);
    }
  }

  /** Of two that share no morning: periods. */
  public static ComparisonSums apart(
      Moments ownOnTime, Moments otherOnTime, Moments ownMinutes, Moments otherMinutes) {
    Within none = new Within(0, 0, 0);
    return new ComparisonSums(
        0, 0, 0, none, none, ownOnTime, otherOnTime, ownMinutes, otherMinutes);
  }

  /** The sums of starts themselves. */
  static ComparisonSums of(Map<MorningId, List<Start>> ones, Map<MorningId, List<Start>> others) {
    int shared = 0;
    long first = 0;
    long second = 0;
    double[] onTime = new double[3];
    double[] minutes = new double[3];
    for (Map.Entry<MorningId, List<Start>> e : ones.entrySet()) {
      List<Start> other = others.get(e.getKey());
      if (other != null) {
        shared++;
        first += e.getValue().size();
        second += other.size();
        add(onTime, values(e.getValue(), true), values(other, true));
        add(minutes, values(e.getValue(), false), values(other, false));
      }
    }
    return new ComparisonSums(
        shared,
        first,
        second,
        new Within(onTime[0], onTime[1], onTime[2]),
        new Within(minutes[0], minutes[1], minutes[2]),
        moments(ones, true),
        moments(others, true),
        moments(ones, false),
        moments(others, false));
  }

  private static double[] values(List<Start> starts, boolean onTime) {
    return starts.stream()
        .mapToDouble(s -> onTime ? (s.onTime() ? 1 : 0) : s.lateMinutes())
        .toArray();
  }

  private static void add(double[] sums, double[] one, double[] other) {
    double x = 0;
    double y = 0;
    double squares = 0;
    for (double v : one) {
      x += v;
      squares += v * v;
    }
    for (double v : other) {
      y += v;
      squares += v * v;
    }
    int n = one.length;
    int m = other.length;
    double d = x / n - y / m;
    double s2 = (squares - (x + y) * (x + y) / (n + m)) / (n + m - 1);
    sums[0] += d;
    sums[1] += d * d;
    sums[2] += s2 * (1.0 / n + 1.0 / m);
  }

  private static Moments moments(Map<MorningId, List<Start>> mornings, boolean onTime) {
    Moments sum = new Moments(0, 0, 0, 0, 0, 0);
    for (List<Start> starts : mornings.values()) {
      double n = starts.size();
      double x = 0;
      for (double v : values(starts, onTime)) {
        x += v;
      }
      sum = sum.plus(new Moments(1, x, n, x * x, x * n, n * n));
    }
    return sum;
  }

  /**
   * True if a side has too few mornings for sums and enough for dealing: a few weeks after a change
   * beside the year before it. The starts themselves then say more.
   */
  public boolean askForDealing() {
    int least = shared > 0 ? shared : Math.min(ownOnTime.mornings, otherOnTime.mornings);
    return least >= Comparison.LEAST_MORNINGS && least < LEAST_MORNINGS;
  }

  /** The comparison that these sums make, of the one with the other. */
  public Comparison compare(String one, String other) {
    if (shared > 0) {
      boolean few = few(first, second, shared, shared);
      return new Comparison(
          one,
          other,
          Comparison.Design.WITHIN_MORNINGS,
          (int) first,
          (int) second,
          shared,
          few ? Difference.TOO_FEW : within(withinOnTime),
          few ? Difference.TOO_FEW : within(withinMinutes));
    }
    int mornings = ownOnTime.mornings + otherOnTime.mornings;
    boolean few =
        few((long) ownOnTime.n, (long) otherOnTime.n, ownOnTime.mornings, otherOnTime.mornings);
    return new Comparison(
        one,
        other,
        Comparison.Design.BETWEEN_MORNINGS,
        (int) ownOnTime.n,
        (int) otherOnTime.n,
        mornings,
        few ? Difference.TOO_FEW : shares(),
        few ? Difference.TOO_FEW : minutes());
  }

  private static boolean few(long n, long m, int mornings, int others) {
    return Withheld.isWithheld((int) Math.min(n, m)) || Math.min(mornings, others) < LEAST_MORNINGS;
  }

  private Difference within(Within of) {
    double value = of.d / shared;
    double drawn = Math.max(0, of.dd / shared - value * value) / shared;
    return judged(value, Math.sqrt(of.v) / shared, null, around(value, drawn));
  }

  private Difference shares() {
    Interval plain =
        Proportions.difference(ownOnTime.x, ownOnTime.n, otherOnTime.x, otherOnTime.n, Share.LEVEL);
    return judged(
        ownOnTime.mean() - otherOnTime.mean(),
        dealt(ownOnTime, otherOnTime),
        plain,
        ownOnTime.clusters().less(otherOnTime.clusters(), Share.LEVEL));
  }

  private Difference minutes() {
    double value = ownMinutes.mean() - otherMinutes.mean();
    double drawn =
        ownMinutes.offs() / (ownMinutes.n * ownMinutes.n)
            + otherMinutes.offs() / (otherMinutes.n * otherMinutes.n);
    return judged(value, dealt(ownMinutes, otherMinutes), null, around(value, drawn));
  }

  /** How far whole mornings that are dealt anew spread the difference of the means. */
  private static double dealt(Moments one, Moments other) {
    Moments all = one.plus(other);
    double k = one.mornings;
    double n = all.mornings;
    double starts = all.n * k / n;
    double sums = k * (n - k) / (n * (n - 1)) * all.offs();
    return Math.sqrt(sums) * (1 / starts + 1 / (all.n - starts));
  }

  private static Interval around(double value, double variance) {
    double off = Chances.normalQuantile((1 + Share.LEVEL) / 2) * Math.sqrt(variance);
    return new Interval(value - off, value + off);
  }

  private static Difference judged(double value, double spread, Interval plain, Interval interval) {
    double p = spread == 0 ? 1 : Chances.normalBoth(value / spread);
    double told = Math.max(p, 1.0 / (Permutation.DEALS + 1));
    return new Difference(Verdict.NONE_SEEN, value, plain, interval, told, told).adjusted(told);
  }
}
