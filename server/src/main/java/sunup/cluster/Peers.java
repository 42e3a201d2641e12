package sunup.cluster;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.suites.Clock;

/** The other nodes, by what they say of themselves. Kept in the lane, but for the echo. */
final class Peers {
  private static final Logger LOG = LoggerFactory.getLogger(Peers.class);

  private final String self;
  private final Clock clock;
  private final Members members;
  private final Bus bus;
  private final StoodStill stoodStill;
  private final int nodesMeant;
  private final Map<String, Peer> all = new ConcurrentHashMap<>();
  private Set<String> told = Set.of();
  private volatile List<Seen> seen = List.of();
  private volatile boolean amongMost;

  /**
   * @param nodesMeant how many nodes there are when all are up
   */
  Peers(String self, int nodesMeant, Clock clock, Members members, Bus bus) {
    this.self = self;
    this.nodesMeant = nodesMeant;
    this.clock = clock;
    this.members = members;
    this.bus = bus;
    this.stoodStill = new StoodStill(clock.monotonicMs());
  }

  void heard(String from, BusMessage.Pulse pulse) {
    Peer peer = all.computeIfAbsent(from, Peer::new);
    peer.heard(pulse, clock.monotonicMs(), clock.realMs());
  }

  /** The last that was heard of a node's clock, or null: goes back to it. From any thread. */
  Long echoFor(String node) {
    Peer peer = all.get(node);
    return peer == null ? null : peer.at();
  }

  /** True if it was made so lately that it proves life. From any thread. */
  boolean fresh(Long echo) {
    return echo != null && clock.monotonicMs() - echo <= Placement.SILENT_MS;
  }

  /** Silent until it is heard again; false if it was already. */
  boolean ended(String id) {
    Peer peer = all.get(id);
    if (peer == null || peer.ended) {
      return false;
    }
    long now = clock.monotonicMs();
    boolean lived = peer.live(now);
    peer.ended = true;
    peer.heardAt = Math.min(peer.heardAt, now - Placement.SILENT_MS - 1);
    return lived;
  }

  /** Those that were heard of late. */
  List<Peer> live() {
    long now = clock.monotonicMs();
    return all.values().stream().filter(peer -> peer.live(now)).toList();
  }

  /** True if a node that is heard says of one that is not, and has not ended, that it lives. */
  boolean othersHearMore() {
    List<Peer> live = live();
    return live.stream()
        .flatMap(peer -> peer.hears().stream())
        .anyMatch(id -> !id.equals(self) && live(id) == null && !isEnded(id));
  }

  private Set<String> hears() {
    long now = clock.monotonicMs();
    Set<String> ids = new HashSet<>();
    all.values().stream().filter(peer -> peer.bothWays(now)).forEach(peer -> ids.add(peer.id));
    return ids;
  }

  /** True if it told the others that it hears one whom it hears no more: they wait for that. */
  boolean lostOne() {
    return !hears().containsAll(told);
  }

  private boolean isEnded(String id) {
    Peer peer = all.get(id);
    return peer != null && peer.ended;
  }

  /** This one if it was heard of late, else null. */
  Peer live(String id) {
    Peer peer = id == null ? null : all.get(id);
    return peer != null && peer.live(clock.monotonicMs()) ? peer : null;
  }

  /** Called often: if this node stood still, what others said meanwhile could not be heard. */
  void noticeStanding() {
    long now = clock.monotonicMs();
    long stood = stoodStill.since(now);
    if (stood > 0) {
      LOG.warn("this node stood still for {} ms", stood);
      all.values().forEach(peer -> peer.heardAt = Math.min(now, peer.heardAt + stood));
    }
  }

  /** Those that were silent for long, unless they still count as nodes: what is known of them. */
  void forget(long silentMs) {
    long now = clock.monotonicMs();
    Set<String> named = named();
    all.values().removeIf(peer -> now - peer.heardAt > silentMs && !named.contains(peer.id));
  }

  private Set<String> named() {
    Set<String> ids = new HashSet<>();
    members.nodes().forEach(node -> ids.add(node.id()));
    return ids;
  }

  /** Says to all that this node is here. */
  void tell(
      boolean stays,
      int screens,
      List<BusMessage.Claim> claims,
      List<MorningId> unfit,
      Set<String> reads) {
    long now = clock.monotonicMs();
    told = hears();
    for (Node node : members.nodes()) {
      if (!node.id().equals(self)) {
        Peer peer = all.get(node.id());
        Long echo = peer == null ? null : peer.at();
        long held = peer == null ? 0 : now - peer.heardAt;
        BusMessage.Pulse pulse =
            new BusMessage.Pulse(
                now, echo, held, clock.realMs(), stays, screens, claims, unfit, reads, told);
        bus.send(node.id(), pulse, null);
      }
    }
  }

  /**
   * Of these types, what all members and all who were heard of late read: as they say in their
   * pulses, or as they said when they joined, which is known of a silent one, too, that this node
   * has never heard. A process never reads less than it did.
   */
  Set<String> readByAll(Set<String> types) {
    Map<String, Set<String>> named = new HashMap<>();
    live().forEach(peer -> named.put(peer.id, Set.of()));
    members.nodes().forEach(node -> named.put(node.id(), node.reads()));
    named.keySet().removeIf(id -> id.equals(self) || isEnded(id));
    Set<String> read = new HashSet<>(types);
    named.forEach(
        (id, said) -> {
          Peer peer = all.get(id);
          read.removeIf(type -> !said.contains(type) && (peer == null || !peer.reads(type)));
        });
    return Set.copyOf(read);
  }

  /** How far the middle of all clocks is from this node's, milliseconds. */
  long clockOff() {
    return Clocks.off(live().stream().map(Peer::offset).filter(off -> off != null).toList());
  }

  /**
   * How a node is seen from here.
   *
   * @param heardMsAgo 0 for this node
   */
  record Seen(String node, boolean self, long heardMsAgo, int screens, int mornings) {}

  /**
   * Looks who is there.
   *
   * @param screens this node's
   * @param mornings that it owns
   */
  void look(int screens, int mornings) {
    long now = clock.monotonicMs();
    long hear = hears().size();
    // One that was started again is named by its new id only.
    long ended = named().stream().filter(this::isEnded).count();
    amongMost = (1 + hear) * 2 > nodesMeant - ended && !othersHearMore();
    List<Seen> found = new ArrayList<>();
    found.add(new Seen(self, true, 0, screens, mornings));
    for (Peer peer : live()) {
      found.add(new Seen(peer.id, false, now - peer.heardAt, peer.screens(), peer.mornings()));
    }
    seen = found;
  }

  /** All that are there, this one first. From any thread; half a second old at most. */
  List<Seen> seen() {
    return seen;
  }

  /**
   * True if this node and more than half of those that have not ended hear each other, and these
   * hear nobody whom it does not: what it does not know then, no other node knows better. From any
   * thread; half a second old at most.
   */
  boolean amongMost() {
    return amongMost;
  }
}
