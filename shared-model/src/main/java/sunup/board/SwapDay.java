package sunup.board;

import java.util.List;

/**
 * Another case was swapped into this room, for its people to confirm.
 *
 * @param with the room that the other case went to
 * @param left what was made ready here for a case that went, and counts for nobody: also what an
 *     earlier swap left here unconfirmed
 * @param confirmedAt when somebody of the room said that it is dealt with, or null
 * @param confirmedBy the role that said so, or null
 */
public record SwapDay(
    RoomId room,
    RoomId with,
    long at,
    List<Left> left,
    Long confirmedAt,
    Role confirmedBy,
    Touch last) {
  /**
   * One thing left here.
   *
   * @param section as the case's sheet had it when the case went: a changed list may not ask for it
   */
  public record Left(ItemRef item, Section section) {}

  /** The journal sequence that last touched it. */
  public long revision() {
    return last.revision();
  }
}
