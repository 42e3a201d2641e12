package sunup.forecast;

import java.util.stream.IntStream;

/**
 * What a trial asks of an item, packed: one row of 8 ints an item, so that beginning an item or
 * finishing it reads one line of memory; and its links to other items in two flat lists. All of it
 * stands in {@link Model} too, one array a field.
 */
final class Rows {
  static final int SHIFT = 3;

  /** Flags (16 bits), slots (4), needs (4), bit in its word of bit sets by room (6). */
  static final int WHAT = 0;

  /** The room, and where it is done: a room, or rooms + a place (16 bits each). */
  static final int ROOM = 1;

  /** Its word in bit sets by room, and one more than the only one who can ever take it, or 0. */
  static final int WORD = 2;

  static final int RANK = 3;
  static final int FIRST_SLOT = 4;
  static final int FIRST_NEED = 5;

  /** First of the dependants in their list (24 bits) and how many (8); prerequisites likewise. */
  static final int DEPENDANTS = 6;

  static final int BEFORE = 7;

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

  /**
   * One person of the room does it alone and in the room, and it is good when the hands are done:
   * most of a set-up, and the short way through a trial.
   */
  static final int PLAIN = 1 << 12;

  /** As plain, but that it may wait without the person: the end of the hands is its person's. */
  static final int ALONE = 1 << 13;

  /** Its waiting is log-normal: it is drawn before the trial too. */
  static final int WAITS_DRAWN = 1 << 14;

  private static final int LIST_BITS = 8;

  private Rows() {}

  static int slots(int what) {
    return what >>> 16 & 15;
  }

  static int needs(int what) {
    return what >>> 20 & 15;
  }

  static int bit(int what) {
    return what >>> 24;
  }

  static int listFirst(int list) {
    return list >>> LIST_BITS;
  }

  static int listEnd(int list) {
    return (list >>> LIST_BITS) + (list & (1 << LIST_BITS) - 1);
  }

  static void set(Model m) {
    m.row = new int[m.items << SHIFT];
    m.dependant = flat(m.dependants);
    m.prerequisite = flat(m.before);
    int dependant = 0;
    int before = 0;
    for (int i = 0; i < m.items; i++) {
      int o = i << SHIFT;
      int bit = (i - m.firstItem[m.room[i]]) & 63;
      m.row[o + WHAT] = flags(m, i) | m.slotsOf(i) << 16 | m.needsOf(i) << 20 | bit << 24;
      int where = m.place[i] >= 0 ? m.rooms + m.place[i] : m.room[i];
      m.row[o + ROOM] = m.room[i] | where << 16;
      m.row[o + WORD] = m.wordOf(i) | (only(m, i) + 1) << 16;
      m.row[o + RANK] = m.rank[i];
      m.row[o + FIRST_SLOT] = m.firstSlot[i];
      m.row[o + FIRST_NEED] = m.firstNeed[i];
      m.row[o + DEPENDANTS] = dependant << LIST_BITS | m.dependants[i].length;
      dependant += m.dependants[i].length;
      m.row[o + BEFORE] = before << LIST_BITS | m.before[i].length;
      before += m.before[i].length;
    }
    m.urgent = new long[m.ownItems.length];
    for (int w = 0; w < m.urgent.length; w++) {
      m.urgent[w] = m.askedItems[w] | m.errandItems[w];
    }
    waiting(m);
    draws(m);
    int rare = EXTRA | LAPSES | ARRIVAL;
    m.rare = IntStream.range(0, m.items).filter(i -> (m.row[i << SHIFT] & rare) != 0).toArray();
  }

  private static void draws(Model m) {
    m.lead = new int[m.items];
    for (int i = 0; i < m.items; i++) {
      m.lead[i] = m.slotsOf(i) == 0 ? Model.NOBODY : only(m, i) >= 0 ? only(m, i) : Model.ANYBODY;
    }
    int[] hands = open(m).filter(i -> m.hands[i].isLogNormal()).toArray();
    int[] led = IntStream.of(hands).filter(i -> m.lead[i] >= 0).toArray();
    int[] nobody = IntStream.of(hands).filter(i -> m.lead[i] == Model.NOBODY).toArray();
    int[] anybody = IntStream.of(hands).filter(i -> m.lead[i] == Model.ANYBODY).toArray();
    int[] waits = open(m).filter(i -> m.waits[i].isLogNormal()).toArray();
    m.drawnLed = led.length;
    m.drawnKnown = led.length + nobody.length + waits.length;
    m.drawn = new int[m.drawnKnown + anybody.length];
    m.drawnLead = IntStream.of(led).map(i -> m.lead[i]).toArray();
    m.drawnStream = new long[m.drawn.length];
    m.drawnMu = new double[m.drawn.length];
    m.drawnSigma = new double[m.drawn.length];
    int n = 0;
    n = draws(m, n, led, Hash.HANDS);
    n = draws(m, n, nobody, Hash.HANDS);
    n = draws(m, n, waits, Hash.WAITS);
    draws(m, n, anybody, Hash.HANDS);
  }

  private static int draws(Model m, int from, int[] items, int purpose) {
    int n = from;
    for (int i : items) {
      Dist d = purpose == Hash.WAITS ? m.waits[i] : m.hands[i];
      m.drawn[n] = purpose == Hash.WAITS ? m.items + i : i;
      m.drawnStream[n] = Hash.stream(m.scope[i], purpose, 0);
      m.drawnMu[n] = d.mu();
      m.drawnSigma[n++] = d.sigma();
    }
    return n;
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
    flags |= m.waits[i].isLogNormal() && m.state[i] == Model.OPEN ? WAITS_DRAWN : 0;
    int more = MARKS | LAPSES | ENDS_NEEDS | ARRIVAL | BY_ITSELF | SEVERAL;
    int only = only(m, i);
    boolean alone = only >= 0 && m.personRoom[only] == m.room[i];
    boolean here = m.place[i] < 0 && m.needsOf(i) == 0;
    boolean known = m.hands[i].isConstant() || m.hands[i].isLogNormal();
    if ((flags & more) == 0 && alone && here) {
      flags |= ALONE;
      flags |= (flags & (WAITS | EXTRA)) == 0 && known ? PLAIN : 0;
    }
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
