package sunup.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import sunup.board.MorningId;
import sunup.codec.Maybe;
import sunup.review.Comparison.Difference;
import sunup.review.Comparison.Verdict;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.MinutesByCause.Grouping;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;
import sunup.review.stats.Corrections;
import sunup.review.stats.Interval;
import sunup.review.stats.MeanOfClusters;
import sunup.review.stats.MeansApart;

/**
 * Late minutes by cause of two sets of starts that share no morning, per start: what a period cost
 * more or less than another one, and at which cause. Mornings are the unit; means and differences
 * are of all starts of a side, whether they have the cause or not. Differences by {@link
 * MeansApart}, corrected by Holm over all causes that have one.
 *
 * @param first the one
 * @param second what is taken off
 * @param all the difference of all late minutes, not among those corrected; null if withheld
 * @param rows by size of the difference, the largest first; null if there are too few starts on a
 *     side: withheld
 */
public record CausesCompared(
    Side first, Side second, @Maybe Difference all, @Maybe List<Row> rows) {
  /** Late minutes that no cause explains stand under this label. */
  public static final String UNEXPLAINED = "unexplained";

  /**
   * Fewer mornings on a side give minutes and no interval; so does a cause that came on fewer
   * mornings of both sides together. How often it came of both together does not tell on which side
   * it came, so leaving the rare ones out of the correction makes no difference of chance.
   */
  public static final int LEAST_MORNINGS = 10;

  /**
   * One side.
   *
   * @param perStart late minutes; null if withheld
   */
  public record Side(String name, int starts, int mornings, @Maybe Double perStart) {}

  /**
   * One cause.
   *
   * @param first minutes per start of the one
   * @param second of the other
   */
  public record Row(String label, double first, double second, Difference difference) {}

  /**
   * Sums over mornings, of minutes.
   *
   * @param mornings that have any
   * @param x of a morning's minutes
   * @param xx of their squares
   * @param xn of their products with the morning's starts
   */
  public record Minutes(int mornings, double x, double xx, double xn) {
    static final Minutes NONE = new Minutes(0, 0, 0, 0);

    /** Less than this is rounding. */
    public static final double ANY = 1e-6;
  }

  /**
   * What is needed of a side.
   *
   * @param mornings with a start
   * @param n starts
   * @param nn sum of the squares of mornings' starts
   * @param all minutes late
   * @param unexplained of these
   * @param causes the others by label
   */
  public record Sums(
      int mornings,
      double n,
      double nn,
      Minutes all,
      Minutes unexplained,
      Map<String, Minutes> causes) {
    MeanOfClusters mean(Minutes of) {
      return new MeanOfClusters(mornings, of.x, n, of.xx, of.xn, nn);
    }

    Minutes of(String label) {
      return label.equals(UNEXPLAINED) ? unexplained : causes.getOrDefault(label, Minutes.NONE);
    }

    /** The sums of facts themselves. */
    public static Sums of(List<FirstCaseFact> facts, Grouping grouping) {
      Map<MorningId, Map<String, Double>> mornings = new LinkedHashMap<>();
      Map<MorningId, double[]> totals = new LinkedHashMap<>();
      for (FirstCaseFact fact : facts) {
        if (fact.hasStarted()) {
          Map<String, Double> own =
              mornings.computeIfAbsent(fact.morning(), k -> new LinkedHashMap<>());
          MinutesByCause.ofOne(fact, grouping)
              .forEach((label, sum) -> own.merge(label, minutes(sum.ms()), Double::sum));
          double[] total = totals.computeIfAbsent(fact.morning(), k -> new double[2]);
          total[0]++;
          total[1] += minutes(fact.lateMs());
        }
      }
      double n = 0;
      double nn = 0;
      Minutes all = Minutes.NONE;
      Minutes unexplained = Minutes.NONE;
      Map<String, Minutes> causes = new LinkedHashMap<>();
      for (Map.Entry<MorningId, double[]> e : totals.entrySet()) {
        double starts = e.getValue()[0];
        double late = e.getValue()[1];
        Map<String, Double> own = mornings.get(e.getKey());
        n += starts;
        nn += starts * starts;
        all = plus(all, late, starts);
        double explained = own.values().stream().mapToDouble(Double::doubleValue).sum();
        unexplained = plus(unexplained, late - explained, starts);
        own.forEach(
            (label, x) ->
                causes.put(label, plus(causes.getOrDefault(label, Minutes.NONE), x, starts)));
      }
      return new Sums(totals.size(), n, nn, all, unexplained, causes);
    }

    private static double minutes(long ms) {
      return (double) ms / FirstCaseFact.MINUTE;
    }

    private static Minutes plus(Minutes sum, double x, double n) {
      return new Minutes(
          sum.mornings + (x > Minutes.ANY ? 1 : 0), sum.x + x, sum.xx + x * x, sum.xn + x * n);
    }
  }

  /** Compares two sides that share no morning. */
  public static CausesCompared of(String first, Sums one, String second, Sums other) {
    boolean withheld = Withheld.isWithheld((int) Math.min(one.n, other.n));
    Side left = side(first, one, withheld);
    Side right = side(second, other, withheld);
    if (withheld) {
      return new CausesCompared(left, right, null, null);
    }
    boolean few = Math.min(one.mornings, other.mornings) < LEAST_MORNINGS;
    TreeSet<String> labels = new TreeSet<>(one.causes.keySet());
    labels.addAll(other.causes.keySet());
    if (one.unexplained.mornings + other.unexplained.mornings > 0) {
      labels.add(UNEXPLAINED);
    }
    List<Row> rows = new ArrayList<>();
    for (String label : labels) {
      MeanOfClusters mine = one.mean(one.of(label));
      MeanOfClusters theirs = other.mean(other.of(label));
      boolean rare = one.of(label).mornings + other.of(label).mornings < LEAST_MORNINGS;
      rows.add(new Row(label, mine.mean(), theirs.mean(), difference(mine, theirs, few || rare)));
    }
    List<Row> sorted = new ArrayList<>(corrected(rows));
    sorted.sort(
        Comparator.<Row>comparingDouble(r -> -Math.abs(r.first - r.second))
            .thenComparing(Row::label));
    return new CausesCompared(
        left, right, difference(one.mean(one.all), other.mean(other.all), few), sorted);
  }

  private static Side side(String name, Sums of, boolean withheld) {
    return new Side(
        name, (int) of.n, of.mornings, withheld ? null : (Double) of.mean(of.all).mean());
  }

  private static Difference difference(MeanOfClusters one, MeanOfClusters other, boolean few) {
    if (few) {
      return Difference.TOO_FEW;
    }
    MeansApart apart = MeansApart.of(one, other);
    Interval interval = apart.interval(Share.LEVEL);
    double p = apart.p();
    return new Difference(Verdict.NONE_SEEN, apart.value(), null, interval, p, p).adjusted(p);
  }

  private static List<Row> corrected(List<Row> rows) {
    List<Row> told = rows.stream().filter(r -> r.difference.p() != null).toList();
    List<Double> holm = Corrections.holm(told.stream().map(r -> r.difference.p()).toList());
    List<Row> corrected = new ArrayList<>(rows);
    for (int i = 0; i < told.size(); i++) {
      Row row = told.get(i);
      Difference difference = row.difference.adjusted(holm.get(i));
      corrected.set(corrected.indexOf(row), new Row(row.label, row.first, row.second, difference));
    }
    return corrected;
  }
}
