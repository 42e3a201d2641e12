package sunup.cluster;

import java.util.Collection;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.live.Lane;
import sunup.live.Place;

/**
 * Gives mornings to other nodes in order. The next one reads a morning first, and this one goes on
 * with it meanwhile, so that screens have nobody for a moment only. In the lane.
 */
final class Giving {
  /** How long the next one may read a morning before it is given to it all the same. */
  static final long PREPARE_MS = 2_000;

  private static final Logger LOG = LoggerFactory.getLogger(Giving.class);

  private final Succession succession;
  private final Peers peers;
  private final Bus bus;
  private final Lane lane;
  private final Hands hands;

  /** What it needs of the one who owns. */
  interface Hands {
    /** Takes them off a morning; {@code then} is run when all under way is answered. */
    void letGo(Wanted one, Runnable then);

    void tellAll();

    /** The morning is not taken back for a while. */
    void holdOff(Wanted one);

    /** This node ends. */
    boolean leaving();

    /** Not a moment longer than it takes: this node's clock is wrong. */
    boolean atOnce();
  }

  Giving(Succession succession, Peers peers, Bus bus, Lane lane, Hands hands) {
    this.succession = succession;
    this.peers = peers;
    this.bus = bus;
    this.lane = lane;
    this.hands = hands;
  }

  /** Gives it to the next in line, if there is one. */
  void give(Wanted one) {
    if (one.heir != null && !hands.atOnce()) {
      return;
    }
    Peer next = succession.next(one.morning).orElse(null);
    if (next == null) {
      if ((hands.leaving() || hands.atOnce())) {
        hands.letGo(one, () -> {});
      }
      return;
    }
    one.leaving = true;
    one.heir = next.id;
    if (hands.atOnce()) {
      prepared(one, next.id);
      return;
    }
    bus.send(next.id, new BusMessage.Prepare(one.morning), null);
    lane.after(PREPARE_MS, () -> prepared(one, next.id));
  }

  /** A node has read what is to be given to it, or had time to. */
  void prepared(Wanted one, String node) {
    if (one.local == null || !node.equals(one.heir)) {
      return;
    }
    one.heir = null;
    MorningId morning = one.morning;
    Peer there = peers.live(node);
    if (there == null || !there.mayTake(morning)) {
      one.leaving = hands.leaving();
      give(one);
      return;
    }
    LOG.info("{}: given to {}", morning, node);
    // Claimed until what is under way is answered: nobody takes it before.
    one.giving = one.owned() ? one.claim() : null;
    hands.letGo(
        one,
        () -> {
          one.giving = null;
          one.leaving = hands.leaving();
          hands.tellAll();
          hands.holdOff(one);
          bus.send(node, new BusMessage.HandOver(morning), null);
        });
  }

  /**
   * Waits until the others have what was given away, or there is nobody to take it.
   *
   * @param then run in the lane
   */
  void waitForOthers(Collection<Wanted> wanted, Runnable then) {
    boolean others = peers.live().stream().anyMatch(Peer::stays);
    boolean waits =
        others
            && wanted.stream().anyMatch(one -> one.leaving && !(one.place instanceof Place.There));
    if (waits) {
      lane.after(Placement.TICK_MS / 4, () -> waitForOthers(wanted, then));
    } else {
      then.run();
    }
  }
}
