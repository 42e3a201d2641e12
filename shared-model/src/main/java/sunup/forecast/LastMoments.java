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
  private final int[] last;

  LastMoments(Model m) {
    this.m = m;
    last = new int[2 * m.items];
  }

  /**
   * Last moment to begin an item that was begun, or {@link Moments#NONE} if no start waits for it.
   */
  int begin(int i) {
    return last[2 * i];
  }

  void read(Course c) {
    Arrays.fill(last, Moments.NONE);
    for (int r = 0; r < m.rooms; r++) {
      // A start that is begun after the cap would not have been seen by the room alone.
      if (m.started[r] == Model.NEVER && c.begin(m.startItem[r]) <= m.cap[r]) {
        last[2 * m.startItem[r] + GOOD] = Moments.cut(m.target[r] + m.grace);
      }
    }
    for (int n = c.begun - 1; n >= 0; n--) {
      int y = c.order[n];
      int good = last[2 * y + GOOD];
      int hands = last[2 * y + HANDS];
      if (Math.min(good, hands) < Moments.NONE && c.position[y] == n) {
        long begun = c.begin(y);
        long byGood = good < Moments.NONE ? good - (c.natural(y) - begun) : good;
        long byHands = hands < Moments.NONE ? hands - (c.handsEnd(y) - begun) : hands;
        int moment = Moments.cut(Math.min(byGood, byHands));
        last[2 * y] = moment;
        pass(c, y, begun, moment);
      }
    }
  }

  /**
   * What y, begun then, asks of those before it. From a doing that was not an item's last nobody is
   * asked for anything: the item's moments are those of its last doing.
   */
  private void pass(Course c, int y, long begun, int moment) {
    int[] row = m.row;
    int o = y << Rows.SHIFT;
    int list = row[o + Rows.BEFORE];
    int end = Rows.listEnd(list);
    for (int n = Rows.listFirst(list); n < end; n++) {
      int j = m.prerequisite[n];
      if (c.good(j) <= begun) {
        least(2 * j + GOOD, moment);
      }
    }
    int what = row[o + Rows.WHAT];
    int first = row[o + Rows.FIRST_SLOT];
    for (int s = first; s < first + Rows.slots(what); s++) {
      int after = c.after(s);
      if (after >= 0 && c.handsEnd(after) == c.since(s)) {
        least(2 * after + HANDS, moment);
      }
    }
    first = row[o + Rows.FIRST_NEED];
    for (int n = first; n < first + Rows.needs(what); n++) {
      int after = c.needAfter[n];
      if (after >= 0 && c.good(after) == c.needSince[n]) {
        least(2 * after + GOOD, moment);
      }
    }
  }

  private void least(int at, int moment) {
    if (moment < last[at]) {
      last[at] = moment;
    }
  }
}
