package sunup.cluster;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Whether this node's clock goes with the others'. Looked at in the lane. */
final class OwnClock {
  private static final Logger LOG = LoggerFactory.getLogger(OwnClock.class);

  private final Peers peers;
  private volatile boolean off;

  OwnClock(Peers peers) {
    this.peers = peers;
  }

  /** From any thread. */
  boolean off() {
    return off;
  }

  /** Compares it; true if it was right before and is not now. */
  boolean goesWrong() {
    long by = peers.clockOff();
    boolean before = off;
    off = Math.abs(by) > Clocks.OFF_MS;
    if (off && !before) {
      LOG.error(
          "this node's clock is {} s off the others': it owns nothing until that is mended",
          Math.abs(by) / 1_000);
    } else if (!off && before) {
      LOG.info("this node's clock is right again");
    }
    return off && !before;
  }
}
