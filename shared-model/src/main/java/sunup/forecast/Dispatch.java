package sunup.forecast;

/**
 * Who begins what at an instant (rule 5). First steps that follow another step of their room, so
 * that nobody leaves a patient for another room's; then steps for several people that have waited
 * long enough; then each room's own people in the order of the rooms, then the roaming ones by
 * rank.
 *
 * <p>Within one pass people and units only get fewer, and what becomes startable by a beginning
 * that takes no time is an event of the same instant: one pass an instant's event is "again and
 * again until nobody can begin anything".
 */
final class Dispatch {
  /** A step for several people that has waited so long keeps the first who comes. */
  static final long PATIENCE = 5 * 60_000L;

  private final Model m;
  private final Floor floor;
  private final Trial trial;

  /** Who was chosen, by slot of the item. */
  final int[] chosen = new int[Limits.SLOTS];

  /** By word of the room looked at: items that its free people could take. */
  private final long[] could;

  private final boolean[] used;
  private final boolean[][] tried;

  /** Steps for several people that are ready, longest waiting first. */
  private final int[] waiting;

  private final long[] waitingSince;
  private int waitingCount;

  /** Steps that became ready at this instant right after another step of their room. */
  private final int[] next;

  private int nextCount;
  private boolean keeps;

  Dispatch(Model m, Floor floor, Trial trial) {
    this.m = m;
    this.floor = floor;
    this.trial = trial;
    could = new long[m.words];
    used = new boolean[m.people];
    tried = new boolean[Limits.SLOTS][m.people];
    waiting = new int[m.items];
    waitingSince = new long[m.items];
    next = new int[m.items];
  }

  void reset() {
    waitingCount = 0;
    nextCount = 0;
    keeps = false;
  }

  void goesOn(int item) {
    next[nextCount++] = item;
  }

  void waitsFrom(int item, long at) {
    int n = waitingCount++;
    while (n > 0 && waitingSince[waiting[n - 1]] == at && waiting[n - 1] > item) {
      waiting[n] = waiting[n - 1];
      n--;
    }
    waiting[n] = item;
    waitingSince[item] = at;
  }

  void waitsNoMore(int item) {
    int n = 0;
    while (waiting[n] != item) {
      n++;
    }
    waitingCount--;
    System.arraycopy(waiting, n + 1, waiting, n, waitingCount - n);
  }

  void pass(long now) {
    for (int n = 0; n < nextCount; n++) {
      int i = next[n];
      if (floor.isReady(i) && floor.unitsSuffice(i) && choose(i)) {
        trial.begin(i, chosen);
      }
    }
    nextCount = 0;
    if (waitingCount > 0 || keeps) {
      reserve(now);
    }
    for (int w = 0; w < floor.lookRooms.length; w++) {
      long bits = floor.lookRooms[w];
      floor.lookRooms[w] = 0;
      while (bits != 0) {
        int r = (w << 6) + Long.numberOfTrailingZeros(bits);
        bits &= bits - 1;
        if (r < m.rooms) {
          own(r);
        }
      }
    }
    if (floor.lookByRank) {
      floor.lookByRank = false;
      roaming();
    }
  }

  /** What is kept is decided anew at each instant, so that keeping can't lock anybody up. */
  private void reserve(long now) {
    if (keeps) {
      java.util.Arrays.fill(floor.reserved, false);
      floor.lookAtAll();
      keeps = false;
    }
    int n = 0;
    while (n < waitingCount && now - waitingSince[waiting[n]] >= PATIENCE) {
      int i = waiting[n];
      if (floor.unitsSuffice(i) && choose(i)) {
        trial.begin(i, chosen);
        continue;
      }
      if (floor.unitsSuffice(i) && everybodyHasCome(i)) {
        keep(i);
      }
      n++;
    }
  }

  /** Nobody is kept for a step that waits for one who has not come or has gone. */
  private boolean everybodyHasCome(int i) {
    for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
      if (!anyoneIsHere(m.slotOwn[s]) && !anyoneIsHere(m.slotRoaming[s])) {
        return false;
      }
    }
    return true;
  }

  private boolean anyoneIsHere(int[] people) {
    for (int p : people) {
      if (floor.here[p] && !trial.hasLeft(p)) {
        return true;
      }
    }
    return false;
  }

  private void keep(int i) {
    for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
      int p = best(i, m.slotRoaming[s], best(i, m.slotOwn[s], -1, null), null);
      if (p >= 0) {
        floor.reserved[p] = true;
        keeps = true;
      }
    }
  }

  private void own(int r) {
    int base = r * m.words;
    boolean again = floor.ownFree[r] > 0;
    while (again) {
      boolean any = couldTake(r, base);
      again = any && beginFirst(r, base, m.askedItems, false);
      if (any && !again) {
        again = beginFirst(r, base, m.errandItems, true);
      }
      if (any && !again) {
        again = beginFirst(r, base, m.ownItems, false);
      }
    }
    for (int w = base; w < base + m.words; w++) {
      floor.look[w] = 0;
    }
  }

  /** Narrows what is looked at to items that a free own person could take. */
  private boolean couldTake(int r, int base) {
    java.util.Arrays.fill(could, 0);
    for (int p : m.roomPeople[r]) {
      if (floor.free[p] && !floor.reserved[p]) {
        Model.Bits items = m.personOwnItems[p];
        for (int n = 0; n < items.word.length; n++) {
          could[items.word[n] - base] |= items.bits[n];
        }
      }
    }
    long any = 0;
    for (int w = 0; w < m.words; w++) {
      could[w] &= floor.look[base + w];
      any |= could[w];
    }
    return any != 0;
  }

  /** Begins the first startable item of a room that takes one of its own people. */
  private boolean beginFirst(int r, int base, long[] mask, boolean onlyThere) {
    for (int w = 0; w < m.words; w++) {
      long bits = could[w] & mask[base + w];
      while (bits != 0) {
        int i = m.firstItem[r] + (w << 6) + Long.numberOfTrailingZeros(bits);
        long bit = bits & -bits;
        bits ^= bit;
        if (!floor.unitsSuffice(i) || !choose(i)) {
          could[w] &= ~bit;
          floor.look[base + w] &= ~bit;
        } else if (takesOwn(i, onlyThere)) {
          trial.begin(i, chosen);
          return true;
        }
      }
    }
    return false;
  }

  private boolean takesOwn(int i, boolean onlyThere) {
    int there = m.rooms + m.place[i];
    for (int s = 0; s < m.slotsOf(i); s++) {
      int p = chosen[s];
      if (m.personRoom[p] == m.room[i] && (!onlyThere || floor.where[p] == there)) {
        return true;
      }
    }
    return false;
  }

  private void roaming() {
    for (int w = 0; w < floor.lookRanked.length; w++) {
      long bits = floor.lookRanked[w];
      floor.lookRanked[w] = 0;
      while (bits != 0) {
        int i = m.ranked[(w << 6) + Long.numberOfTrailingZeros(bits)];
        bits &= bits - 1;
        if (floor.unitsSuffice(i) && choose(i)) {
          trial.begin(i, chosen);
        }
      }
    }
  }

  /** Chooses free people for all slots of an item, or says that they don't suffice. */
  boolean choose(int i) {
    int first = m.firstSlot[i];
    int end = m.firstSlot[i + 1];
    for (int s = first; s < end; s++) {
      if (floor.groupFree[m.slotOwnGroup[s]] + floor.groupFree[m.slotRoamingGroup[s]] == 0) {
        return false;
      }
    }
    if (end - first == 1) {
      int p = best(i, m.slotOwn[first], -1, null);
      if (p < 0) {
        p = best(i, m.slotRoaming[first], -1, null);
      }
      chosen[0] = p;
      return p >= 0;
    }
    return end == first || assign(i, first);
  }

  /** One free person for one slot, or -1. */
  int someoneFor(int i, int s) {
    return best(i, m.slotRoaming[s], best(i, m.slotOwn[s], -1, null), null);
  }

  private boolean assign(int i, int s) {
    if (s == m.firstSlot[i + 1]) {
      return true;
    }
    int n = s - m.firstSlot[i];
    boolean[] not = tried[n];
    boolean done = false;
    while (!done) {
      int p = best(i, m.slotRoaming[s], best(i, m.slotOwn[s], -1, not), not);
      if (p < 0) {
        break;
      }
      not[p] = true;
      used[p] = true;
      chosen[n] = p;
      done = assign(i, s + 1);
      used[p] = false;
    }
    forget(m.slotOwn[s], not);
    forget(m.slotRoaming[s], not);
    return done;
  }

  private static void forget(int[] people, boolean[] not) {
    for (int p : people) {
      not[p] = false;
    }
  }

  /** Own room, already there, longest idle, id. */
  private int best(int i, int[] people, int than, boolean[] not) {
    int there = m.place[i] >= 0 ? m.rooms + m.place[i] : m.room[i];
    int found = than;
    for (int p : people) {
      if (floor.free[p] && !floor.reserved[p] && !used[p] && (not == null || !not[p])) {
        if (found < 0 || isBetter(p, found, m.room[i], there)) {
          found = p;
        }
      }
    }
    return found;
  }

  private boolean isBetter(int p, int q, int room, int there) {
    boolean ownP = m.personRoom[p] == room;
    boolean ownQ = m.personRoom[q] == room;
    if (ownP != ownQ) {
      return ownP;
    }
    boolean thereP = floor.where[p] == there;
    boolean thereQ = floor.where[q] == there;
    if (thereP != thereQ) {
      return thereP;
    }
    if (floor.idleSince[p] != floor.idleSince[q]) {
      return floor.idleSince[p] < floor.idleSince[q];
    }
    return p < q;
  }
}
