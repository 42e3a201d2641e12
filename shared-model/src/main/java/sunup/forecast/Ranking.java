package sunup.forecast;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The order in which roaming people serve (rule 5): asked first, gating before advisory, then the
 * target less the longest remaining tail of usual durations; ties by room and sheet order.
 */
final class Ranking {
  private final Model m;

  Ranking(Model m) {
    this.m = m;
  }

  void rank() {
    int[] order = topological();
    long[] tail = new long[m.items];
    boolean[] gating = new boolean[m.items];
    for (int n = m.items - 1; n >= 0; n--) {
      int i = order[n];
      long most = 0;
      gating[i] = m.marks[i] || m.gatedBy[i] >= 0;
      for (int j : m.dependants[i]) {
        most = Math.max(most, tail[j]);
        gating[i] |= gating[j];
      }
      tail[i] = most + m.usualOf(i);
    }
    List<Integer> ranked = new ArrayList<>();
    for (int i = 0; i < m.items; i++) {
      if (isRanked(i)) {
        ranked.add(i);
      }
    }
    ranked.sort(
        Comparator.comparing((Integer i) -> !m.asked[i])
            .thenComparing(i -> !gating[i])
            .thenComparing(i -> m.target[m.room[i]] - tail[i])
            .thenComparing(i -> i));
    m.rank = new int[m.items];
    m.ranked = new int[ranked.size()];
    for (int i = 0; i < m.items; i++) {
      m.rank[i] = -1;
    }
    for (int n = 0; n < m.ranked.length; n++) {
      m.ranked[n] = ranked.get(n);
      m.rank[m.ranked[n]] = n;
    }
  }

  private boolean isRanked(int i) {
    if (m.slotsOf(i) == 0) {
      return m.needsOf(i) > 0;
    }
    boolean roaming = false;
    for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
      roaming |= m.slotRoaming[s].length > 0;
    }
    return roaming;
  }

  private int[] topological() {
    int[] left = new int[m.items];
    ArrayDeque<Integer> next = new ArrayDeque<>();
    for (int i = 0; i < m.items; i++) {
      left[i] = m.before[i].length;
      if (left[i] == 0) {
        next.add(i);
      }
    }
    int[] order = new int[m.items];
    int n = 0;
    while (!next.isEmpty()) {
      int i = next.poll();
      order[n++] = i;
      for (int j : m.dependants[i]) {
        if (--left[j] == 0) {
          next.add(j);
        }
      }
    }
    if (n < m.items) {
      StringBuilder keys = new StringBuilder();
      String room = "";
      for (int i = 0; i < m.items; i++) {
        if (left[i] > 0 && (room.isEmpty() || room.equals(m.roomId[m.room[i]]))) {
          room = m.roomId[m.room[i]];
          keys.append(keys.length() == 0 ? "" : ", ").append(m.key[i]);
        }
      }
      throw new BadInput(
          "rooms \""
              + room
              + "\".items: these wait for each other in a circle: "
              + keys
              + "; let one of them not come after, or not gate, another");
    }
    return order;
  }
}
