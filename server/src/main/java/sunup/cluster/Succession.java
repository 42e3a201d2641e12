package sunup.cluster;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sunup.board.MorningId;

/** Whose turn it is to take a morning: first the node that the grid suggests, then the others. */
final class Succession {
  /** How much longer the next in line waits. */
  static final long IN_LINE_MS = 1_500;

  /** How much longer a node waits that is {@link #few not able to tell} who lives. */
  static final long FEW_MS = 8_000;

  private final String self;
  private final int nodesMeant;
  private final Members members;
  private final Peers peers;

  /**
   * @param nodesMeant how many nodes there are when all are up
   */
  Succession(String self, int nodesMeant, Members members, Peers peers) {
    this.self = self;
    this.nodesMeant = nodesMeant;
    this.members = members;
    this.peers = peers;
  }

  /** How long this node leaves a morning that nobody has to others. */
  long waitMs(MorningId morning) {
    return waitMs(morning, null) + (few() ? FEW_MS : 0);
  }

  /** Whether this node hears less than half of the nodes, or fewer than those do that it hears. */
  boolean few() {
    return (1 + peers.live().size()) * 2 < nodesMeant || peers.othersHearMore();
  }

  /**
   * By its place in the line alone.
   *
   * @param but a node that is not in the line, or null
   */
  long waitMs(MorningId morning, String but) {
    List<String> line = new ArrayList<>();
    line.add(self);
    for (Peer peer : peers.live()) {
      if (peer.mayTake(morning) && !peer.id.equals(but)) {
        line.add(peer.id);
      }
    }
    line.sort(inLine(morning));
    return line.indexOf(self) * IN_LINE_MS;
  }

  /** Who is to get a morning that this node gives away: whom the others let go first, too. */
  Optional<Peer> next(MorningId morning) {
    return peers.live().stream()
        .filter(peer -> peer.mayTake(morning))
        .min(Comparator.comparing(peer -> peer.id, inLine(morning)));
  }

  private Comparator<String> inLine(MorningId morning) {
    String first = suggested(morning);
    return Comparator.comparing((String id) -> !id.equals(first))
        .thenComparing(id -> (id + morning).hashCode())
        .thenComparing(id -> id);
  }

  /** The node that the grid suggests, if it is another one and lives; else null. */
  Peer suggestedOther(MorningId morning) {
    String first = suggested(morning);
    return self.equals(first) ? null : peers.live(first);
  }

  private String suggested(MorningId morning) {
    return members.suggested(morning.suite().value());
  }
}
