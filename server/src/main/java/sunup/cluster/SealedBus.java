package sunup.cluster;

import io.vertx.core.buffer.Buffer;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.suites.Seal;

/** The bus with a seal on every command that leaves, and a look at that of each that comes. */
final class SealedBus implements Bus {
  private static final String NO_SEAL =
      "The node of this screen can't show that the command is its own. Send it again.";
  private static final Logger LOG = LoggerFactory.getLogger(SealedBus.class);

  private final Bus bus;
  private final Seal seal;
  private final AtomicBoolean told = new AtomicBoolean();

  SealedBus(Bus bus, Seal seal) {
    this.bus = bus;
    this.seal = seal;
  }

  @Override
  public boolean send(String node, BusMessage message, Buffer payload) {
    return bus.send(
        node,
        message instanceof BusMessage.Ask ask
            ? ask.sealed(seal.of(ask.morning(), ask.submission()))
            : message,
        payload);
  }

  /**
   * False for a command whose seal does not hold; its sender is told "not now", as it may be a node
   * that is about to be started anew.
   */
  boolean mayBeHeard(String from, BusMessage message) {
    if (!(message instanceof BusMessage.Ask ask)
        || seal.holds(ask.morning(), ask.submission(), ask.seal())) {
      return true;
    }
    if (!told.getAndSet(true)) {
      LOG.warn(
          "{} sends commands without the seal of this board: it is an older node, has another"
              + " database, or is none of ours. They are not carried out",
          from);
    }
    bus.send(from, new BusMessage.Reply(ask.id(), "later", null, null, NO_SEAL, null), null);
    return false;
  }
}
