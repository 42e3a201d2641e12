package sunup.forecast;

import java.util.stream.IntStream;

/**
 * What a trial asks of an item, packed: one row of 16 ints an item, so that beginning an item or
 * finishing it reads one stretch of memory; and its links to other items in two flat lists. All of
 * it stands in {@link Model} too, one array a field.
 */
final class Rows {
  static final int SHIFT = 4;

  static final int FLAGS = 0;
  static final int ROOM = 1;

  /** The index of its word in bit sets by room, and its bit there. */
  static final int WORD = 2;

  static final int BIT = 3;
  static final int RANK = 4;
  static final int FIRST_SLOT = 5;
  static final int END_SLOT = 6;

  /** The only one who can ever fill the only slot, or -1. */
  static final int ONLY = 7;

  static final int FIRST_NEED = 8;
  static final int END_NEED = 9;
  static final int FIRST_DEPENDANT = 10;
  static final int END_DEPENDANT = 11;
  static final int FIRST_BEFORE = 12;
  static final int END_BEFORE = 13;

  /** Where it is done: a room, or rooms + a place. */
  static final int WHERE = 14;

  /** Bits of the flags. */
  static final int MARKS = 1;

  static final int CONTINUES = 1 << 1;
  static final int OWN = 1 << 2;
  static final int LAPSES = 1 << 3;
  static final int ENDS_NEEDS = 1 << 4;
  static final int WAITS = 1 << 5;
  static final int EXTRA = 1 << 6;
  static final int ARRIVAL = 1 << 7;

  /** It needs neither people nor equipment: it begins as soon as it may. */
  static final int BY_ITSELF = 1 << 8;

  static final int STARTS = 1 << 9;
  static final int SEVERAL = 1 << 10;

  /** Its hands are log-normal: they are drawn before the trial. */
  static final int DRAWN = 1 << 11;

  private Rows() {}

  static void set(Model m) {
    m.row = new int[m.items << SHIFT];
    m.dependant = flat(m.dependants);
    m.prerequisite = flat(m.before);
    int dependant = 0;
    int before = 0;
    for (int i = 0; i < m.items; i++) {
      int o = i << SHIFT;
      m.row[o + FLAGS] = flags(m, i);
      m.row[o + ROOM] = m.room[i];
      m.row[o + WORD] = m.wordOf(i);
      m.row[o + BIT] = (i - m.firstItem[m.room[i]]) & 63;
      m.row[o + RANK] = m.rank[i];
      m.row[o + FIRST_SLOT] = m.firstSlot[i];
      m.row[o + END_SLOT] = m.firstSlot[i + 1];
      m.row[o + ONLY] = only(m, i);
      m.row[o + FIRST_NEED] = m.firstNeed[i];
      m.row[o + END_NEED] = m.firstNeed[i + 1];
      m.row[o + FIRST_DEPENDANT] = dependant;
      dependant += m.dependants[i].length;
      m.row[o + END_DEPENDANT] = dependant;
      m.row[o + FIRST_BEFORE] = before;
      before += m.before[i].length;
      m.row[o + END_BEFORE] = before;
      m.row[o + WHERE] = m.place[i] >= 0 ? m.rooms + m.place[i] : m.room[i];
    }
    waiting(m);
    m.logNormal = new double[2 * m.items];
    for (int i = 0; i < m.items; i++) {
      m.logNormal[2 * i] = m.hands[i].mu();
      m.logNormal[2 * i + 1] = m.hands[i].sigma();
    }
    m.drawn =
        IntStream.range(0, m.items)
            .filter(i -> m.hands[i].isLogNormal() && m.state[i] == Model.OPEN)
            .toArray();
    m.drawnStream =
        IntStream.of(m.drawn).mapToLong(i -> Hash.stream(m.scope[i], Hash.HANDS, 0)).toArray();
  }

  private static void waiting(Model m) {
    m.undone =
        IntStream.range(0, m.items)
            .filter(i -> m.state[i] != Model.GOOD || m.life[i] > 0)
            .toArray();
    m.booked = open(m).filter(i -> !m.marks[i] && m.notBefore[i] > 0).toArray();
    m.arriving = open(m).filter(i -> m.isArrival[i]).toArray();
    m.missing = new short[m.items];
    for (int i = 0; i < m.items; i++) {
      int missing = !m.marks[i] && m.notBefore[i] > 0 ? 1 : 0;
      for (int j : m.before[i]) {
        missing += m.state[j] == Model.GOOD ? 0 : 1;
      }
      missing += m.place[i] >= 0 && m.opensAt[m.place[i]] > 0 ? 1 : 0;
      missing += m.inRoom[i] && m.occupied[m.room[i]] != null ? 1 : 0;
      m.missing[i] = (short) missing;
    }
  }

  private static IntStream open(Model m) {
    return IntStream.range(0, m.items).filter(i -> m.state[i] == Model.OPEN);
  }

  private static int flags(Model m, int i) {
    int flags = 0;
    flags |= m.marks[i] ? MARKS : 0;
    flags |= m.continues[i] ? CONTINUES : 0;
    flags |= (m.ownItems[m.wordOf(i)] >>> (i - m.firstItem[m.room[i]]) & 1) != 0 ? OWN : 0;
    flags |= m.life[i] > 0 && m.gatedBy[i] >= 0 ? LAPSES : 0;
    flags |= m.endsNeeds[i].length > 0 ? ENDS_NEEDS : 0;
    flags |= m.waits[i].isZero() ? 0 : WAITS;
    flags |= m.extraOneIn[i] > 0 ? EXTRA : 0;
    flags |= m.isArrival[i] ? ARRIVAL : 0;
    flags |= m.slotsOf(i) == 0 && m.needsOf(i) == 0 ? BY_ITSELF : 0;
    flags |= m.startItem[m.room[i]] == i ? STARTS : 0;
    flags |= m.slotsOf(i) > 1 ? SEVERAL : 0;
    flags |= m.hands[i].isLogNormal() ? DRAWN : 0;
    return flags;
  }

  private static int only(Model m, int i) {
    if (m.slotsOf(i) != 1) {
      return -1;
    }
    int[] own = m.slotOwn[m.firstSlot[i]];
    int[] roaming = m.slotRoaming[m.firstSlot[i]];
    if (own.length + roaming.length != 1) {
      return -1;
    }
    return own.length == 1 ? own[0] : roaming[0];
  }

  private static int[] flat(int[][] lists) {
    int n = 0;
    for (int[] list : lists) {
      n += list.length;
    }
    int[] all = new int[n];
    n = 0;
    for (int[] list : lists) {
      System.arraycopy(list, 0, all, n, list.length);
      n += list.length;
    }
    return all;
  }
}
