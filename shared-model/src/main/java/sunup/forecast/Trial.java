package sunup.forecast;

/** One trial: the rest of the morning, event by event. Made once, run as often as wanted. */
final class Trial {
  /** Most times that one item is done again for a lapse in one trial. */
  static final int REDOS = 2;

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
  final Agenda agenda;
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

  final Alone alone;
  private final Dispatch dispatch;
  private final Opening opening;
  private final Settled settled;
  private final long stopAt;
  int roomsLeft;
  long now;

  Trial(Model m) {
    this(m, new Known(m), Kept.ofEach(m.people));
  }

  private Trial(Model m, Known known, Kept[] kept) {
    this.m = m;
    this.known = known;
    agenda = new Agenda(m.people);
    course = new Course(m);
    settled = new Settled(m, course);
    floor = new Floor(m);
    dispatch = new Dispatch(m, floor, this);
    alone = new Alone(this, dispatch);
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
    opening = new Opening(this, kept);
  }

  /** One more of the same component, for another thread: they find kept histories together. */
  Trial another() {
    return new Trial(m, known, silence().kept);
  }

  Silence silence() {
    return opening.silence;
  }

  void run(int trialNumber) {
    drawn.trial = trialNumber;
    now = 0;
    agenda.clear();
    course.reset(known.course);
    settled.reset();
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
    // All of the instant at which the last room starts belongs to the trial.
    while (Heap.at(next) <= stopAt && (roomsLeft > 0 || Heap.at(next) == now)) {
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
    settled.restore();
  }

  /** Handles the next event; true if what it frees has been given out already. */
  private boolean happens(long event) {
    int i = Heap.which(event);
    int what = Heap.what(event);
    if (what <= HANDS_END) {
      int o = i << Rows.SHIFT;
      int p = (m.row[o + Rows.WORD] >>> 16) - 1;
      if ((m.row[o + Rows.WHAT] & Rows.ALONE) != 0 && agenda.has(p, event)) {
        return alone.ends(i, p, what == GOOD);
      }
    }
    handle(agenda.pop());
    return false;
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
    if (redone[i] > 0) {
      settled.changes(i, now);
    }
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
  long walk(int i, int p) {
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

  void released(int p, int i) {
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
    if ((flags & Rows.STARTS) != 0 && settled.starts(m.room[i], course.good(i))) {
      roomsLeft--;
    }
  }

  void lessFor(int dependants) {
    int end = Rows.listEnd(dependants);
    for (int d = Rows.listFirst(dependants); d < end; d++) {
      int j = m.dependant[d];
      if (state[j] == Model.OPEN) {
        oneLess(j);
      }
    }
  }

  private void lapses(int i) {
    if (reopens(i) && missing[i] == 0) {
      becomesReady(i);
    }
  }

  /** The item is open again unless the step that it gates is under way. */
  boolean reopens(int i) {
    boolean stale = state[i] != Model.GOOD || course.good(i) + m.life[i] > now;
    if (stale || redone[i] == REDOS || state[m.gatedBy[i]] != Model.OPEN) {
      return false;
    }
    long at = course.good(i) + m.life[i];
    settled.changes(i, at);
    state[i] = Model.OPEN;
    redone[i]++;
    course.reopened[i] = at;
    course.good(i, Model.NEVER);
    for (int j : m.dependants[i]) {
      if (state[j] == Model.OPEN && missing[j]++ == 0) {
        unready(j, m.row[(j << Rows.SHIFT) + Rows.WHAT]);
      }
    }
    int waitsFor = 0;
    for (int j : m.before[i]) {
      waitsFor += state[j] == Model.GOOD ? 0 : 1;
    }
    waitsFor += m.place[i] >= 0 && m.opensAt[m.place[i]] > now ? 1 : 0;
    waitsFor += m.inRoom[i] && course.emptied[m.room[i]] > now ? 1 : 0;
    if (!m.marks[i] && m.notBefore[i] > now) {
      // It was good at now, before its booked time.
      waitsFor++;
      push(m.notBefore[i], TIME_COMES, i);
    }
    missing[i] = (short) waitsFor;
    return true;
  }
}
