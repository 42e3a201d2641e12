package sunup.forecast;

import java.util.Arrays;

/**
 * The last moment to begin each item of a trial: backward from target + grace of every room over
 * the arcs as they were realised - prerequisites, people and units going from item to item.
 */
final class LastMoments {
  private final Model m;
  private final long[] lastGood;
  private final long[] lastHands;

  /** Last moment to begin, or {@link Model#NEVER} if no start depends on it. */
  final long[] begin;

  LastMoments(Model m) {
    this.m = m;
    lastGood = new long[m.items];
    lastHands = new long[m.items];
    begin = new long[m.items];
  }

  void read(Course c) {
    Arrays.fill(lastGood, Model.NEVER);
    Arrays.fill(lastHands, Model.NEVER);
    Arrays.fill(begin, Model.NEVER);
    for (int r = 0; r < m.rooms; r++) {
      if (m.started[r] == Model.NEVER) {
        lastGood[m.startItem[r]] = m.target[r] + m.grace;
      }
    }
    for (int n = c.begun - 1; n >= 0; n--) {
      int y = c.order[n];
      if (c.position[y] != n) {
        continue;
      }
      long last = Model.NEVER;
      if (lastGood[y] < Model.NEVER) {
        last = lastGood[y] - (c.natural[y] - c.begin[y]);
      }
      if (lastHands[y] < Model.NEVER) {
        last = Math.min(last, lastHands[y] - (c.handsEnd[y] - c.begin[y]));
      }
      begin[y] = last;
      if (last < Model.NEVER) {
        pass(c, y, last);
      }
    }
  }

  private void pass(Course c, int y, long last) {
    for (int j : m.before[y]) {
      if (c.good[j] <= c.begin[y]) {
        lastGood[j] = Math.min(lastGood[j], last);
      }
    }
    for (int s = m.firstSlot[y]; s < m.firstSlot[y + 1]; s++) {
      int after = c.slotPerson[s] >= 0 ? c.slotAfter[s] : -1;
      if (after >= 0) {
        lastHands[after] = Math.min(lastHands[after], last);
      }
    }
    for (int n = m.firstNeed[y]; n < m.firstNeed[y + 1]; n++) {
      int after = c.needAfter[n];
      if (after >= 0) {
        lastGood[after] = Math.min(lastGood[after], last);
      }
    }
  }
}
