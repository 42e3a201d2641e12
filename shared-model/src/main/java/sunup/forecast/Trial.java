package sunup.forecast;

/** One trial: the rest of the morning, event by event. Made once, run as often as wanted. */
final class Trial {
  /** Most times that one item is done again for a lapse in one trial. */
  static final int REDOS = 2;

  private static final int NOTHING = -1;
  private static final int SOMETHING = -2;

  static final int GOOD = 0;
  static final int HANDS_END = 1;
  static final int TIME_COMES = 2;
  static final int PLACE_OPENS = 3;
  static final int ROOM_EMPTIES = 4;
  static final int PERSON_COMES = 5;
  static final int PERSON_AWAY = 6;
  static final int PERSON_BACK = 7;
  static final int PERSON_LEAVES = 8;
  static final int LAPSES = 9;
  static final int WAITED = 10;

  final Model m;
  final Course course;
  final Floor floor;
  private final Agenda agenda;
  final Known known;
  final short[] missing;
  final byte[] state;

  final byte[] redone;
  final boolean[] left;

  /** How long things take in this trial. */
  final Drawn drawn;

  /** Worked so far and the amount of work after which the person is called away, or NEVER. */
  final long[] worked;

  final long[] calledAt;
  final long[] calledFor;
  final long[] arrived;

  private final Dispatch dispatch;
  private final Opening opening;
  private final long stopAt;
  int roomsLeft;
  long now;

  Trial(Model m) {
    this.m = m;
    agenda = new Agenda(m.people);
    known = new Known(m);
    course = new Course(m);
    floor = new Floor(m);
    dispatch = new Dispatch(m, floor, this);
    missing = new short[m.items];
    state = new byte[m.items];
    redone = new byte[m.items];
    drawn = new Drawn(m, redone);
    left = new boolean[m.people];
    worked = new long[m.people];
    calledAt = new long[m.people];
    calledFor = new long[m.people];
    arrived = new long[m.people];
    long stop = 0;
    for (int r = 0; r < m.rooms; r++) {
      stop = Math.max(stop, m.cap[r]);
    }
    stopAt = stop;
    opening = new Opening(this);
  }

  Silence silence() {
    return opening.silence;
  }

  void run(int trialNumber) {
    drawn.trial = trialNumber;
    now = 0;
    agenda.clear();
    course.reset(known.course);
    floor.reset(known);
    dispatch.reset();
    opening.open();
    long next = agenda.next();
    while (Heap.at(next) == 0) {
      handle(agenda.pop());
      next = agenda.next();
    }
    dispatch.pass(0);
    next = agenda.next();
    while (roomsLeft > 0 && Heap.at(next) <= stopAt) {
      now = Heap.at(next);
      boolean given;
      do {
        given = happens(next);
        next = agenda.next();
      } while (Heap.at(next) == now);
      if (!given) {
        dispatch.pass(now);
        next = agenda.next();
      }
    }
  }

  /** Handles the next event; true if what it frees has been given out already. */
  private boolean happens(long event) {
    int i = Heap.which(event);
    int what = Heap.what(event);
    if (what <= HANDS_END) {
      int o = i << Rows.SHIFT;
      int p = (m.row[o + Rows.WORD] >>> 16) - 1;
      if ((m.row[o + Rows.WHAT] & Rows.ALONE) != 0 && agenda.has(p, event)) {
        return worked(i, p, what == GOOD);
      }
    }
    handle(agenda.pop());
    return false;
  }

  /**
   * Somebody's hands are free of what he or she did alone. Where nothing else happens at this
   * instant, and nobody else of the room could begin what became ready by it, all that giving out
   * comes to is this person's next item: the short way through most of a morning.
   */
  private boolean worked(int i, int p, boolean isGood) {
    int o = i << Rows.SHIFT;
    if (isGood) {
      state[i] = Model.GOOD;
      lessFor(m.row[o + Rows.DEPENDANTS]);
    }
    int r = m.row[o + Rows.ROOM] & 0xffff;
    boolean alone = floor.ownFree[r] == 0 || !floor.looksAt(r);
    boolean free = floor.busy[p] == 1 && floor.away[p] == 0 && calledAt[p] == Model.NEVER;
    if (alone && free && Heap.at(agenda.nextBut(p)) > now && dispatch.isQuiet(r, now)) {
      int next = nextAlone(r, p);
      if (next >= 0) {
        floor.lookAway(r);
        floor.takeOn(p, next, now, i);
        beginAlone(next, p);
        return !floor.lookByRank;
      }
      if (next == NOTHING) {
        agenda.set(p, Heap.NONE);
        released(p, i);
        floor.lookAway(r);
        return !floor.lookByRank;
      }
    }
    agenda.set(p, Heap.NONE);
    released(p, i);
    return false;
  }

  /**
   * What this person of a room, who would be the only one free, does next: an item that he or she
   * does alone, {@link #NOTHING}, or {@link #SOMETHING} that is not said so easily.
   */
  private int nextAlone(int r, int p) {
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

  int someoneFor(int i, int slot) {
    return dispatch.someoneFor(i, slot);
  }

  boolean hasLeft(int p) {
    return left[p];
  }

  private void handle(long event) {
    int x = Heap.which(event);
    switch (Heap.what(event)) {
      case GOOD -> becomesGood(x);
      case HANDS_END -> handsEnd(x);
      case TIME_COMES -> oneLess(x);
      case PLACE_OPENS -> opens(m.place, x);
      case ROOM_EMPTIES -> empties(x);
      case PERSON_COMES -> comes(x);
      case PERSON_AWAY -> {
        floor.away[x]++;
        floor.settle(x);
      }
      case PERSON_BACK -> back(x);
      case PERSON_LEAVES -> {
        left[x] = true;
        floor.away[x]++;
        floor.settle(x);
      }
      case LAPSES -> lapses(x);
      default -> {
        // A step has waited long enough to keep people: the pass that follows sees to it.
      }
    }
  }

  private void opens(int[] places, int place) {
    for (int i = 0; i < m.items; i++) {
      if (places[i] == place && state[i] == Model.OPEN) {
        oneLess(i);
      }
    }
  }

  private void empties(int r) {
    for (int i = m.firstItem[r]; i < m.firstItem[r + 1]; i++) {
      if (m.inRoom[i] && state[i] == Model.OPEN) {
        oneLess(i);
      }
    }
  }

  private void comes(int p) {
    floor.here[p] = true;
    floor.idleSince[p] = now;
    floor.idleAfter[p] = Course.CAME;
    floor.settle(p);
  }

  private void back(int p) {
    floor.away[p]--;
    if (floor.busy[p] == 0) {
      floor.idleSince[p] = now;
      floor.idleAfter[p] = Course.WAS_AWAY;
    }
    floor.settle(p);
  }

  /** One thing less that an open item waits for. */
  void oneLess(int i) {
    if (--missing[i] == 0) {
      becomesReady(i);
    }
  }

  void becomesReady(int i) {
    int flags = m.row[(i << Rows.SHIFT) + Rows.WHAT];
    if ((flags & Rows.BY_ITSELF) != 0) {
      begin(i, dispatch.chosen);
      return;
    }
    floor.setReady(i);
    if ((flags & Rows.CONTINUES) != 0) {
      dispatch.goesOn(i);
    }
    if ((flags & Rows.SEVERAL) != 0) {
      dispatch.waitsFrom(i, now);
      push(now + Dispatch.PATIENCE, WAITED, i);
    }
  }

  void push(long at, int what, int which) {
    agenda.push(Heap.event(at, what, which));
  }

  void begin(int i, int[] people) {
    int o = i << Rows.SHIFT;
    int[] row = m.row;
    int flags = row[o + Rows.WHAT];
    if ((flags & Rows.BY_ITSELF) == 0) {
      unready(i, flags);
    }
    state[i] = Model.IN_HAND;
    course.enter(i);
    if (Rows.needs(flags) > 0) {
      floor.claimUnits(i, course);
    }
    int first = row[o + Rows.FIRST_SLOT];
    int slots = Rows.slots(flags);
    int where = row[o + Rows.ROOM] >>> 16;
    long walk = 0;
    for (int s = 0; s < slots; s++) {
      int p = people[s];
      if (floor.where[p] != where) {
        walk = Math.max(walk, walk(i, p));
        floor.where[p] = where;
      }
      occupy(p, first + s);
    }
    course.walked[i] = walk > 0;
    long handsEnd = now + walk + drawn.hands(i, slots == 0 ? Course.NOBODY : people[0]);
    long waits = (flags & Rows.WAITS) == 0 ? 0 : drawn.waits(i);
    timed(i, now, handsEnd, waits);
  }

  /** The short way of {@link #begin} for {@link Rows#ALONE} items; its person must be free. */
  void beginAlone(int i) {
    int o = i << Rows.SHIFT;
    int p = (m.row[o + Rows.WORD] >>> 16) - 1;
    floor.take(p, m.row[o + Rows.ROOM] & 0xffff);
    floor.notReady(i);
    beginAlone(i, p);
  }

  private void beginAlone(int i, int p) {
    int o = i << Rows.SHIFT;
    int[] row = m.row;
    int r = row[o + Rows.ROOM] & 0xffff;
    state[i] = Model.IN_HAND;
    course.enter(i);
    course.slot(row[o + Rows.FIRST_SLOT], p, floor.idleSince[p], floor.idleAfter[p]);
    long walk = 0;
    if (floor.where[p] != r) {
      walk = walk(i, p);
      floor.where[p] = r;
    }
    course.walked[i] = walk > 0;
    if ((row[o + Rows.WHAT] & Rows.PLAIN) != 0) {
      long end = now + walk + drawn.plain(i);
      course.set(i, now, end, end, end);
      agenda.set(p, Heap.event(end, GOOD, i));
    } else {
      aloneTimes(i, p, now + walk + drawn.hands(i, p));
    }
  }

  private void aloneTimes(int i, int p, long handsEnd) {
    int flags = m.row[(i << Rows.SHIFT) + Rows.WHAT];
    long good = handsEnd + ((flags & Rows.WAITS) == 0 ? 0 : drawn.waits(i));
    if ((flags & Rows.EXTRA) != 0) {
      course.extra[i] = drawn.extra(i);
      good += course.extra[i];
    }
    course.set(i, now, handsEnd, good, good);
    if (handsEnd < good) {
      agenda.set(p, Heap.event(handsEnd, HANDS_END, i));
      push(good, GOOD, i);
    } else {
      agenda.set(p, Heap.event(good, GOOD, i));
    }
  }

  private void unready(int i, int flags) {
    if (floor.isReady(i)) {
      floor.unready(i);
      if ((flags & Rows.SEVERAL) != 0) {
        dispatch.waitsNoMore(i);
      }
    }
  }

  /** Enters when an item's hands end and when it is good, and the events of both. */
  private void timed(int i, long begin, long handsEnd, long waits) {
    int flags = m.row[(i << Rows.SHIFT) + Rows.WHAT];
    long natural = handsEnd + waits;
    if ((flags & Rows.EXTRA) != 0) {
      course.extra[i] = drawn.extra(i);
      natural += course.extra[i];
    }
    long good = (flags & Rows.MARKS) == 0 ? natural : Math.max(natural, m.notBefore[i]);
    if ((flags & Rows.ARRIVAL) != 0 && now == 0) {
      // It may have come unseen before now.
      good = Math.min(now, goodSince(i));
      course.set(i, good, good, good, good);
    } else {
      course.set(i, begin, handsEnd, natural, good);
    }
    if ((flags & Rows.BY_ITSELF) != 0 && good <= now) {
      becomesGood(i);
      return;
    }
    if (handsEnd < good && Rows.slots(flags) > 0) {
      push(handsEnd, HANDS_END, i);
    }
    push(Math.max(now, good), GOOD, i);
  }

  private long goodSince(int i) {
    long since = course.arrival[i];
    for (int j : m.before[i]) {
      since = Math.max(since, course.good(j));
    }
    return since;
  }

  void occupy(int p, int slot) {
    course.slot(slot, p, floor.idleSince[p], floor.idleAfter[p]);
    floor.busy[p]++;
    floor.settle(p);
  }

  /** Minutes to the place, and back from where the person was before. */
  private long walk(int i, int p) {
    int from = floor.where[p];
    int to = m.place[i];
    if (from < m.rooms && to < 0) {
      return 0;
    }
    double u = drawn.uniform(i, Hash.WALK);
    long ms = 0;
    if (from >= m.rooms) {
      ms += m.walk[from - m.rooms].at(u);
    }
    if (to >= 0) {
      ms += m.walk[to].at(u);
    }
    return ms;
  }

  private void handsEnd(int i) {
    if (course.handsEnd(i) <= now) {
      releasePeople(i);
    }
  }

  private void releasePeople(int i) {
    int o = i << Rows.SHIFT;
    int first = m.row[o + Rows.FIRST_SLOT];
    int slots = Rows.slots(m.row[o + Rows.WHAT]);
    for (int s = first; s < first + slots; s++) {
      int p = course.person(s);
      if (p >= 0) {
        released(p, i);
      }
    }
  }

  private void released(int p, int i) {
    if (--floor.busy[p] == 0) {
      floor.idleSince[p] = now;
      floor.idleAfter[p] = i;
    }
    if (calledAt[p] < Model.NEVER) {
      worked[p] += m.hands[i].usual;
      if (worked[p] >= calledAt[p]) {
        calledAt[p] = Model.NEVER;
        floor.away[p]++;
        push(now + calledFor[p], PERSON_BACK, p);
      }
    }
    floor.settle(p);
  }

  private void becomesGood(int i) {
    int[] row = m.row;
    int o = i << Rows.SHIFT;
    int flags = row[o + Rows.WHAT];
    state[i] = Model.GOOD;
    if ((flags & Rows.PLAIN) != 0) {
      int p = course.person(row[o + Rows.FIRST_SLOT]);
      if (p >= 0 && course.handsEnd(i) >= course.good(i)) {
        released(p, i);
      }
      lessFor(row[o + Rows.DEPENDANTS]);
      return;
    }
    if (course.handsEnd(i) >= course.good(i)) {
      releasePeople(i);
    }
    if ((flags & Rows.ENDS_NEEDS) != 0) {
      for (int n : m.endsNeeds[i]) {
        if (floor.claimed[n]) {
          floor.release(n, now, i);
        }
      }
    }
    int first = row[o + Rows.FIRST_NEED];
    for (int n = first; n < first + Rows.needs(flags); n++) {
      if (floor.claimed[n] && state[m.needUntil[n]] == Model.GOOD) {
        floor.release(n, now, i);
      }
    }
    lessFor(row[o + Rows.DEPENDANTS]);
    if ((flags & Rows.LAPSES) != 0) {
      push(Math.max(now, course.good(i) + m.life[i]), LAPSES, i);
    }
    if ((flags & Rows.STARTS) != 0) {
      roomsLeft--;
    }
  }

  private void lessFor(int dependants) {
    int end = Rows.listEnd(dependants);
    for (int d = Rows.listFirst(dependants); d < end; d++) {
      int j = m.dependant[d];
      if (state[j] == Model.OPEN) {
        oneLess(j);
      }
    }
  }

  /** The item is open again unless the step that it gates is under way. */
  private void lapses(int i) {
    boolean stale = state[i] != Model.GOOD || course.good(i) + m.life[i] > now;
    if (stale || redone[i] == REDOS || state[m.gatedBy[i]] != Model.OPEN) {
      return;
    }
    state[i] = Model.OPEN;
    redone[i]++;
    course.good(i, Model.NEVER);
    course.reopened[i] = now;
    for (int j : m.dependants[i]) {
      if (state[j] == Model.OPEN && missing[j]++ == 0) {
        floor.unready(j);
        if (m.slotsOf(j) > 1) {
          dispatch.waitsNoMore(j);
        }
      }
    }
    int waitsFor = 0;
    for (int j : m.before[i]) {
      waitsFor += state[j] == Model.GOOD ? 0 : 1;
    }
    waitsFor += m.place[i] >= 0 && m.opensAt[m.place[i]] > now ? 1 : 0;
    waitsFor += m.inRoom[i] && course.emptied[m.room[i]] > now ? 1 : 0;
    missing[i] = (short) waitsFor;
    if (waitsFor == 0) {
      becomesReady(i);
    }
  }
}
