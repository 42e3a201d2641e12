package sunup.review.trial;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.review.facts.Withheld;
import sunup.review.stats.Chances;
import sunup.review.stats.Clusters;
import sunup.review.stats.Interval;
import sunup.review.stats.MeanOfClusters;
import sunup.review.stats.Resampling;
import sunup.review.trial.Trial.Bin;
import sunup.review.trial.Trial.Named;
import sunup.review.trial.Trial.Score;
import sunup.review.trial.Trial.Skill;

/**
 * Sums by morning that a trial is made of: each forecast is needed once, in any order, and drawing
 * mornings anew costs what the mornings are and not what the forecasts are.
 */
public final class TrialSums {
  private static final double LEVEL = 0.95;
  private static final int BINS = 10;

  /** Up to so many mornings are drawn anew: ten years of one suite are. */
  private static final int DRAWN_MOST = 2_600;

  /** The parts that no forecast is in two of. */
  private static final int ACTED = 0;

  private static final int DID_NOT = 1;
  private static final int RECOMPUTED = 2;
  private static final int PARTS = 3;

  /** Columns of what is drawn: the score, and what both plain ways and the board have together. */
  private static final int SQUARES = 0;

  private static final int N = 1;
  private static final int BOARD = 2;
  private static final int AVERAGE = 3;
  private static final int FITTED = 4;
  private static final int COLUMNS = 5;
  private static final int[][] RATIOS = {{SQUARES, N}, {BOARD, AVERAGE}, {BOARD, FITTED}};

  private static final Comparator<MorningId> ORDER =
      Comparator.comparing(MorningId::date).thenComparing(m -> m.suite().value());

  private final Baselines plain;
  private final Map<MorningId, Sums[]> mornings = new HashMap<>();
  private final Spread[] spread = {new Spread(), new Spread(), new Spread()};

  /** Forecasts mostly come morning by morning. */
  private MorningId last;

  private Sums[] ofLast;

  /** Forecasts that the plain ways have too. */
  private static final class Beside {
    int n;
    int came;
    int mornings;

    void add(Sums morning) {
      n += morning.beside;
      came += morning.besideCame;
      mornings += morning.beside > 0 ? 1 : 0;
    }

    /** Whether drawing mornings anew would make one the better guide by chance. */
    boolean isTooFew() {
      return mornings < InTheLarge.LEAST_MORNINGS || TrialApart.isOneSided(came, n);
    }
  }

  /** One part of one morning's forecasts. */
  private static final class Sums {
    final double[] columns = new double[COLUMNS];
    final int[] in = new int[BINS];
    final int[] came = new int[BINS];
    double said;
    double chance;
    int besideCame;
    int named;
    int right;
    int beside;
  }

  /** What a part needs of all mornings together: chances by bin, and Spiegelhalter's sums. */
  private static final class Spread {
    final double[] said = new double[BINS];
    double off;
    double variance;
  }

  /**
   * @param plain what the plain ways say on each date of these forecasts
   */
  public TrialSums(Baselines plain) {
    this.plain = plain;
  }

  /** Counts one forecast. */
  public void add(Said s) {
    if (!s.morning().equals(last)) {
      last = s.morning();
      ofLast = mornings.computeIfAbsent(last, k -> new Sums[PARTS]);
    }
    int part = s.recomputed() ? RECOMPUTED : s.deskActed() ? ACTED : DID_NOT;
    Sums sums = ofLast[part];
    if (sums == null) {
      sums = new Sums();
      ofLast[part] = sums;
    }
    double p = s.chance();
    int bin = bin(p);
    sums.columns[SQUARES] += s.squared();
    sums.columns[N]++;
    sums.said += p;
    sums.chance += p * (1 - p);
    sums.in[bin]++;
    sums.came[bin] += s.came() ? 1 : 0;
    if (s.named() != null) {
      sums.named++;
      sums.right += s.named();
    }
    Baselines.Plain there = plain.on(last.date());
    if (there != null) {
      sums.beside++;
      sums.besideCame += s.came() ? 1 : 0;
      sums.columns[BOARD] += s.squared();
      sums.columns[AVERAGE] += s.squared(there.average());
      sums.columns[FITTED] += s.squared(there.fit().at(s.done()));
    }
    spread[part].said[bin] += p;
    spread[part].off += ((s.came() ? 1 : 0) - p) * (1 - 2 * p);
    spread[part].variance += p * (1 - p) * (1 - 2 * p) * (1 - 2 * p);
  }

  /** The tenth that a chance lies in, by the same edges that are shown. */
  private static int bin(double chance) {
    int bin = Math.min(BINS - 1, Math.max(0, (int) (chance * BINS)));
    while (bin > 0 && chance < (double) bin / BINS) {
      bin--;
    }
    while (bin < BINS - 1 && chance >= (double) (bin + 1) / BINS) {
      bin++;
    }
    return bin;
  }

  /**
   * The trial of what was counted.
   *
   * @param seed of the drawing; equal seeds give equal figures
   */
  public Trial trial(int minutesBefore, long seed) {
    List<Sums[]> inOrder =
        mornings.entrySet().stream()
            .sorted(Map.Entry.comparingByKey(ORDER))
            .map(Map.Entry::getValue)
            .toList();
    int logged = count(inOrder, ACTED) + count(inOrder, DID_NOT);
    return new Trial(
        minutesBefore,
        logged,
        count(inOrder, RECOMPUTED),
        score(inOrder, seed, ACTED, DID_NOT),
        score(inOrder, seed, ACTED),
        score(inOrder, seed, DID_NOT),
        score(inOrder, seed, RECOMPUTED));
  }

  private static int count(List<Sums[]> mornings, int part) {
    return (int)
        mornings.stream().filter(m -> m[part] != null).mapToDouble(m -> m[part].columns[N]).sum();
  }

  private Score score(List<Sums[]> mornings, long seed, int... parts) {
    List<Sums> of = new ArrayList<>();
    for (Sums[] morning : mornings) {
      Sums one = together(morning, parts);
      if (one != null) {
        of.add(one);
      }
    }
    double[] total = new double[COLUMNS];
    double[] drawn = new double[of.size() * COLUMNS];
    Beside beside = new Beside();
    for (int i = 0; i < of.size(); i++) {
      beside.add(of.get(i));
      for (int c = 0; c < COLUMNS; c++) {
        drawn[i * COLUMNS + c] = of.get(i).columns[c];
        total[c] += of.get(i).columns[c];
      }
    }
    int n = (int) total[N];
    if (Withheld.isWithheld(n)) {
      return null;
    }
    List<Interval> intervals =
        of.size() > DRAWN_MOST
            ? Arrays.stream(RATIOS).map(r -> ofMany(of, r[0], r[1])).toList()
            : Resampling.ratios(drawn, COLUMNS, RATIOS, LEVEL, seed);
    List<Bin> curve = new ArrayList<>();
    List<Murphy.Cell> cells = new ArrayList<>();
    for (int b = 0; b < BINS; b++) {
      curve(of, b, said(b, parts), curve, cells);
    }
    return new Score(
        n,
        of.size(),
        Murphy.of(cells, total[SQUARES] / n),
        intervals.get(0),
        spiegelhalter(parts),
        large(of),
        curve,
        skill(beside, total[BOARD], total[AVERAGE], intervals.get(1)),
        skill(beside, total[BOARD], total[FITTED], intervals.get(2)),
        named(of));
  }

  private static Sums together(Sums[] morning, int... parts) {
    Sums sum = null;
    for (int part : parts) {
      Sums one = morning[part];
      sum = sum == null ? one : one == null ? sum : plus(sum, one);
    }
    return sum;
  }

  private static Sums plus(Sums one, Sums other) {
    Sums sum = new Sums();
    Arrays.setAll(sum.columns, c -> one.columns[c] + other.columns[c]);
    Arrays.setAll(sum.in, b -> one.in[b] + other.in[b]);
    Arrays.setAll(sum.came, b -> one.came[b] + other.came[b]);
    sum.said = one.said + other.said;
    sum.chance = one.chance + other.chance;
    sum.besideCame = one.besideCame + other.besideCame;
    sum.named = one.named + other.named;
    sum.right = one.right + other.right;
    sum.beside = one.beside + other.beside;
    return sum;
  }

  private static InTheLarge large(List<Sums> of) {
    double came = 0;
    double chance = 0;
    double x = 0;
    double n = 0;
    double xx = 0;
    double xn = 0;
    double nn = 0;
    for (Sums morning : of) {
      int yes = Arrays.stream(morning.came).sum();
      double off = morning.said - yes;
      double all = morning.columns[N];
      came += yes;
      chance += morning.chance;
      x += off;
      n += all;
      xx += off * off;
      xn += off * all;
      nn += all * all;
    }
    return InTheLarge.of(new MeanOfClusters(of.size(), x, n, xx, xn, nn), came, chance);
  }

  private double said(int bin, int... parts) {
    return Arrays.stream(parts).mapToDouble(part -> spread[part].said[bin]).sum();
  }

  private static void curve(
      List<Sums> of, int b, double said, List<Bin> curve, List<Murphy.Cell> cells) {
    double from = (double) b / BINS;
    double to = (double) (b + 1) / BINS;
    List<Clusters.Cluster> clusters = new ArrayList<>();
    for (Sums morning : of) {
      if (morning.in[b] > 0) {
        clusters.add(new Clusters.Cluster(morning.came[b], morning.in[b]));
      }
    }
    if (clusters.isEmpty()) {
      curve.add(new Bin(from, to, 0, null, null, null));
      return;
    }
    Clusters c = Clusters.of(clusters);
    int n = (int) c.n();
    cells.add(new Murphy.Cell(said / n, c.x() / n, n));
    boolean few = Withheld.isWithheld(n);
    curve.add(
        new Bin(
            from,
            to,
            n,
            said / n,
            few ? null : (Double) (c.x() / n),
            few ? null : c.adjusted(LEVEL)));
  }

  /** Null where all chances are 0, 1/2 or 1. */
  private Double spiegelhalter(int... parts) {
    double off = Arrays.stream(parts).mapToDouble(part -> spread[part].off).sum();
    double variance = Arrays.stream(parts).mapToDouble(part -> spread[part].variance).sum();
    return variance <= 0 ? null : Double.valueOf(off / Math.sqrt(variance));
  }

  private static Skill skill(Beside beside, double board, double theirs, Interval ratio) {
    int n = beside.n;
    if (Withheld.isWithheld(n) || theirs == 0) {
      return null;
    }
    Interval interval =
        ratio == null || beside.isTooFew()
            ? null
            : new Interval(1 - ratio.upper(), 1 - ratio.lower());
    return new Skill(n, board / n, theirs / n, 1 - board / theirs, interval);
  }

  /** Over so many mornings the ratio of two sums is normal, by its first-order variance. */
  private static Interval ofMany(List<Sums> mornings, int above, int below) {
    double a = mornings.stream().mapToDouble(m -> m.columns[above]).sum();
    double b = mornings.stream().mapToDouble(m -> m.columns[below]).sum();
    if (b == 0) {
      return null;
    }
    double squares = 0;
    for (Sums morning : mornings) {
      double off = morning.columns[above] - a / b * morning.columns[below];
      squares += off * off;
    }
    double half = Chances.normalQuantile((1 + LEVEL) / 2) * Math.sqrt(squares) / b;
    return new Interval(a / b - half, a / b + half);
  }

  private static Named named(List<Sums> of) {
    Clusters c =
        Clusters.of(
            of.stream()
                .filter(m -> m.named > 0)
                .map(m -> new Clusters.Cluster(m.right, m.named))
                .toList());
    boolean few = Withheld.isWithheld((int) c.n());
    return new Named(
        few ? null : (Integer) (int) c.x(),
        (int) c.n(),
        few ? null : (Double) (c.x() / c.n()),
        few ? null : c.adjusted(LEVEL));
  }
}
