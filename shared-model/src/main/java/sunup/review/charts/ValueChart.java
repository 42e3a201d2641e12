package sunup.review.charts;

import java.util.ArrayList;
import java.util.List;

/**
 * Individuals and moving ranges: one value a period (mean minutes late of a morning). Limits are
 * the mean plus and minus 3 / 1.128 mean moving ranges; the range's limit is 3.267 of them
 * (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2). Moving ranges do not reach over a
 * marked change.
 *
 * <p>Minutes late are skewed and never below 0: more points lie above the upper limit than the
 * rules' sources say. Read a single one with that in mind, a long run as it stands.
 *
 * @param points in order
 * @param phases one for each marked change, and the first
 * @param signals runs that are no chance
 */
public record ValueChart(List<Point> points, List<Phase> phases, List<RunRule.Signal> signals) {
  /** D4 of two values: the upper limit of a range of two, in mean ranges. */
  static final double D4 = 3.267;

  /** A value of one period; {@code label} names it. */
  public record Valued(String label, double value) {}

  /**
   * One period.
   *
   * @param label names it
   * @param value as given
   * @param range to the value before, or null for the first of a phase
   */
  public record Point(String label, double value, Double range) {}

  /**
   * A stretch between marked changes.
   *
   * @param from index of its first point
   * @param to index after its last
   * @param centre the mean
   * @param meanRange the mean moving range; 0 of a single point
   * @param lower limit; not under the least value that is possible
   * @param upper limit
   * @param rangeUpper limit of the moving ranges
   */
  public record Phase(
      int from,
      int to,
      double centre,
      double meanRange,
      double lower,
      double upper,
      double rangeUpper) {
    double sigma() {
      return meanRange / ShareChart.D2;
    }
  }

  /**
   * @param values in order of time
   * @param changes indices of the first points after a marked change
   * @param rules {@link RunRule#WESTERN_ELECTRIC} or {@link RunRule#NELSON}
   * @param least the least value that is possible, or negative infinity
   */
  public static ValueChart of(
      List<Valued> values, List<Integer> changes, List<RunRule> rules, double least) {
    List<Point> points = new ArrayList<>();
    List<Phase> phases = new ArrayList<>();
    List<RunRule.Signal> signals = new ArrayList<>();
    for (Phases.Stretch stretch : Phases.of(values.size(), changes)) {
      List<Valued> part = values.subList(stretch.from(), stretch.to());
      double sum = 0;
      double ranges = 0;
      for (int i = 0; i < part.size(); i++) {
        double value = part.get(i).value();
        Double range = i == 0 ? null : Double.valueOf(Math.abs(value - part.get(i - 1).value()));
        points.add(new Point(part.get(i).label(), value, range));
        sum += value;
        ranges += range == null ? 0 : range;
      }
      double mean = sum / part.size();
      double meanRange = part.size() < 2 ? 0 : ranges / (part.size() - 1);
      double reach = 3 * meanRange / ShareChart.D2;
      Phase phase =
          new Phase(
              stretch.from(),
              stretch.to(),
              mean,
              meanRange,
              Math.max(least, mean - reach),
              mean + reach,
              D4 * meanRange);
      phases.add(phase);
      double sigma = phase.sigma();
      List<Double> z =
          part.stream().map(v -> sigma == 0 ? 0.0 : (v.value() - mean) / sigma).toList();
      signals.addAll(Phases.moved(RunRule.signals(rules, z), stretch.from()));
    }
    return new ValueChart(List.copyOf(points), List.copyOf(phases), List.copyOf(signals));
  }
}
