package sunup.cluster;

import java.util.Set;

/**
 * A process of the cluster.
 *
 * @param id new at each start: a node that was started again is another one
 * @param host where its bus listens
 * @param port its bus's port
 * @param reads types of events that it reads, which a process never changes; empty from a version
 *     that does not say so where nodes are named
 */
public record Node(String id, String host, int port, Set<String> reads) {
  public Node {
    reads = Set.copyOf(reads);
  }

  /** One that does not say what it reads. */
  public Node(String id, String host, int port) {
    this(id, host, port, Set.of());
  }
}
