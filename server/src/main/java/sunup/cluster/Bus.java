package sunup.cluster;

import io.vertx.core.buffer.Buffer;

/**
 * Carries messages between nodes: in order from one to another, at most once, or not at all.
 * Nothing durable rests on it. From any thread.
 */
public interface Bus {
  /**
   * Sends a message.
   *
   * @param payload bytes that go with it as they are, or null
   * @return false if it is not sent: there is no line to the node, or too much is unsent
   */
  boolean send(String node, BusMessage message, Buffer payload);

  /** Gets what comes in; on any thread, in order for each node. */
  interface Listener {
    void heard(String from, BusMessage message, Buffer payload);

    /** The process of a node has ended: its line to here did, and its port refuses. */
    default void ended(String node) {}
  }
}
