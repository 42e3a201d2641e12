package sunup.forecast;

import java.util.Arrays;

/**
 * The last moment to begin each item of a trial: backward from target + grace of every room over
 * the arcs as they were realised - prerequisites, people and units going from item to item.
 */
final class LastMoments {
  private static final int GOOD = 0;
  private static final int HANDS = 1;

  private final Model m;

  /** Per item: the last moment for it to be good, and for its people to be free. */
  private final long[] last;

  /** Last moment to begin, or {@link Model#NEVER} if no start depends on it. */
  final long[] begin;

  LastMoments(Model m) {
    this.m = m;
    last = new long[2 * m.items];
    begin = new long[m.items];
  }

  void read(Course c) {
    Arrays.fill(last, Model.NEVER);
    Arrays.fill(begin, Model.NEVER);
    for (int r = 0; r < m.rooms; r++) {
      if (m.started[r] == Model.NEVER) {
        last[2 * m.startItem[r] + GOOD] = m.target[r] + m.grace;
      }
    }
    for (int n = c.begun - 1; n >= 0; n--) {
      int y = c.order[n];
      long good = last[2 * y + GOOD];
      long hands = last[2 * y + HANDS];
      if (Math.min(good, hands) < Model.NEVER && c.position[y] == n) {
        long begun = c.begin(y);
        long byGood = good < Model.NEVER ? good - (c.natural(y) - begun) : good;
        long byHands = hands < Model.NEVER ? hands - (c.handsEnd(y) - begun) : hands;
        begin[y] = Math.min(byGood, byHands);
        pass(c, y, begun, begin[y]);
      }
    }
  }

  private void pass(Course c, int y, long begun, long moment) {
    int[] row = m.row;
    int o = y << Rows.SHIFT;
    int end = row[o + Rows.END_BEFORE];
    for (int n = row[o + Rows.FIRST_BEFORE]; n < end; n++) {
      int j = m.prerequisite[n];
      if (c.good(j) <= begun) {
        least(2 * j + GOOD, moment);
      }
    }
    end = row[o + Rows.END_SLOT];
    for (int s = row[o + Rows.FIRST_SLOT]; s < end; s++) {
      int after = c.after(s);
      if (after >= 0 && c.person(s) >= 0) {
        least(2 * after + HANDS, moment);
      }
    }
    end = row[o + Rows.END_NEED];
    for (int n = row[o + Rows.FIRST_NEED]; n < end; n++) {
      int after = c.needAfter[n];
      if (after >= 0) {
        least(2 * after + GOOD, moment);
      }
    }
  }

  private void least(int at, long moment) {
    if (moment < last[at]) {
      last[at] = moment;
    }
  }
}
