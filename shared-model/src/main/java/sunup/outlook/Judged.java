package sunup.outlook;

import java.util.List;
import java.util.Map;
import sunup.wire.Standing;

/**
 * What the board has said of each room, kept so that it does not flicker.
 *
 * @param rooms by room id
 * @param needs room ids in the order of "needs someone"
 * @param sortedAt when they were last sorted, morning time
 */
public record Judged(Map<String, RoomJudged> rooms, List<String> needs, long sortedAt) {
  /** Before anything was judged. */
  public static final Judged NOTHING = new Judged(Map.of(), List.of(), Long.MIN_VALUE);

  /** What was said of a room; of one that was not judged, that it has no case. */
  RoomJudged of(String room) {
    return rooms.getOrDefault(room, RoomJudged.NO_CASE);
  }

  /**
   * One room.
   *
   * @param standing as shown
   * @param lateMinutes as shown
   * @param at50 median start as shown, to the minute, or null if none is
   * @param orMore true if so many at least
   * @param saveable minutes that can still be saved
   * @param ask true if somebody should ask the room
   * @param unheard true if nobody was heard from it yet, or it has gone quiet
   * @param differsSince since when the computed figure has differed from the shown one, or null
   * @param revision journal sequence of what last happened to the room by the shown figure
   * @param figuresOf the moment that the shown figure is of
   * @param waitsFor the people whom the room waits for
   */
  public record RoomJudged(
      Standing standing,
      int lateMinutes,
      Long at50,
      boolean orMore,
      int saveable,
      boolean ask,
      boolean unheard,
      Long differsSince,
      long revision,
      long figuresOf,
      WaitsFor waitsFor) {
    static final RoomJudged NO_CASE =
        new RoomJudged(Standing.NONE, 0, null, false, 0, false, false, null, 0, 0, WaitsFor.NOBODY);

    /** The median start to be shown now: a moment that is past is none any more. */
    Long startShown(long now) {
      if (at50 == null) {
        return null;
      }
      return Math.max(at50, StartTold.minute(now));
    }

    RoomJudged with(WaitsFor newest) {
      return new RoomJudged(
          standing,
          lateMinutes,
          at50,
          orMore,
          saveable,
          ask,
          unheard,
          differsSince,
          revision,
          figuresOf,
          newest);
    }
  }
}
