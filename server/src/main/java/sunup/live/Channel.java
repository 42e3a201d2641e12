package sunup.live;

import sunup.board.MorningId;
import sunup.suites.Standpoint;

/**
 * What the screens of this node are told of a morning, whoever makes it. All but {@link #known} and
 * {@link #journal} is called in the lane.
 */
interface Channel {
  MorningId morning();

  void open();

  void close();

  /**
   * Sends the screen a view, or the frames that it missed, and from then on all frames.
   *
   * @param resume null for a screen that has nothing yet
   */
  void join(Screen screen, Resume resume);

  void leave(Screen screen);

  /** Sends the screen everything anew. */
  void view(Screen screen);

  /** The owner's last standpoint, or null if it is not known here. From any thread. */
  Standpoint known();

  /** How the journal stands, as far as it is known here. From any thread. */
  Journaling journal();

  /** Where a screen was when it lost its socket. */
  record Resume(MorningId morning, long epoch, long n) {}

  /** How the journal of a morning stands. */
  enum Journaling {
    /** Nothing was heard yet. */
    OPENING,
    /** It confirmed the owner's epoch a moment ago. */
    ANSWERS,
    /** The owner says that it does not answer. */
    READ_ONLY,
    /** Neither was heard for a while. */
    SILENT
  }
}
