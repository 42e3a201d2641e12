package sunup.moves;

/**
 * The mean of paired differences and its standard error.
 *
 * @param mean of all trials
 * @param error standard deviation of the differences by the root of their number
 */
public record Paired(double mean, double error) {
  /** Of one difference a trial; at least one. */
  public static Paired of(long[] differences) {
    long sum = 0;
    for (long d : differences) {
      sum += d;
    }
    int n = differences.length;
    double mean = (double) sum / n;
    double squares = 0;
    for (long d : differences) {
      squares += (d - mean) * (d - mean);
    }
    return new Paired(mean, n < 2 ? 0 : Math.sqrt(squares / (n - 1) / n));
  }
}
