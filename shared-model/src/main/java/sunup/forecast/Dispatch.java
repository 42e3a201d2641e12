package sunup.forecast;

/**
 * Who begins what at an instant (rule 5). First two-person steps that have waited long enough, then
 * each room's own people in the order of the rooms, then the roaming ones by rank.
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

  private final boolean[] used;
  private final boolean[][] tried;

  /** Steps for several people that are ready, longest waiting first. */
  private final int[] waiting;

  private final long[] waitingSince;
  private int waitingCount;
  private boolean keeps;

  Dispatch(Model m, Floor floor, Trial trial) {
    this.m = m;
    this.floor = floor;
    this.trial = trial;
    used = new boolean[m.people];
    tried = new boolean[Limits.SLOTS][m.people];
    waiting = new int[m.items];
    waitingSince = new long[m.items];
  }

  void reset() {
    waitingCount = 0;
    keeps = false;
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
    if (waitingCount > 0 || keeps) {
      reserve(now);
    }
    for (int w = 0; w < floor.dirty.length; w++) {
      long bits = floor.dirty[w];
      floor.dirty[w] = 0;
      while (bits != 0) {
        int r = (w << 6) + Long.numberOfTrailingZeros(bits);
        bits &= bits - 1;
        if (r < m.rooms && floor.ownFree[r] > 0) {
          own(r);
        }
      }
    }
    if (floor.roamingDirty) {
      floor.roamingDirty = false;
      if (floor.readyRankedCount > 0) {
        roaming();
      }
    }
  }

  /** What is kept is decided anew at each instant, so that keeping can't lock anybody up. */
  private void reserve(long now) {
    if (keeps) {
      java.util.Arrays.fill(floor.reserved, false);
      floor.allDirty();
      keeps = false;
    }
    int n = 0;
    while (n < waitingCount && now - waitingSince[waiting[n]] >= PATIENCE) {
      int i = waiting[n];
      if (floor.unitsSuffice(i) && choose(i)) {
        trial.begin(i, chosen);
        continue;
      }
      if (floor.unitsSuffice(i) && canEverBeDone(i)) {
        keep(i);
      }
      n++;
    }
  }

  private boolean canEverBeDone(int i) {
    for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
      if (!anyoneStays(m.slotOwn[s]) && !anyoneStays(m.slotRoaming[s])) {
        return false;
      }
    }
    return true;
  }

  private boolean anyoneStays(int[] people) {
    for (int p : people) {
      if (!trial.hasLeft(p)) {
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
    boolean again = true;
    while (again && floor.ownFree[r] > 0) {
      again = beginFirst(r, base, m.askedItems, false);
      if (!again && hasErrands(base)) {
        again = beginFirst(r, base, m.errandItems, true);
      }
      if (!again) {
        again = beginFirst(r, base, m.ownItems, false);
      }
    }
  }

  private boolean hasErrands(int base) {
    for (int w = 0; w < m.words; w++) {
      if ((floor.ready[base + w] & m.errandItems[base + w]) != 0) {
        return true;
      }
    }
    return false;
  }

  /** Begins the first startable item of a room that takes one of its own people. */
  private boolean beginFirst(int r, int base, long[] mask, boolean onlyThere) {
    for (int w = 0; w < m.words; w++) {
      long bits = floor.ready[base + w] & mask[base + w];
      while (bits != 0) {
        int i = m.firstItem[r] + (w << 6) + Long.numberOfTrailingZeros(bits);
        bits &= bits - 1;
        if (floor.unitsSuffice(i) && choose(i) && takesOwn(i, onlyThere)) {
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
    for (int w = 0; w < floor.readyRanked.length; w++) {
      long bits = floor.readyRanked[w];
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
