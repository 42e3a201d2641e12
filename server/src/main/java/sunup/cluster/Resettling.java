package sunup.cluster;

import java.util.HashMap;
import java.util.Map;
import sunup.board.MorningId;

/**
 * When a morning moves to the node that the grid suggests: when that has been so for long, and one
 * after the other, since each move gives all its screens a view. Kept in the lane.
 */
final class Resettling {
  /** A morning moves to the node that the grid suggests when it has been so for so long. */
  static final long MOVE_MS = 30_000;

  /** Least time between two moves. */
  static final long PACE_MS = 300;

  private final Map<MorningId, Long> since = new HashMap<>();
  private long movedAt = Long.MIN_VALUE / 2;

  /** Nobody else is suggested for it. */
  void stays(MorningId morning) {
    since.remove(morning);
  }

  /** Another is suggested: true if it moves now. */
  boolean moves(MorningId morning, long now) {
    long from = since.computeIfAbsent(morning, m -> now);
    if (now - from <= MOVE_MS || now - movedAt < PACE_MS) {
      return false;
    }
    since.remove(morning);
    movedAt = now;
    return true;
  }
}
