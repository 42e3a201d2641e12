package sunup.cluster;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import sunup.board.MorningId;

/** What is known of another node by its pulses. Kept in the lane. */
final class Peer {
  /** A sample of its clock is good if the way there and back took no longer. */
  private static final long WAY_MS_MOST = 1_000;

  final String id;
  long heardAt = Long.MIN_VALUE / 2;

  /** Read by those who send, too. */
  private volatile BusMessage.Pulse last;

  /** Its process is gone, until it is heard all the same. */
  boolean ended;

  private Map<MorningId, BusMessage.Claim> claims = Map.of();

  /** Its real clock minus ours, or null as long as nobody knows. */
  private Long offset;

  Peer(String id) {
    this.id = id;
  }

  void heard(BusMessage.Pulse pulse, long nowMs, long realMs) {
    if (last != null && pulse.at() < last.at()) {
      // From a line that ended, after the first of the line that followed: it was so once.
      return;
    }
    if (pulse.echo() != null) {
      long way = nowMs - pulse.echo() - pulse.heldMs();
      if (way >= 0 && way <= WAY_MS_MOST) {
        offset = pulse.realMs() + way / 2 - realMs;
      }
    }
    last = pulse;
    heardAt = nowMs;
    ended = false;
    Map<MorningId, BusMessage.Claim> said = new HashMap<>();
    pulse.claims().forEach(claim -> said.put(claim.morning(), claim));
    claims = said;
  }

  /** Its clock when it last spoke, or null. */
  Long at() {
    return last == null ? null : last.at();
  }

  Long offset() {
    return offset;
  }

  boolean live(long nowMs) {
    return last != null && nowMs - heardAt <= Placement.SILENT_MS;
  }

  /** Live, and of late it heard this node too. */
  boolean bothWays(long nowMs) {
    Long echo = last == null ? null : last.echo();
    return live(nowMs) && echo != null && nowMs - echo <= Placement.SILENT_MS;
  }

  /** The nodes that it says that it hears, and that hear it. */
  Set<String> hears() {
    return last == null || last.hears() == null ? Set.of() : last.hears();
  }

  /** Whether it may be given the morning. */
  boolean mayTake(MorningId morning) {
    return last.stays() && !last.unfit().contains(morning);
  }

  boolean stays() {
    return last != null && last.stays();
  }

  /** Whether it says that it reads a type that is not settled. */
  boolean reads(String type) {
    return last != null && last.reads() != null && last.reads().contains(type);
  }

  /** Its claim on the morning, or null. */
  BusMessage.Claim claim(MorningId morning) {
    return claims.get(morning);
  }

  int screens() {
    return last == null ? 0 : last.screens();
  }

  int mornings() {
    return claims.size();
  }
}
