package sunup.archive;

import java.util.LinkedHashMap;
import java.util.Map;
import sunup.board.MorningId;
import sunup.review.replay.PastWall;

/**
 * The last past mornings that were asked for. Their forecasts may have to be made again, so each is
 * made once: who asks for one that is being made waits for it, and for no other. Thread-safe.
 */
final class Pasts {
  /** How one is made. */
  interface Making {
    PastWall make() throws InterruptedException;
  }

  private final int most;

  /** The one asked for longest ago first. */
  private final Map<MorningId, Past> kept = new LinkedHashMap<>();

  /**
   * @param most so many are kept
   */
  Pasts(int most) {
    this.most = most;
  }

  /**
   * A past morning.
   *
   * @param length of its journal: one that has grown since is made anew
   */
  PastWall of(MorningId morning, int length, Making making) throws InterruptedException {
    Past past;
    synchronized (kept) {
      past = kept.remove(morning);
      if (past == null || past.length != length) {
        past = new Past(length);
      }
      kept.put(morning, past);
      if (kept.size() > most) {
        kept.remove(kept.keySet().iterator().next());
      }
    }
    return past.wall(making);
  }

  /** One morning at a length of its journal. */
  private static final class Past {
    private final int length;
    private PastWall wall;

    Past(int length) {
      this.length = length;
    }

    /** Whoever comes first makes it; if that fails the next one tries again. */
    synchronized PastWall wall(Making making) throws InterruptedException {
      if (wall == null) {
        wall = making.make();
      }
      return wall;
    }
  }
}
