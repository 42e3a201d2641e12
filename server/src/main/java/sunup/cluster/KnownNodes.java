package sunup.cluster;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The nodes that the grid names, and those that it named lately. The grid drops a member whose line
 * comes and goes, and takes up to a minute to have it back; meanwhile our own lines to it may well
 * be fine. Of two at one address the newer one counts: a process that was started again is another
 * node. From any thread.
 */
final class KnownNodes {
  /** So long a node counts that the grid names no more. */
  static final long KEPT_MS = 120_000;

  private record Known(Node node, long namedAt) {}

  private final Map<String, Known> byAddress = new HashMap<>();

  /**
   * All that count.
   *
   * @param named by the grid at this moment
   * @param nowMs of a monotonic clock
   */
  synchronized List<Node> all(List<Node> named, long nowMs) {
    for (Node node : named) {
      byAddress.put(node.host() + " " + node.port(), new Known(node, nowMs));
    }
    byAddress.values().removeIf(known -> nowMs - known.namedAt() > KEPT_MS);
    List<Node> all = new ArrayList<>();
    byAddress.values().forEach(known -> all.add(known.node()));
    return all;
  }
}
