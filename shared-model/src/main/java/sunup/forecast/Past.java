package sunup.forecast;

/**
 * What the record of a morning that is over tells beside how it ended: until when rooms were used
 * for something else, and when shared equipment came to them. Without it such waits would pass for
 * work that took long.
 */
public interface Past {
  /** A record that tells nothing of it. */
  Past UNTOLD =
      new Past() {
        @Override
        public Long freed(String room) {
          return null;
        }

        @Override
        public Came came(String room, String kind, long by) {
          return null;
        }
      };

  /**
   * When the room was last said to be free, after it had been said to be used for something else
   * than its case.
   *
   * @return epoch milliseconds, not after the room's start; null if nobody said so
   */
  Long freed(String room);

  /**
   * When equipment of a kind last came to a room.
   *
   * @param by epoch milliseconds: what came later does not count
   * @return null if nobody said so
   */
  Came came(String room, String kind, long by);

  /**
   * A coming.
   *
   * @param at epoch milliseconds
   * @param from the room that had it before, or null
   */
  record Came(long at, String from) {}
}
