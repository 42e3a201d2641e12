package sunup.review.stats;

/**
 * Between which two of the sorted values a quantile of the population lies: the interval of the
 * share at or below it, read back on the values (R. S. Woodruff, Confidence intervals for medians
 * and other position measures, J Am Stat Assoc 47 (1952) 635-646). The share's interval is Wilson's
 * at the effective number of starts, as those of one morning go together; ranks are taken outwards,
 * so that the interval rather holds too often than too seldom.
 *
 * @param lower rank from 1 on
 * @param upper rank, n at most
 */
public record OrderRanks(int lower, int upper) {
  /**
   * @param q the quantile
   * @param below how many values lie at or below its estimate, by cluster
   * @return null where one end lies beyond all values: too few to say
   */
  public static OrderRanks of(double q, Clusters below, double level) {
    int n = (int) below.n();
    double effective = n / below.effect();
    Interval share = Proportions.wilson(q * effective, effective, level);
    if (share == null) {
      return null;
    }
    int lower = (int) Math.floor(n * share.lower());
    int upper = n + 1 - (int) Math.floor(n * (1 - share.upper()));
    return lower < 1 || upper > n ? null : new OrderRanks(lower, upper);
  }
}
