package sunup.cluster;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;

/** What this node and the others can read, while versions are mixed. Kept in the lane. */
final class Reading {
  private static final Logger LOG = LoggerFactory.getLogger(Reading.class);

  private final Set<String> recent;
  private final Peers peers;
  private final Map<MorningId, String> unfit = new LinkedHashMap<>();
  private volatile Set<String> byAll = Set.of();
  private volatile Map<MorningId, String> unread = Map.of();

  /**
   * @param recent types of events that this program reads and not every node may
   */
  Reading(Set<String> recent, Peers peers) {
    this.recent = recent;
    this.peers = peers;
  }

  Set<String> recent() {
    return recent;
  }

  /** Looks at what the others say. */
  void tick() {
    byAll = peers.readByAll(recent);
  }

  /** Whether all nodes say that they read a recent type. From any thread. */
  boolean byAll(String type) {
    return byAll.contains(type);
  }

  /** Whether a node may not know a type yet, nor a command that yields it. From any thread. */
  boolean notByAll(String type) {
    return recent.contains(type) && !byAll(type);
  }

  /** This node can't read the morning: it is left to others. */
  void cannot(MorningId morning, String why) {
    LOG.error("{} is left to nodes that can read it: {}", morning, why);
    unfit.put(morning, why);
    unread = Map.copyOf(unfit);
  }

  boolean can(MorningId morning) {
    return !unfit.containsKey(morning);
  }

  List<MorningId> unfit() {
    return List.copyOf(unfit.keySet());
  }

  /** Why mornings are left to others. From any thread. */
  Map<MorningId, String> unread() {
    return unread;
  }
}
