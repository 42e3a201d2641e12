package sunup.cluster;

import java.util.List;
import java.util.stream.IntStream;

/** How a node sees the cluster, as a test says. */
public final class States {
  private States() {}

  /**
   * @param nodes how many are heard, this one included
   * @param unread whether it can't read a morning
   */
  public static Routing.State of(boolean leaving, boolean amongMost, boolean unread, int nodes) {
    List<Routing.Unread> cannot =
        unread ? List.of(new Routing.Unread("main/2026-11-25", "a type that is new")) : List.of();
    List<Peers.Seen> seen =
        IntStream.range(0, nodes)
            .mapToObj(at -> new Peers.Seen("node-" + at, at == 0, 0, 0, 0))
            .toList();
    return new Routing.State("node-0", leaving, false, amongMost, cannot, seen);
  }
}
