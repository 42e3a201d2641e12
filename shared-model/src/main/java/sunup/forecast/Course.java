package sunup.forecast;

import java.util.Arrays;

/**
 * What happened on one morning, in a trial or in fact: all that the chain of rule 6 and the last
 * moments are read from. The moments of an item stand side by side: a trial comes to the items in
 * no order, and what is apart in memory costs more than what is computed with it.
 */
final class Course {
  /** The person came; nothing before. */
  static final int CAME = -1;

  /** The person was away: a huddle, another duty, a call. */
  static final int WAS_AWAY = -2;

  static final int NOBODY = -1;

  private static final int BEGIN = 0;
  private static final int HANDS_END = 1;
  private static final int NATURAL = 2;
  private static final int GOOD = 3;

  /** Per item: begin, end of hands, when it would have been good without its booked time, good. */
  private final long[] moments;

  /** Per slot: since when the person was free; the person, and above it after which item. */
  private final long[] slots;

  final long[] extra;
  final boolean[] walked;
  final long[] reopened;
  final long[] arrival;

  /** Since when the units were free, and which item released them, or -1. */
  final long[] needSince;

  final int[] needAfter;

  /** When the room could be worked in. */
  final long[] emptied;

  /** Items in the order in which they were begun; an item done again stands twice. */
  int[] order;

  int begun;

  /** Position of an item's last beginning in the order, or -1. */
  final int[] position;

  Course(Model m) {
    moments = new long[4 * m.items];
    extra = new long[m.items];
    walked = new boolean[m.items];
    reopened = new long[m.items];
    arrival = new long[m.items];
    position = new int[m.items];
    slots = new long[2 * m.firstSlot[m.items]];
    int needs = m.firstNeed[m.items];
    needSince = new long[needs];
    needAfter = new int[needs];
    emptied = new long[m.rooms];
    order = new int[m.items + 16];
  }

  /** Everything as it was known at now, before the trial's own draws. */
  void reset(Course known) {
    System.arraycopy(known.moments, 0, moments, 0, moments.length);
    System.arraycopy(known.slots, 0, slots, 0, slots.length);
    System.arraycopy(known.needSince, 0, needSince, 0, needSince.length);
    System.arraycopy(known.needAfter, 0, needAfter, 0, needAfter.length);
    Arrays.fill(extra, 0);
    Arrays.fill(walked, false);
    Arrays.fill(reopened, Model.EVER);
    Arrays.fill(arrival, Model.EVER);
    Arrays.fill(position, -1);
    Arrays.fill(emptied, Model.EVER);
    begun = 0;
  }

  /** Nothing begun, nobody anywhere. */
  void blank() {
    Arrays.fill(moments, Model.NEVER);
    Arrays.fill(needSince, Model.EVER);
    Arrays.fill(needAfter, NOBODY);
    for (int s = 0; s < slots.length / 2; s++) {
      slot(s, NOBODY, Model.EVER, CAME);
    }
  }

  long begin(int i) {
    return moments[4 * i + BEGIN];
  }

  long handsEnd(int i) {
    return moments[4 * i + HANDS_END];
  }

  /** The moment at which it would have been good without its booked time. */
  long natural(int i) {
    return moments[4 * i + NATURAL];
  }

  long good(int i) {
    return moments[4 * i + GOOD];
  }

  void good(int i, long at) {
    moments[4 * i + GOOD] = at;
  }

  void set(int i, long begin, long handsEnd, long natural, long good) {
    int o = 4 * i;
    moments[o + BEGIN] = begin;
    moments[o + HANDS_END] = handsEnd;
    moments[o + NATURAL] = natural;
    moments[o + GOOD] = good;
  }

  int person(int slot) {
    return (int) slots[2 * slot + 1];
  }

  long since(int slot) {
    return slots[2 * slot];
  }

  /** The item after which the person was free, or {@link #CAME}, {@link #WAS_AWAY}. */
  int after(int slot) {
    return (int) (slots[2 * slot + 1] >> 32);
  }

  void slot(int slot, int person, long since, int after) {
    slots[2 * slot] = since;
    slots[2 * slot + 1] = ((long) after << 32) | (person & 0xffffffffL);
  }

  void enter(int item) {
    if (begun == order.length) {
      order = Arrays.copyOf(order, 2 * begun);
    }
    position[item] = begun;
    order[begun++] = item;
  }
}
