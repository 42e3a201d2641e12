package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import sunup.codec.Maybe;
import sunup.wire.Part.ChancePart;

/**
 * The morning as it is and a changed copy of it, simulated with the same draws. Late minutes count
 * against the targets of the morning as it is, on both sides: another target makes none vanish.
 *
 * @param of the moment that both are of
 * @param upTo journal sequence that both are of
 * @param trials trials of each
 * @param lateMinutes expected late minutes of all rooms together, as it is
 * @param copyLateMinutes the same on the copy
 * @param savedMinutes what the copy saves of them; negative where it costs
 * @param errorMinutes standard error of that, from the paired differences
 * @param rooms in the wall's order, those with a first case
 */
public record Tried(
    long of,
    long upTo,
    int trials,
    double lateMinutes,
    double copyLateMinutes,
    double savedMinutes,
    double errorMinutes,
    List<TriedRoom> rooms) {
  public Tried {
    rooms = List.copyOf(rooms);
  }

  /**
   * One room on both sides.
   *
   * @param target as it is; copyTarget on the copy, where a swap brings its case's
   * @param chance its figures as it is, as the desk reads them
   * @param copyChance the same on the copy
   * @param savedMinutes late minutes that the copy saves in this room; absent if nothing is known
   *     of the room
   * @param errorMinutes standard error of that
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record TriedRoom(
      String room,
      long target,
      long copyTarget,
      ChancePart chance,
      ChancePart copyChance,
      @Maybe Double savedMinutes,
      @Maybe Double errorMinutes) {}
}
