package sunup.live;

import io.vertx.core.buffer.Buffer;
import sunup.wire.Audience;

/** Whoever gets a morning's frames. Called in the lane; must not block. Buffers are shared. */
interface Screen {
  Audience audience();

  /** Everything anew. */
  void view(Buffer message);

  /** The next frame. */
  void frame(Buffer message);

  /** A heartbeat. */
  void beat(Buffer message);
}
