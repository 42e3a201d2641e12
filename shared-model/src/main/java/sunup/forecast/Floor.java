package sunup.forecast;

import java.util.Arrays;

/** Who and what is where in a trial: people, units, and what could begin if they were free. */
final class Floor {
  final Model m;

  /** Items whose prerequisites are good, by room and word; and by rank. */
  final long[] ready;

  final long[] readyRanked;

  final int[] busy;
  final int[] away;
  final boolean[] here;

  /** People, 64 a word: those who have nothing in hand, are here and not away. */
  final long[] free;

  /** People who are kept for a step that others have still to come to. */
  final long[] reserved;

  final long[] idleSince;
  final int[] idleAfter;

  /** The room, or rooms + the place, where a person is. */
  final int[] where;

  final int[] ownFree;
  final int[] unitsFree;

  /** Per kind: since when at least so many units are free, and which item released them. */
  final long[][] unitsSince;

  final int[][] unitsAfter;
  final boolean[] claimed;
  final int[] promiseLeft;
  final int[] promiseFirst;

  /** Rooms where something may begin that could not before; whether by rank something may. */
  final long[] lookRooms;

  boolean lookByRank;

  /** By kind the rooms where something could not begin for want of units since some came free. */
  private final long[] shortOf;

  Floor(Model m) {
    this.m = m;
    ready = new long[m.rooms * m.words];
    readyRanked = new long[(m.ranked.length + 63) / 64];
    busy = new int[m.people];
    away = new int[m.people];
    here = new boolean[m.people];
    free = new long[(m.people + 63) / 64];
    reserved = new long[free.length];
    idleSince = new long[m.people];
    idleAfter = new int[m.people];
    where = new int[m.people];
    ownFree = new int[m.rooms];
    unitsFree = new int[m.kinds];
    unitsSince = new long[m.kinds][];
    unitsAfter = new int[m.kinds][];
    promiseFirst = new int[m.kinds + 1];
    for (int k = 0; k < m.kinds; k++) {
      unitsSince[k] = new long[m.capacity[k] + 1];
      unitsAfter[k] = new int[m.capacity[k] + 1];
      promiseFirst[k + 1] = promiseFirst[k] + m.promised[k].length;
    }
    promiseLeft = new int[promiseFirst[m.kinds]];
    claimed = new boolean[m.firstNeed[m.items]];
    lookRooms = new long[(m.rooms + 63) / 64];
    shortOf = new long[m.kinds * lookRooms.length];
  }

  void reset(Known known) {
    Arrays.fill(ready, 0);
    Arrays.fill(readyRanked, 0);
    Arrays.fill(lookRooms, 0);
    Arrays.fill(shortOf, 0);
    lookByRank = false;
    Arrays.fill(busy, 0);
    Arrays.fill(away, 0);
    Arrays.fill(here, false);
    Arrays.fill(free, 0);
    Arrays.fill(reserved, 0);
    System.arraycopy(known.idleSince, 0, idleSince, 0, m.people);
    System.arraycopy(known.idleAfter, 0, idleAfter, 0, m.people);
    System.arraycopy(m.personRoom, 0, where, 0, m.people);
    Arrays.fill(ownFree, 0);
    System.arraycopy(m.capacity, 0, unitsFree, 0, m.kinds);
    for (int k = 0; k < m.kinds; k++) {
      Arrays.fill(unitsSince[k], Model.EVER);
      Arrays.fill(unitsAfter[k], Course.NOBODY);
      System.arraycopy(m.promisedUnits[k], 0, promiseLeft, promiseFirst[k], m.promised[k].length);
    }
    Arrays.fill(claimed, false);
  }

  /** Those who were kept may take anything again. */
  void keepNobody() {
    for (int w = 0; w < reserved.length; w++) {
      long bits = reserved[w] & free[w];
      reserved[w] = 0;
      while (bits != 0) {
        int p = (w << 6) + Long.numberOfTrailingZeros(bits);
        bits &= bits - 1;
        mayTake(p, m.personRoom[p]);
      }
    }
  }

  private void lookAt(Model.Bits own, Model.Bits ranks) {
    for (int n = 0; n < own.word.length; n++) {
      int w = own.word[n];
      if ((own.bits[n] & ready[w]) != 0) {
        int r = m.words == 1 ? w : w / m.words;
        lookRooms[r >> 6] |= ownFree[r] > 0 ? 1L << r : 0;
      }
    }
    lookAtRanks(ranks);
  }

  private void lookAtRanks(Model.Bits ranks) {
    for (int n = 0; n < ranks.word.length && !lookByRank; n++) {
      lookByRank = (ranks.bits[n] & readyRanked[ranks.word[n]]) != 0;
    }
  }

  void setReady(int i) {
    int o = i << Rows.SHIFT;
    int[] row = m.row;
    int what = row[o + Rows.WHAT];
    ready[row[o + Rows.WORD] & 0xffff] |= 1L << Rows.bit(what);
    if ((what & Rows.OWN) != 0) {
      int r = row[o + Rows.ROOM] & 0xffff;
      lookRooms[r >> 6] |= 1L << r;
    }
    int n = row[o + Rows.RANK];
    if (n >= 0) {
      readyRanked[n >> 6] |= 1L << n;
      lookByRank = true;
    }
  }

  boolean isReady(int i) {
    int o = i << Rows.SHIFT;
    int w = m.row[o + Rows.WORD] & 0xffff;
    return (ready[w] & 1L << Rows.bit(m.row[o + Rows.WHAT])) != 0;
  }

  void unready(int i) {
    int o = i << Rows.SHIFT;
    int[] row = m.row;
    ready[row[o + Rows.WORD] & 0xffff] &= ~(1L << Rows.bit(row[o + Rows.WHAT]));
    int n = row[o + Rows.RANK];
    if (n >= 0) {
      readyRanked[n >> 6] &= ~(1L << n);
    }
  }

  boolean isFree(int p) {
    return (free[p >> 6] >>> p & 1) != 0;
  }

  boolean isAvailable(int p) {
    return ((free[p >> 6] & ~reserved[p >> 6]) >>> p & 1) != 0;
  }

  /** Makes a person free who has nothing in hand, is here and not away; and takes it back. */
  void settle(int p) {
    boolean now = here[p] && busy[p] == 0 && away[p] == 0;
    if (now != isFree(p)) {
      free[p >> 6] ^= 1L << p;
      int r = m.personRoom[p];
      if (r >= 0) {
        ownFree[r] += now ? 1 : -1;
      }
      if (now) {
        mayTake(p, r);
      }
    }
  }

  /** A free person of a room begins something there. */
  void take(int p, int r) {
    busy[p] = 1;
    free[p >> 6] &= ~(1L << p);
    ownFree[r]--;
  }

  boolean looksAt(int room) {
    return (lookRooms[room >> 6] >>> room & 1) != 0;
  }

  void lookAway(int room) {
    lookRooms[room >> 6] &= ~(1L << room);
  }

  /** Somebody goes from one item to the next without being free between. */
  void takeOn(int p, int next, long now, int after) {
    idleSince[p] = now;
    idleAfter[p] = after;
    notReady(next);
  }

  /** An item that nobody roaming can take, ready until now. */
  void notReady(int i) {
    int o = i << Rows.SHIFT;
    ready[m.row[o + Rows.WORD] & 0xffff] &= ~(1L << Rows.bit(m.row[o + Rows.WHAT]));
  }

  private void mayTake(int p, int r) {
    if (r >= 0) {
      lookRooms[r >> 6] |= 1L << r;
      lookByRank |= m.personRanked[p].word.length > 0;
    } else {
      lookAt(m.personOwnItems[p], m.personRanked[p]);
    }
  }

  /** Units that others were promised before this room, of those still free. */
  int promisedBefore(int kind, int room) {
    int units = 0;
    for (int n = promiseFirst[kind]; n < promiseFirst[kind + 1]; n++) {
      if (m.promised[kind][n - promiseFirst[kind]] == room) {
        break;
      }
      units += promiseLeft[n];
    }
    return units;
  }

  boolean unitsSuffice(int i) {
    int o = i << Rows.SHIFT;
    int first = m.row[o + Rows.FIRST_NEED];
    int needs = Rows.needs(m.row[o + Rows.WHAT]);
    for (int n = first; n < first + needs; n++) {
      int k = m.needKind[n];
      if (!claimed[n] && unitsFree[k] < m.needUnits[n] + promisedBefore(k, m.room[i])) {
        shortOf[k * lookRooms.length + (m.room[i] >> 6)] |= 1L << m.room[i];
        return false;
      }
    }
    return true;
  }

  void claimUnits(int i, Course course) {
    for (int n = m.firstNeed[i]; n < m.firstNeed[i + 1]; n++) {
      if (claimed[n]) {
        // The room has them already: nothing was waited for.
        course.needSince[n] = Model.EVER;
        course.needAfter[n] = Course.NOBODY;
        continue;
      }
      int k = m.needKind[n];
      int level = m.needUnits[n] + promisedBefore(k, m.room[i]);
      if (level <= m.capacity[k]) {
        course.needSince[n] = unitsSince[k][level];
        course.needAfter[n] = unitsAfter[k][level];
      }
      take(n);
    }
  }

  void take(int n) {
    int k = m.needKind[n];
    claimed[n] = true;
    unitsFree[k] -= m.needUnits[n];
    for (int q = promiseFirst[k]; q < promiseFirst[k + 1]; q++) {
      if (m.promised[k][q - promiseFirst[k]] == roomOfNeed(n)) {
        promiseLeft[q] = 0;
      }
    }
  }

  private int roomOfNeed(int n) {
    return m.room[m.needUntil[n]];
  }

  void release(int n, long at, int item) {
    int k = m.needKind[n];
    claimed[n] = false;
    int from = unitsFree[k];
    unitsFree[k] += m.needUnits[n];
    for (int level = Math.max(1, from + 1); level <= unitsFree[k]; level++) {
      unitsSince[k][level] = at;
      unitsAfter[k][level] = item;
    }
    for (int w = 0; w < lookRooms.length; w++) {
      lookRooms[w] |= shortOf[k * lookRooms.length + w];
      shortOf[k * lookRooms.length + w] = 0;
    }
    lookAtRanks(m.kindRanked[k]);
  }
}
