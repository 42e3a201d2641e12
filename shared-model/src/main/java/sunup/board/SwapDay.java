package sunup.board;

import java.util.List;

/**
 * Another case was swapped into this room, for its people to confirm.
 *
 * @param with the room that the other case went to
 * @param left what was made ready here for a case that is gone, and counts for nobody
 * @param confirmedAt when somebody of the room said that it is dealt with, or null
 * @param confirmedBy the role that said so, or null
 */
public record SwapDay(
    RoomId room,
    RoomId with,
    long at,
    List<ItemRef> left,
    Long confirmedAt,
    Role confirmedBy,
    Touch last) {
  /** The journal sequence that last touched it. */
  public long revision() {
    return last.revision();
  }
}
