package sunup.live;

import io.vertx.core.buffer.Buffer;
import sunup.wire.Audience;

/**
 * Whoever gets a morning's frames. Called in the lane, or on the screen's loop; must not block.
 * Buffers are shared.
 */
interface Screen {
  Audience audience();

  /** Where it is written to, or null for the lane. Screens of one loop are told by one task. */
  default Loop loop() {
    return null;
  }

  /** Everything anew. */
  void view(Buffer message);

  /** The next frame. */
  void frame(Buffer message);

  /**
   * A heartbeat.
   *
   * @param madeAt when, by the monotonic clock
   */
  void beat(Buffer message, long madeAt);
}
