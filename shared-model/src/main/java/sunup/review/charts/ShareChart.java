package sunup.review.charts;

import java.util.ArrayList;
import java.util.List;
import sunup.review.stats.Dispersion;

/**
 * A p-chart: shares with limits by their number of cases. Where the dispersion test says that the
 * shares vary more than chance alone would have them, limits are those of D. B. Laney (Improved
 * control charts for attributes, Quality Engineering 14 (2002) 531-537): wider by sigma z, the mean
 * moving range of the standardised points over 1.128.
 *
 * <p>A shift inside a phase widens Laney's limits and may hide in them. They are therefore only
 * taken for {@link #ADJUST_FROM} points or more, and the ordinary limits stand beside them.
 *
 * @param points in order; those without cases have no share and no limits
 * @param phases one for each marked change, and the first
 * @param signals runs that are no chance
 */
public record ShareChart(List<Point> points, List<Phase> phases, List<RunRule.Signal> signals) {
  /** Laney's limits need a long series: first setting. */
  public static final int ADJUST_FROM = 20;

  /** Dispersion that chance alone makes so seldom is taken for real. */
  public static final double DISPERSED_AT = 0.05;

  /** d2 of two values: the mean range of two standard normal values. */
  static final double D2 = 1.128;

  /** {@code x} of {@code n} in one period; {@code label} names it. */
  public record Counted(String label, int x, int n) {}

  /**
   * One period.
   *
   * @param label names it
   * @param x how many
   * @param n of how many
   * @param share x / n, or null of none
   * @param centre of its phase
   * @param lower limit, not below 0; with upper those that signals are judged by
   * @param upper limit, not above 1
   * @param plainLower without Laney's factor
   * @param plainUpper without Laney's factor
   */
  public record Point(
      String label,
      int x,
      int n,
      Double share,
      double centre,
      double lower,
      double upper,
      double plainLower,
      double plainUpper) {}

  /**
   * A stretch between marked changes.
   *
   * @param from index of its first point
   * @param to index after its last
   * @param centre all of its x over all of its n
   * @param dispersion the test, or null where it has no answer
   * @param sigmaZ Laney's factor; 1 gives the ordinary chart
   * @param adjusted true if the limits have the factor
   */
  public record Phase(
      int from, int to, double centre, Dispersion dispersion, double sigmaZ, boolean adjusted) {}

  /**
   * @param counted in order of time
   * @param changes indices of the first points after a marked change
   */
  public static ShareChart of(List<Counted> counted, List<Integer> changes) {
    List<Point> points = new ArrayList<>();
    List<Phase> phases = new ArrayList<>();
    List<RunRule.Signal> signals = new ArrayList<>();
    for (Phases.Stretch stretch : Phases.of(counted.size(), changes)) {
      List<Counted> part = counted.subList(stretch.from(), stretch.to());
      Phase phase = phase(part, stretch);
      phases.add(phase);
      List<Double> z = new ArrayList<>();
      List<Integer> at = new ArrayList<>();
      for (int i = 0; i < part.size(); i++) {
        Counted c = part.get(i);
        points.add(point(c, phase));
        if (c.n() > 0) {
          double sigma = sigma(phase.centre(), c.n()) * factor(phase);
          double off = (double) c.x() / c.n() - phase.centre();
          z.add(sigma == 0 ? 0 : off / sigma);
          at.add(stretch.from() + i);
        }
      }
      for (RunRule.Signal s : RunRule.signals(RunRule.FOR_SHARES, z)) {
        signals.add(new RunRule.Signal(s.rule(), at.get(s.from()), at.get(s.to())));
      }
    }
    return new ShareChart(List.copyOf(points), List.copyOf(phases), List.copyOf(signals));
  }

  private static double sigma(double centre, int n) {
    return Math.sqrt(centre * (1 - centre) / n);
  }

  private static double factor(Phase phase) {
    return phase.adjusted() ? phase.sigmaZ() : 1;
  }

  private static Phase phase(List<Counted> part, Phases.Stretch stretch) {
    long x = part.stream().mapToLong(Counted::x).sum();
    long n = part.stream().mapToLong(Counted::n).sum();
    double centre = n == 0 ? 0 : (double) x / n;
    Dispersion dispersion =
        Dispersion.ofShares(
            part.stream().map(Counted::x).toList(), part.stream().map(Counted::n).toList());
    double sigmaZ = sigmaZ(part, centre);
    boolean adjusted =
        dispersion != null
            && dispersion.p() < DISPERSED_AT
            && sigmaZ > 1
            && dispersion.degrees() + 1 >= ADJUST_FROM;
    return new Phase(stretch.from(), stretch.to(), centre, dispersion, sigmaZ, adjusted);
  }

  private static double sigmaZ(List<Counted> part, double centre) {
    double last = Double.NaN;
    double sum = 0;
    int ranges = 0;
    for (Counted c : part) {
      if (c.n() > 0 && centre > 0 && centre < 1) {
        double z = ((double) c.x() / c.n() - centre) / sigma(centre, c.n());
        if (!Double.isNaN(last)) {
          sum += Math.abs(z - last);
          ranges++;
        }
        last = z;
      }
    }
    return ranges == 0 ? 1 : sum / ranges / D2;
  }

  private static Point point(Counted c, Phase phase) {
    double centre = phase.centre();
    if (c.n() == 0) {
      return new Point(c.label(), c.x(), 0, null, centre, 0, 1, 0, 1);
    }
    double plain = 3 * sigma(centre, c.n());
    double reach = plain * factor(phase);
    return new Point(
        c.label(),
        c.x(),
        c.n(),
        (double) c.x() / c.n(),
        centre,
        Math.max(0, centre - reach),
        Math.min(1, centre + reach),
        Math.max(0, centre - plain),
        Math.min(1, centre + plain));
  }
}
