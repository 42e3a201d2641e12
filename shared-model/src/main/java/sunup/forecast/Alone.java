package sunup.forecast;

/**
 * Items that one person of a room does alone and without equipment: most of a morning. Their events
 * are their person's one thing in hand, and mostly what follows is that this person takes the next
 * one; then nothing need be searched.
 */
final class Alone {
  private static final int NOTHING = -1;
  private static final int SOMETHING = -2;

  private final Trial t;
  private final Model m;
  private final Floor floor;
  private final Course course;
  private final Agenda agenda;
  private final Dispatch dispatch;

  Alone(Trial trial, Dispatch dispatch) {
    t = trial;
    m = trial.m;
    floor = trial.floor;
    course = trial.course;
    agenda = trial.agenda;
    this.dispatch = dispatch;
  }

  /** Begins one; its person must be free. */
  void begin(int i) {
    int o = i << Rows.SHIFT;
    int p = (m.row[o + Rows.WORD] >>> 16) - 1;
    floor.take(p, m.row[o + Rows.ROOM] & 0xffff);
    floor.notReady(i);
    begin(i, p);
  }

  /**
   * The hands of one are free, which is good then if it does not wait. Where nothing else happens
   * at this instant, and nobody else of the room could begin what became ready by it, all that
   * giving out comes to is this person's next item. True if nothing is left to be given out.
   */
  boolean ends(int i, int p, boolean isGood) {
    int o = i << Rows.SHIFT;
    if (isGood) {
      t.state[i] = Model.GOOD;
      t.lessFor(m.row[o + Rows.DEPENDANTS]);
    }
    int r = m.row[o + Rows.ROOM] & 0xffff;
    boolean only = floor.ownFree[r] == 0 || !floor.looksAt(r);
    boolean free = floor.busy[p] == 1 && floor.away[p] == 0 && t.calledAt[p] == Model.NEVER;
    int next = SOMETHING;
    if (only && free && Heap.at(agenda.nextBut(p)) > t.now && dispatch.isQuiet(r, t.now)) {
      next = next(r, p);
    }
    if (next >= 0) {
      floor.lookAway(r);
      floor.takeOn(p, next, t.now, i);
      begin(next, p);
      return !floor.lookByRank;
    }
    agenda.set(p, Heap.NONE);
    t.released(p, i);
    if (next == NOTHING) {
      floor.lookAway(r);
      return !floor.lookByRank;
    }
    return false;
  }

  /**
   * What this person of a room, who would be the only one free, does next: an item that he or she
   * does alone, nothing, or something that is not said so easily.
   */
  private int next(int r, int p) {
    int base = r * m.words;
    for (int w = 0; w < m.words; w++) {
      if ((floor.ready[base + w] & m.personOwn[p * m.words + w] & m.urgent[base + w]) != 0) {
        return SOMETHING;
      }
    }
    for (int w = 0; w < m.words; w++) {
      long bits = floor.ready[base + w] & m.personOwn[p * m.words + w];
      while (bits != 0) {
        int i = m.firstItem[r] + (w << 6) + Long.numberOfTrailingZeros(bits);
        if ((m.row[(i << Rows.SHIFT) + Rows.WHAT] & Rows.ALONE) != 0) {
          return i;
        }
        if (floor.unitsSuffice(i)) {
          return SOMETHING;
        }
        bits &= bits - 1;
      }
    }
    return NOTHING;
  }

  private void begin(int i, int p) {
    int o = i << Rows.SHIFT;
    int[] row = m.row;
    int r = row[o + Rows.ROOM] & 0xffff;
    t.state[i] = Model.IN_HAND;
    course.enter(i);
    course.slot(row[o + Rows.FIRST_SLOT], p, floor.idleSince[p], floor.idleAfter[p]);
    long walk = 0;
    if (floor.where[p] != r) {
      walk = t.walk(i, p);
      floor.where[p] = r;
    }
    course.walked[i] = walk > 0;
    if ((row[o + Rows.WHAT] & Rows.PLAIN) != 0) {
      long end = t.now + walk + t.drawn.plain(i);
      course.set(i, t.now, end, end, end);
      agenda.set(p, Heap.event(end, Trial.GOOD, i));
    } else {
      times(i, p, t.now + walk + t.drawn.hands(i, p));
    }
  }

  private void times(int i, int p, long handsEnd) {
    int flags = m.row[(i << Rows.SHIFT) + Rows.WHAT];
    long good = handsEnd + ((flags & Rows.WAITS) == 0 ? 0 : t.drawn.waits(i));
    if ((flags & Rows.EXTRA) != 0) {
      course.extra[i] = t.drawn.extra(i);
      good += course.extra[i];
    }
    course.set(i, t.now, handsEnd, good, good);
    if (handsEnd < good) {
      agenda.set(p, Heap.event(handsEnd, Trial.HANDS_END, i));
      t.push(good, Trial.GOOD, i);
    } else {
      agenda.set(p, Heap.event(good, Trial.GOOD, i));
    }
  }
}
