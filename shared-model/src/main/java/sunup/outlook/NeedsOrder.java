package sunup.outlook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import sunup.outlook.Judged.RoomJudged;
import sunup.wire.Standing;

/**
 * The order of "needs someone" on all screens: worst saveable first, sorted no more than once a
 * minute (in a rehearsal that runs fast, no more than eyes can follow). Between two sorts the lines
 * stay as they stand; a new one comes last, but for a room that is stuck, which goes at once to
 * where it belongs.
 *
 * @param ids room ids in order
 * @param sortedAt when they were last sorted; {@link Long#MIN_VALUE} before the first time
 */
record NeedsOrder(List<String> ids, long sortedAt) {

  /**
   * @param wanted the rooms that need someone, in the wall's order
   * @param weights how much each counts
   * @param every least time from one sort to the next, in the morning's milliseconds
   */
  static NeedsOrder of(
      Judged before,
      List<String> wanted,
      Map<String, Integer> weights,
      Map<String, RoomJudged> rooms,
      long every,
      long now) {
    List<String> kept = new ArrayList<>(before.needs());
    kept.retainAll(wanted);
    if (wanted.isEmpty() || kept.isEmpty() || isDue(before.sortedAt(), every, now)) {
      List<String> sorted = new ArrayList<>(wanted);
      // Stable: equal ones stay in the wall's order.
      sorted.sort(Comparator.comparing((String id) -> -weights.get(id)));
      return new NeedsOrder(List.copyOf(sorted), now);
    }
    for (String id : wanted) {
      if (becameStuck(before, rooms, id)) {
        kept.remove(id);
        kept.add(place(kept, weights, id), id);
      } else if (!kept.contains(id)) {
        kept.add(id);
      }
    }
    return new NeedsOrder(List.copyOf(kept), before.sortedAt());
  }

  private static boolean isDue(long sortedAt, long every, long now) {
    return sortedAt > now || sortedAt <= now - every;
  }

  private static boolean becameStuck(Judged before, Map<String, RoomJudged> rooms, String id) {
    return rooms.get(id).standing() == Standing.STUCK && before.of(id).standing() != Standing.STUCK;
  }

  private static int place(List<String> kept, Map<String, Integer> weights, String id) {
    for (int i = 0; i < kept.size(); i++) {
      if (weights.get(kept.get(i)) < weights.get(id)) {
        return i;
      }
    }
    return kept.size();
  }
}
