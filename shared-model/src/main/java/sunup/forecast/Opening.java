package sunup.forecast;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/** The state of a trial at now: what is known, what is in hand, and what silence may hide. */
final class Opening {
  private final Trial t;
  private final Model m;
  private final Course course;
  private final Floor floor;
  private final int waitingRooms;
  final Silence silence;

  /** Items that are in hand by report, open ones, good ones that may lapse; needs that are held. */
  private final int[] begun;

  private final int[] open;
  private final int[] lapsing;
  private final int[] held;

  /** Items whose life was over before now: they are open again before anything is begun. */
  private final int[] overdue;

  private int overdueCount;

  Opening(Trial trial, Kept[] kept) {
    t = trial;
    m = trial.m;
    course = trial.course;
    floor = trial.floor;
    silence = new Silence(m, trial.known, kept);
    int n = 0;
    for (int r = 0; r < m.rooms; r++) {
      n += m.state[m.startItem[r]] == Model.GOOD ? 0 : 1;
    }
    waitingRooms = n;
    begun = items(i -> m.state[i] == Model.IN_HAND);
    open = items(i -> m.state[i] == Model.OPEN);
    lapsing =
        items(
            i ->
                m.state[i] == Model.GOOD
                    && m.life[i] > 0
                    && m.gatedBy[i] >= 0
                    && m.good[i] != Model.EVER);
    IntStream.Builder with = IntStream.builder();
    for (int i = 0; i < m.items; i++) {
      for (int q = m.firstNeed[i]; q < m.firstNeed[i + 1]; q++) {
        if (isHeld(i, q)) {
          with.add(q);
        }
      }
    }
    held = with.build().toArray();
    overdue = new int[m.items];
  }

  private int[] items(IntPredicate which) {
    return IntStream.range(0, m.items).filter(which).toArray();
  }

  private boolean isHeld(int i, int need) {
    boolean until = m.state[m.needUntil[need]] != Model.GOOD || m.state[i] != Model.GOOD;
    return (m.needHeld[need] || m.state[i] == Model.IN_HAND) && until;
  }

  void open() {
    System.arraycopy(m.state, 0, t.state, 0, m.items);
    System.arraycopy(m.missing, 0, t.missing, 0, m.items);
    Arrays.fill(t.redone, (byte) 0);
    Arrays.fill(t.left, false);
    Arrays.fill(t.calledAt, Model.NEVER);
    Arrays.fill(t.worked, 0);
    t.roomsLeft = waitingRooms;
    overdueCount = 0;
    for (int r = 0; r < m.rooms; r++) {
      if (m.occupied[r] != null) {
        course.emptied[r] =
            m.occupied[r].at(
                Hash.uniform(Hash.stream(m.roomScope[r], Hash.OCCUPIED, 0), t.drawn.trial));
        t.push(course.emptied[r], Trial.ROOM_EMPTIES, r);
      }
    }
    for (int p = 0; p < m.people; p++) {
      person(p);
    }
    t.drawn.hands();
    held();
    for (int i : begun) {
      inHand(i);
    }
    for (int p = 0; p < m.people; p++) {
      floor.settle(p);
    }
    for (int i : begun) {
      if (course.handsEnd(i) > 0) {
        others(i);
      }
    }
    gates();
    for (int n = 0; n < overdueCount; n++) {
      t.reopens(overdue[n]);
    }
    for (int n = 0; n < overdueCount; n++) {
      beginsIfReady(overdue[n]);
    }
    for (int i : open) {
      beginsIfReady(i);
    }
  }

  private void beginsIfReady(int i) {
    if (t.missing[i] == 0 && t.state[i] == Model.OPEN && !floor.isReady(i)) {
      t.becomesReady(i);
    }
  }

  private double drawn(int p, int purpose, int trial) {
    return Hash.uniform(Hash.stream(m.personScope[p], purpose, 0), trial);
  }

  private void person(int p) {
    boolean hidden = silence.isSilent(p);
    int attempt = hidden ? silence.attempt(p, t.drawn.trial) : -1;
    t.drawn.factor[p] =
        m.sqrtShare == 0
            ? 0
            : Normal.quantile(drawn(p, Hash.FACTOR, attempt < 0 ? t.drawn.trial : attempt));
    t.arrived[p] = hidden ? silence.arrival(p) : arrival(p);
    if (t.arrived[p] <= 0) {
      floor.here[p] = true;
      floor.idleSince[p] = Math.max(floor.idleSince[p], t.arrived[p]);
    } else {
      t.push(t.arrived[p], Trial.PERSON_COMES, p);
    }
    for (int s = 0; s < m.awayFrom[p].length; s++) {
      if (m.awayTo[p][s] > 0) {
        if (m.awayFrom[p][s] <= 0) {
          floor.away[p]++;
        } else {
          t.push(m.awayFrom[p][s], Trial.PERSON_AWAY, p);
        }
        t.push(m.awayTo[p][s], Trial.PERSON_BACK, p);
      }
    }
    if (m.leavesAt[p] <= 0) {
      t.left[p] = true;
      floor.away[p]++;
    } else if (m.leavesAt[p] < Model.NEVER) {
      t.push(m.leavesAt[p], Trial.PERSON_LEAVES, p);
    }
    if (hidden) {
      replay(p);
    }
  }

  private long arrival(int p) {
    if (m.arrivedAt[p] != Model.NEVER) {
      return m.arrivedAt[p];
    }
    if (m.lastWordAt[p] != Model.EVER) {
      return m.lastWordAt[p];
    }
    double u = drawn(p, Hash.ARRIVAL, t.drawn.trial);
    if (m.arrivalReported[p] && m.plannedAt[p] < 0) {
      return m.late[p].remaining(u, -m.plannedAt[p]);
    }
    return m.plannedAt[p] + m.late[p].at(u);
  }

  /** What a silent person has done by now in the history that this trial carries. */
  private void replay(int p) {
    History h = silence.history();
    for (int n = 0; n < h.count; n++) {
      int i = h.item[n];
      course.set(i, h.begin[n], h.handsEnd[n], h.good[n], h.good[n]);
      course.extra[i] = h.extra[n];
      course.walked[i] = h.walked[n];
      course.enter(i);
      course.slot(m.firstSlot[i], p, floor.idleSince[p], floor.idleAfter[p]);
      floor.where[p] = m.place[i] >= 0 ? m.rooms + m.place[i] : m.room[i];
      t.state[i] = h.good[n] <= 0 ? Model.GOOD : Model.IN_HAND;
      for (int j : m.dependants[i]) {
        t.missing[j] -= (short) (h.good[n] <= 0 ? 1 : 0);
      }
      if (h.good[n] <= 0 && m.life[i] > 0 && m.gatedBy[i] >= 0) {
        lapses(i, h.good[n] + m.life[i]);
      }
      if (h.good[n] > 0) {
        t.push(h.good[n], Trial.GOOD, i);
      }
      if (h.handsEnd[n] > 0) {
        floor.busy[p]++;
        if (h.handsEnd[n] < h.good[n]) {
          t.push(h.handsEnd[n], Trial.HANDS_END, i);
        }
      } else {
        floor.idleSince[p] = h.handsEnd[n];
        floor.idleAfter[p] = i;
      }
    }
    t.worked[p] = h.worked;
    t.calledAt[p] = h.calledAt;
    t.calledFor[p] = h.calledFor;
    if (h.awayUntil > 0) {
      floor.away[p]++;
      t.push(h.awayUntil, Trial.PERSON_BACK, p);
    } else if (h.backSince > floor.idleSince[p]) {
      floor.idleSince[p] = h.backSince;
      floor.idleAfter[p] = Course.WAS_AWAY;
    }
  }

  /** Units that are with a room already; what is good and may lapse. */
  private void held() {
    for (int n : held) {
      floor.take(n);
    }
    for (int i : lapsing) {
      lapses(i, m.good[i] + m.life[i]);
    }
  }

  private void lapses(int i, long at) {
    if (at < 0) {
      overdue[overdueCount++] = i;
    } else {
      t.push(at, Trial.LAPSES, i);
    }
  }

  /** Rule 4's conditional draw and rule 3's forgotten touch. */
  private void inHand(int i) {
    long begin = Math.min(0, m.began[i]);
    long elapsed = -begin;
    int lead = m.by[i];
    double u = t.drawn.uniform(i, Hash.HANDS);
    if (lead >= 0 && m.sqrtShare > 0) {
      double z = m.sqrtShare * t.drawn.factor[lead] + m.sqrtRest * Normal.quantile(u);
      u = Normal.lower(z);
    }
    double forgotten = t.drawn.uniform(i, Hash.FORGOTTEN);
    long handsEnd;
    long waits;
    boolean over;
    if (m.waits[i].isZero()) {
      over = forgotten < m.hands[i].forgotten(m.forgotten, elapsed);
      handsEnd = over ? 0 : m.hands[i].remaining(u, elapsed);
      waits = 0;
    } else {
      long hands = m.hands[i].at(u);
      long waited = elapsed - hands;
      double w = t.drawn.uniform(i, Hash.WAITS);
      over = forgotten < m.waits[i].forgotten(m.forgotten, waited);
      handsEnd = over || waited >= 0 ? Math.min(-1, -waited) : -waited;
      waits = waited <= 0 ? m.waits[i].at(w) : waited + m.waits[i].remaining(w, waited);
    }
    course.enter(i);
    int slot = slotFor(i, lead);
    boolean claims = slot >= 0 && (handsEnd > 0 || m.waits[i].isZero());
    if (slot >= 0) {
      long since = Math.min(floor.idleSince[lead], begin);
      course.slot(slot, lead, since, floor.idleAfter[lead]);
    }
    if (claims) {
      floor.busy[lead]++;
      floor.where[lead] = m.place[i] >= 0 ? m.rooms + m.place[i] : m.room[i];
    }
    inHandTimes(i, Math.min(begin, handsEnd), handsEnd, waits, over);
  }

  private void inHandTimes(int i, long begin, long handsEnd, long waits, boolean over) {
    long extra = 0;
    if (!over && m.extraOneIn[i] > 0) {
      double u = t.drawn.uniform(i, Hash.EXTRA);
      extra = u * m.extraOneIn[i] < 1 ? m.extraMs[i] : 0;
    }
    long natural = over ? 0 : Math.max(0, handsEnd + waits + extra);
    long good = m.marks[i] ? Math.max(natural, m.notBefore[i]) : natural;
    course.extra[i] = extra;
    course.set(i, begin, handsEnd, natural, good);
    if (handsEnd >= 0 && handsEnd < good) {
      t.push(handsEnd, Trial.HANDS_END, i);
    }
    t.push(good, Trial.GOOD, i);
  }

  /** The slot that this person fills; the first if none fits; -1 if nobody is needed or named. */
  private int slotFor(int i, int person) {
    if (person < 0 || m.slotsOf(i) == 0) {
      return -1;
    }
    for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
      if (contains(m.slotOwn[s], person) || contains(m.slotRoaming[s], person)) {
        return s;
      }
    }
    return m.firstSlot[i];
  }

  private static boolean contains(int[] people, int person) {
    for (int p : people) {
      if (p == person) {
        return true;
      }
    }
    return false;
  }

  /** Those who must be in an item with the one who reported it, or in whose place nobody did. */
  private void others(int i) {
    for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
      if (course.person(s) == Course.NOBODY) {
        int p = t.someoneFor(i, s);
        if (p >= 0) {
          long since = Math.min(floor.idleSince[p], course.begin(i));
          int after = floor.idleAfter[p];
          t.occupy(p, s);
          course.slot(s, p, since, after);
        }
      }
    }
  }

  /** What will let open items begin at a time that is known or drawn. */
  private void gates() {
    for (int q = 0; q < m.places; q++) {
      if (m.opensAt[q] > 0) {
        t.push(m.opensAt[q], Trial.PLACE_OPENS, q);
      }
    }
    for (int i : m.booked) {
      if (t.state[i] == Model.OPEN) {
        t.push(m.notBefore[i], Trial.TIME_COMES, i);
      }
    }
    for (int i : m.arriving) {
      course.arrival[i] = arrives(i);
      if (course.arrival[i] > 0) {
        t.missing[i]++;
        t.push(course.arrival[i], Trial.TIME_COMES, i);
      }
    }
  }

  private long arrives(int i) {
    double u = t.drawn.uniform(i, Hash.ARRIVAL);
    long from = m.arrivalFrom[i];
    if (!m.arrivalSilent[i] && from < 0) {
      return m.arrivalLate[i].remaining(u, -from);
    }
    return from + m.arrivalLate[i].at(u);
  }
}
