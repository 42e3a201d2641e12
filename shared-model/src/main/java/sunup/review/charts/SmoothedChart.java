package sunup.review.charts;

import java.util.ArrayList;
import java.util.List;

/**
 * An exponentially weighted moving average, which sees a small lasting change sooner than single
 * values do (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4).
 *
 * @param target where it begins
 * @param weight of the newest value, 0 to 1
 * @param points in order
 */
public record SmoothedChart(double target, double weight, List<Point> points) {
  /** One period: the average so far, its limits, and whether it is beyond them. */
  public record Point(String label, double average, double lower, double upper, boolean beyond) {}

  /**
   * @param values in order of time
   * @param target what they should be about: a mean of earlier ones
   * @param sigma of single values, from the same earlier ones
   * @param weight of the newest value, 0.2 to 0.3 is usual
   */
  public static SmoothedChart of(
      List<ValueChart.Valued> values, double target, double sigma, double weight) {
    if (!(weight > 0 && weight <= 1)) {
      throw new IllegalArgumentException("the newest value's weight must be over 0 and at most 1");
    }
    List<Point> points = new ArrayList<>();
    double average = target;
    double left = 1;
    for (ValueChart.Valued value : values) {
      average = weight * value.value() + (1 - weight) * average;
      left *= (1 - weight) * (1 - weight);
      double reach = 3 * sigma * Math.sqrt(weight / (2 - weight) * (1 - left));
      points.add(
          new Point(
              value.label(),
              average,
              target - reach,
              target + reach,
              Math.abs(average - target) > reach));
    }
    return new SmoothedChart(target, weight, List.copyOf(points));
  }
}
