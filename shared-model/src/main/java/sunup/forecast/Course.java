package sunup.forecast;

import java.util.Arrays;

/**
 * What happened on one morning, in a trial or in fact: all that the chain of rule 6 and the last
 * moments are read from.
 */
final class Course {
  /** The person came; nothing before. */
  static final int CAME = -1;

  /** The person was away: a huddle, another duty, a call. */
  static final int WAS_AWAY = -2;

  static final int NOBODY = -1;

  final long[] begin;
  final long[] handsEnd;

  /** The moment at which it would have been good without its booked time, and was good. */
  final long[] natural;

  final long[] good;
  final long[] extra;
  final boolean[] walked;
  final long[] reopened;
  final long[] arrival;
  final int[] slotPerson;

  /** Since when the person was free, and after which item (or CAME, WAS_AWAY). */
  final long[] slotSince;

  final int[] slotAfter;

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
    begin = new long[m.items];
    handsEnd = new long[m.items];
    natural = new long[m.items];
    good = new long[m.items];
    extra = new long[m.items];
    walked = new boolean[m.items];
    reopened = new long[m.items];
    arrival = new long[m.items];
    position = new int[m.items];
    int slots = m.firstSlot[m.items];
    slotPerson = new int[slots];
    slotSince = new long[slots];
    slotAfter = new int[slots];
    int needs = m.firstNeed[m.items];
    needSince = new long[needs];
    needAfter = new int[needs];
    emptied = new long[m.rooms];
    order = new int[m.items + 16];
  }

  /** Everything as it was known at now, before the trial's own draws. */
  void reset(Course known) {
    copy(known.begin, begin);
    copy(known.handsEnd, handsEnd);
    copy(known.natural, natural);
    copy(known.good, good);
    copy(known.slotSince, slotSince);
    copy(known.needSince, needSince);
    Arrays.fill(extra, 0);
    Arrays.fill(walked, false);
    Arrays.fill(reopened, Model.EVER);
    Arrays.fill(arrival, Model.EVER);
    Arrays.fill(position, -1);
    System.arraycopy(known.slotPerson, 0, slotPerson, 0, slotPerson.length);
    System.arraycopy(known.slotAfter, 0, slotAfter, 0, slotAfter.length);
    System.arraycopy(known.needAfter, 0, needAfter, 0, needAfter.length);
    Arrays.fill(emptied, Model.EVER);
    begun = 0;
  }

  private static void copy(long[] from, long[] to) {
    System.arraycopy(from, 0, to, 0, to.length);
  }

  void enter(int item) {
    if (begun == order.length) {
      order = Arrays.copyOf(order, 2 * begun);
    }
    position[item] = begun;
    order[begun++] = item;
  }
}
