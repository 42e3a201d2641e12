package sunup.board;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * A case left this room, or another one came, for the room's people to confirm.
 *
 * @param with the room that the other case went to or came from
 * @param left what was made ready here for a case that went, and counts for nobody: also what an
 *     earlier change left here unconfirmed
 * @param came what was made ready elsewhere for the case that came, and is void with its coming
 * @param way whether a case only went or only came; null if one went and another came
 * @param confirmedAt when somebody of the room said that it is dealt with, or null
 * @param confirmedBy the role that said so, or null
 */
public record SwapDay(
    RoomId room,
    RoomId with,
    long at,
    List<Left> left,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<ItemRef> came,
    @JsonInclude(JsonInclude.Include.NON_NULL) Way way,
    Long confirmedAt,
    Role confirmedBy,
    Touch last) {
  public SwapDay {
    left = List.copyOf(left);
    came = came == null ? List.of() : List.copyOf(came);
  }

  /** Half of a swap: a case was moved to a room that was free. */
  public enum Way {
    /** The room's case was moved to another room, and none came. */
    @JsonProperty("went")
    WENT,
    /** A case of another room was moved to this one, which had none that takes place. */
    @JsonProperty("came")
    CAME
  }

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

  SwapDay confirmed(long when, Role by, Touch touch) {
    return new SwapDay(room, with, at, left, came, way, when, by, touch);
  }
}
