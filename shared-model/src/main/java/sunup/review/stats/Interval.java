package sunup.review.stats;

/** From the lower to the upper bound, both of it. */
public record Interval(double lower, double upper) {
  public boolean contains(double x) {
    return lower <= x && x <= upper;
  }
}
