package sunup.forecast;

import java.util.Arrays;

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
  private final People people;

  /** Who was chosen, by slot of the item. */
  final int[] chosen;

  /** Steps for several people that are ready, longest waiting first. */
  private final int[] waiting;

  private final long[] waitingSince;
  private int waitingCount;

  /** Steps that became ready at this instant right after another step of their room. */
  private final int[] next;

  private int nextCount;
  private boolean keeps;

  /** Groups of which one alone does ranked items; whether one of them can be had. */
  private final int[] roamingGroups;

  private final boolean[] someoneFree;

  Dispatch(Model m, Floor floor, Trial trial) {
    this.m = m;
    this.floor = floor;
    this.trial = trial;
    people = new People(m, floor);
    chosen = people.chosen;
    waiting = new int[m.items];
    waitingSince = new long[m.items];
    next = new int[m.items];
    roamingGroups = Arrays.stream(m.rankedGroups).flatMapToInt(Arrays::stream).distinct().toArray();
    someoneFree = new boolean[m.groupMembers.length];
  }

  void reset() {
    waitingCount = 0;
    nextCount = 0;
    keeps = false;
  }

  /** One free person for one slot, or -1. */
  int someoneFor(int i, int slot) {
    return people.someoneFor(i, slot);
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

  /** Whether all that a pass would do now is to give out work in this room and by rank. */
  boolean isQuiet(int room, long now) {
    if (nextCount > 0
        || keeps
        || (waitingCount > 0 && now - waitingSince[waiting[0]] >= PATIENCE)) {
      return false;
    }
    long others = floor.lookRooms[room >> 6] & ~(1L << room);
    for (int w = 0; w < floor.lookRooms.length; w++) {
      others |= w == room >> 6 ? 0 : floor.lookRooms[w];
    }
    return others == 0;
  }

  void pass(long now) {
    // What is kept is decided anew at each instant: who was kept before goes on with a start too.
    if (keeps) {
      floor.keepNobody();
      keeps = false;
    }
    if (nextCount > 0) {
      goOn();
    }
    if (waitingCount > 0) {
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

  private void goOn() {
    for (int n = 0; n < nextCount; n++) {
      int i = next[n];
      if (floor.isReady(i) && canBegin(i)) {
        trial.begin(i, chosen);
      }
    }
    nextCount = 0;
  }

  private boolean canBegin(int i) {
    return floor.unitsSuffice(i) && people.choose(i);
  }

  private void reserve(long now) {
    int n = 0;
    while (n < waitingCount && now - waitingSince[waiting[n]] >= PATIENCE) {
      int i = waiting[n];
      if (canBegin(i)) {
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

  private boolean anyoneIsHere(int[] of) {
    for (int p : of) {
      if (floor.here[p] && !trial.hasLeft(p)) {
        return true;
      }
    }
    return false;
  }

  private void keep(int i) {
    for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
      int p = people.someoneFor(i, s);
      if (p >= 0) {
        floor.reserved[p >> 6] |= 1L << p;
        keeps = true;
      }
    }
  }

  private void own(int r) {
    int base = r * m.words;
    boolean again = true;
    while (again && floor.ownFree[r] > 0) {
      again =
          (m.hasAsked[r] && beginFirst(r, base, m.askedItems, false))
              || (m.hasErrands[r] && beginFirst(r, base, m.errandItems, true))
              || beginFirst(r, base, m.ownItems, false);
    }
  }

  /** Begins the first startable item of a room that takes one of its own people. */
  private boolean beginFirst(int r, int base, long[] mask, boolean onlyThere) {
    for (int w = 0; w < m.words; w++) {
      long bits = mask[base + w] & floor.ready[base + w];
      if (bits != 0) {
        bits &= couldTake(r, w);
      }
      while (bits != 0) {
        int i = m.firstItem[r] + (w << 6) + Long.numberOfTrailingZeros(bits);
        bits &= bits - 1;
        if ((m.row[(i << Rows.SHIFT) + Rows.WHAT] & Rows.ALONE) != 0) {
          trial.alone.begin(i);
          return true;
        }
        if (canBegin(i) && takesOwn(i, onlyThere)) {
          trial.begin(i, chosen);
          return true;
        }
      }
    }
    return false;
  }

  /** The items of a word of the room that a free own person could take. */
  private long couldTake(int r, int w) {
    long items = 0;
    for (int p : m.roomPeople[r]) {
      if (floor.isAvailable(p)) {
        items |= m.personOwn[p * m.words + w];
      }
    }
    return items;
  }

  private boolean takesOwn(int i, boolean onlyThere) {
    int there = m.row[(i << Rows.SHIFT) + Rows.ROOM] >>> 16;
    int room = m.row[(i << Rows.SHIFT) + Rows.ROOM] & 0xffff;
    int slots = Rows.slots(m.row[(i << Rows.SHIFT) + Rows.WHAT]);
    for (int s = 0; s < slots; s++) {
      int p = chosen[s];
      if (m.personRoom[p] == room && (!onlyThere || floor.where[p] == there)) {
        return true;
      }
    }
    return false;
  }

  private void roaming() {
    lookWhoIsFree();
    for (int w = 0; w < floor.readyRanked.length; w++) {
      long left = floor.readyRanked[w];
      while (left != 0) {
        left &= withSomebodyFree(w);
        if (left == 0) {
          break;
        }
        int i = m.ranked[(w << 6) + Long.numberOfTrailingZeros(left)];
        left &= left - 1;
        if (canBegin(i)) {
          trial.begin(i, chosen);
          lookWhoIsFree();
        }
      }
    }
  }

  private void lookWhoIsFree() {
    for (int g : roamingGroups) {
      someoneFree[g] = people.anyAvailable(m.groupMembers[g]);
    }
  }

  /** Of the items of a word of ranks those for which not all who could come are taken. */
  private long withSomebodyFree(int w) {
    long items = m.rankedAlways[w];
    int[] groups = m.rankedGroups[w];
    long[] of = m.rankedGroupItems[w];
    for (int n = 0; n < groups.length; n++) {
      items |= someoneFree[groups[n]] ? of[n] : 0;
    }
    return items;
  }
}
