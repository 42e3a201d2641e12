package sunup.live;

import io.vertx.core.buffer.Buffer;
import sunup.board.MorningId;
import sunup.wire.Audience;

/** The line to a node whose screens show a morning that is owned here. */
public interface Feed {
  /** What a message is. */
  enum Kind {
    VIEW,
    FRAME,
    BEAT
  }

  /**
   * Sends it what a screen of this audience here gets, once for all its screens.
   *
   * @return false if so much is unsent that it was left out
   */
  boolean tell(MorningId morning, Audience audience, Kind kind, Buffer message);
}
