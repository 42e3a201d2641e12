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

  private static final int NEVER = Integer.MAX_VALUE;
  private static final int EVER = Integer.MIN_VALUE;
  private static final int ITEM_BITS = 18;

  /** Per item: begin, end of hands, when it would have been good without its booked time, good. */
  private final int[] moments;

  /** Per slot: since when the person was free; person and after which item, each plus 2. */
  private final int[] slots;

  final long[] extra;
  final boolean[] walked;
  final long[] reopened;
  final long[] arrival;

  /** Since when the units were free, and which item released them, or -1. */
  final long[] needSince;

  final int[] needAfter;

  private final int[] rare;

  /** When the room could be worked in. */
  final long[] emptied;

  /** Items in the order in which they were begun; an item done again stands twice. */
  int[] order;

  int begun;

  /** Position of an item's last beginning in the order, or -1. */
  final int[] position;

  Course(Model m) {
    moments = new int[4 * m.items];
    extra = new long[m.items];
    walked = new boolean[m.items];
    reopened = new long[m.items];
    arrival = new long[m.items];
    position = new int[m.items];
    slots = new int[2 * m.firstSlot[m.items]];
    int needs = m.firstNeed[m.items];
    needSince = new long[needs];
    needAfter = new int[needs];
    emptied = new long[m.rooms];
    order = new int[m.items + 16];
    rare = m.rare;
    Arrays.fill(reopened, Model.EVER);
    Arrays.fill(arrival, Model.EVER);
    Arrays.fill(position, -1);
  }

  /** Everything as it was known at now, before the trial's own draws. */
  void reset(Course known) {
    System.arraycopy(known.moments, 0, moments, 0, moments.length);
    System.arraycopy(known.slots, 0, slots, 0, slots.length);
    System.arraycopy(known.needSince, 0, needSince, 0, needSince.length);
    System.arraycopy(known.needAfter, 0, needAfter, 0, needAfter.length);
    for (int i : rare) {
      extra[i] = 0;
      walked[i] = false;
      reopened[i] = Model.EVER;
      arrival[i] = known.arrival[i];
    }
    Arrays.fill(position, -1);
    Arrays.fill(emptied, Model.EVER);
    begun = 0;
  }

  /** Nothing begun, nobody anywhere. */
  void blank() {
    Arrays.fill(moments, NEVER);
    Arrays.fill(needSince, Model.EVER);
    Arrays.fill(needAfter, NOBODY);
    Arrays.fill(emptied, Model.EVER);
    for (int s = 0; s < slots.length / 2; s++) {
      slot(s, NOBODY, Model.EVER, CAME);
    }
  }

  private static int cut(long moment) {
    return (int) Math.max(EVER, Math.min(NEVER, moment));
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

  /** {@link Model#EVER} if it need not be. */
  long good(int i) {
    int moment = moments[4 * i + GOOD];
    return moment == EVER ? Model.EVER : moment;
  }

  /** Whether it was good, lapsed and waits to be done again. */
  boolean isOpenAgain(int i) {
    return moments[4 * i + GOOD] == NEVER && moments[4 * i + NATURAL] < NEVER;
  }

  void good(int i, long at) {
    moments[4 * i + GOOD] = cut(at);
  }

  void set(int i, long begin, long handsEnd, long natural, long good) {
    int o = 4 * i;
    moments[o + BEGIN] = cut(begin);
    moments[o + HANDS_END] = cut(handsEnd);
    moments[o + NATURAL] = cut(natural);
    moments[o + GOOD] = cut(good);
  }

  int person(int slot) {
    return (slots[2 * slot + 1] >>> ITEM_BITS) - 2;
  }

  long since(int slot) {
    int moment = slots[2 * slot];
    return moment == EVER ? Model.EVER : moment;
  }

  /** The item after which the person was free, or {@link #CAME}, {@link #WAS_AWAY}. */
  int after(int slot) {
    return (slots[2 * slot + 1] & (1 << ITEM_BITS) - 1) - 2;
  }

  void slot(int slot, int person, long since, int after) {
    slots[2 * slot] = cut(since);
    slots[2 * slot + 1] = (person + 2) << ITEM_BITS | (after + 2);
  }

  /** Takes over all that another course of the same rooms has of an item. */
  void copy(Model m, int item, Course from) {
    System.arraycopy(from.moments, 4 * item, moments, 4 * item, 4);
    extra[item] = from.extra[item];
    walked[item] = from.walked[item];
    reopened[item] = from.reopened[item];
    arrival[item] = from.arrival[item];
    position[item] = from.position[item];
    int slot = 2 * m.firstSlot[item];
    System.arraycopy(from.slots, slot, slots, slot, 2 * m.firstSlot[item + 1] - slot);
    int need = m.firstNeed[item];
    int needs = m.firstNeed[item + 1] - need;
    System.arraycopy(from.needSince, need, needSince, need, needs);
    System.arraycopy(from.needAfter, need, needAfter, need, needs);
  }

  void enter(int item) {
    if (begun == order.length) {
      order = Arrays.copyOf(order, 2 * begun);
    }
    position[item] = begun;
    order[begun++] = item;
  }
}
