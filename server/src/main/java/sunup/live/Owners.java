package sunup.live;

import sunup.board.MorningId;
import sunup.suites.Owner;

/** Finds the owner of a morning. */
public interface Owners {
  /**
   * The owner of the morning; always the same while it lives. May block, so never call it on an
   * event loop.
   *
   * @throws RuntimeException if there is none now; ask again later
   */
  Owner owner(MorningId morning);
}
