package sunup.cluster;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Whether this node's clock is the one that is off. */
final class Clocks {
  /** So far from the others a node owns nothing. */
  static final long OFF_MS = 30_000;

  private Clocks() {}

  /**
   * How far the middle of all clocks is from this node's: most nodes are right. Of two nodes nobody
   * can say which one is.
   *
   * @param others clocks of the other nodes, less this node's
   */
  static long off(Collection<Long> others) {
    List<Long> all = new ArrayList<>(others);
    all.add(0L);
    all.sort(Long::compare);
    int size = all.size();
    long low = all.get((size - 1) / 2);
    long high = all.get(size / 2);
    return Math.abs(low) <= Math.abs(high) ? low : high;
  }
}
