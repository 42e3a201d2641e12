package sunup.forecast;

/** Which free person takes an item when several may: own room, already there, longest idle, id. */
final class People {
  private final Model m;
  private final Floor floor;

  /** Who was chosen, by slot of the item. */
  final int[] chosen = new int[Limits.SLOTS];

  /** People chosen for slots before; people tried for a slot without success. */
  private final long[] used;

  private final long[][] tried;

  People(Model m, Floor floor) {
    this.m = m;
    this.floor = floor;
    used = new long[floor.free.length];
    tried = new long[Limits.SLOTS][floor.free.length];
  }

  boolean anyAvailable(Model.Bits of) {
    for (int n = 0; n < of.word.length; n++) {
      int w = of.word[n];
      if ((of.bits[n] & floor.free[w] & ~floor.reserved[w]) != 0) {
        return true;
      }
    }
    return false;
  }

  /** Chooses free people for all slots of an item, or says that they don't suffice. */
  boolean choose(int i) {
    int o = i << Rows.SHIFT;
    int only = (m.row[o + Rows.WORD] >>> 16) - 1;
    if (only >= 0) {
      chosen[0] = only;
      return floor.isAvailable(only);
    }
    int first = m.row[o + Rows.FIRST_SLOT];
    int end = first + Rows.slots(m.row[o + Rows.WHAT]);
    if (end - first == 1) {
      chosen[0] = someoneFor(i, first);
      return chosen[0] >= 0;
    }
    for (int s = first; s < end; s++) {
      if (!anyAvailable(m.groupMembers[m.slotOwnGroup[s]])
          && !anyAvailable(m.groupMembers[m.slotRoamingGroup[s]])) {
        return false;
      }
    }
    return end == first || assign(i, first);
  }

  /** One free person for one slot, or -1. */
  int someoneFor(int i, int s) {
    return better(i, s, tried[0]);
  }

  private int better(int i, int s, long[] not) {
    int own = best(i, m.groupMembers[m.slotOwnGroup[s]], not);
    return own >= 0 ? own : best(i, m.groupMembers[m.slotRoamingGroup[s]], not);
  }

  private boolean assign(int i, int s) {
    if (s == m.firstSlot[i + 1]) {
      return true;
    }
    int n = s - m.firstSlot[i];
    long[] not = tried[n];
    boolean done = false;
    while (!done) {
      int p = better(i, s, not);
      if (p < 0) {
        break;
      }
      not[p >> 6] |= 1L << p;
      used[p >> 6] |= 1L << p;
      chosen[n] = p;
      done = assign(i, s + 1);
      used[p >> 6] &= ~(1L << p);
    }
    java.util.Arrays.fill(not, 0);
    return done;
  }

  /** Of people who all are of the room or all are not. */
  private int best(int i, Model.Bits of, long[] not) {
    int there = m.row[(i << Rows.SHIFT) + Rows.ROOM] >>> 16;
    int found = -1;
    for (int n = 0; n < of.word.length; n++) {
      int w = of.word[n];
      long bits = of.bits[n] & floor.free[w] & ~(floor.reserved[w] | used[w] | not[w]);
      while (bits != 0) {
        int p = (w << 6) + Long.numberOfTrailingZeros(bits);
        bits &= bits - 1;
        if (found < 0 || isBetter(p, found, there)) {
          found = p;
        }
      }
    }
    return found;
  }

  private boolean isBetter(int p, int q, int there) {
    boolean thereP = floor.where[p] == there;
    boolean thereQ = floor.where[q] == there;
    if (thereP != thereQ) {
      return thereP;
    }
    // People stand by id: of equally idle ones the first found stays.
    return floor.idleSince[p] < floor.idleSince[q];
  }
}
