package sunup.outlook;

import sunup.forecast.Draw;

/** What is left of something that has gone on for a while. */
final class Left {
  private Left() {}

  /**
   * The rest of a duration of which {@code elapsed} has run, given that it is not over: the median
   * and the 90 % point of what is left. They are those of the log-logistic distribution with the
   * same two numbers, which has them in closed form: S(t) = 1 / (1 + (t / usual)^b) with S = 1/10
   * at one-in-ten. The longer it has gone on the more is left, as for the log-normal.
   */
  static Draw of(Draw.LogNormal whole, long elapsed) {
    if (elapsed <= 0) {
      return whole;
    }
    double b = Math.log(9) / Math.log((double) whole.oneInTenMs() / whole.usualMs());
    double still = 1 / (1 + Math.pow((double) elapsed / whole.usualMs(), b));
    long median = rest(whole, b, still * 0.5, elapsed);
    return new Draw.LogNormal(median, Math.max(median, rest(whole, b, still * 0.1, elapsed)));
  }

  /** The moment at which {@code upper} is left of S, less what has run; at least a millisecond. */
  private static long rest(Draw.LogNormal whole, double b, double upper, long elapsed) {
    double at = whole.usualMs() * Math.pow(1 / upper - 1, 1 / b);
    return Math.max(1, Math.round(at) - elapsed);
  }
}
