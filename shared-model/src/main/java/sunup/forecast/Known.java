package sunup.forecast;

import java.util.stream.IntStream;

/** What is known at now of work that is done: with implied beginnings (rule 3). */
final class Known {
  final Course course;

  /** Since when a person is idle if here, and after which item of the own room. */
  final long[] idleSince;

  final int[] idleAfter;

  /** Whether roaming people are followed from room to room too. */
  private final boolean everybody;

  Known(Model m) {
    this(m, null, 0);
  }

  private Known(Model m, Past past, long now) {
    this.everybody = past != null;
    course = new Course(m);
    idleSince = new long[m.people];
    idleAfter = new int[m.people];
    for (int p = 0; p < m.people; p++) {
      idleSince[p] = m.arrivedAt[p] == Model.NEVER ? Model.EVER : m.arrivedAt[p];
      idleAfter[p] = Course.CAME;
    }
    course.blank();
    if (past != null) {
      told(m, past, now);
    }
    for (int i = 0; i < m.items; i++) {
      course.good(i, m.good[i]);
    }
    int[] done =
        IntStream.range(0, m.items)
            .filter(i -> m.state[i] == Model.GOOD && m.good[i] != Model.EVER)
            .boxed()
            .sorted((a, b) -> m.good[a] != m.good[b] ? Long.compare(m.good[a], m.good[b]) : a - b)
            .mapToInt(Integer::intValue)
            .toArray();
    for (int i : done) {
      finish(m, i);
    }
    for (int p = 0; p < m.people; p++) {
      if (m.lastFinish[p] > idleSince[p]) {
        // Somewhere else than in the own room; where does not matter any more.
        idleSince[p] = m.lastFinish[p];
        idleAfter[p] = Course.WAS_AWAY;
      }
    }
  }

  /**
   * A morning that is over: roaming people are followed too.
   *
   * @param now epoch milliseconds that the model counts from
   */
  static Known asRun(Model m, long now, Past past) {
    return new Known(m, past, now);
  }

  private void told(Model m, Past past, long now) {
    for (int r = 0; r < m.rooms; r++) {
      Long freed = past.freed(m.roomId[r]);
      course.emptied[r] = freed == null ? Model.EVER : freed - now;
    }
    for (int i = 0; i < m.items; i++) {
      boolean done = m.state[i] == Model.GOOD && m.good[i] != Model.EVER;
      for (int n = m.firstNeed[i]; done && n < m.firstNeed[i + 1]; n++) {
        String kind = m.kindId[m.needKind[n]];
        Past.Came came = past.came(m.roomId[m.room[i]], kind, now + m.good[i]);
        if (came != null) {
          course.needSince[n] = came.at() - now;
          course.needAfter[n] = userIn(m, came.from(), m.needKind[n]);
        }
      }
    }
  }

  /** An item for which equipment of the kind was in a room, so that the room can be named. */
  private static int userIn(Model m, String room, int kind) {
    for (int i = 0; room != null && i < m.items; i++) {
      for (int n = m.firstNeed[i]; n < m.firstNeed[i + 1]; n++) {
        if (m.needKind[n] == kind && m.roomId[m.room[i]].equals(room)) {
          return i;
        }
      }
    }
    return Course.NOBODY;
  }

  /** Rule 3: the last finish by that person in that room; of own people wherever they were. */
  private long lastFinish(Model m, int p, int room) {
    boolean inRoom = idleAfter[p] >= 0 && m.room[idleAfter[p]] == room;
    return m.personRoom[p] == room || inRoom ? idleSince[p] : Model.EVER;
  }

  private void finish(Model m, int i) {
    long good = m.good[i];
    int p = m.by[i];
    boolean followed = p >= 0 && (everybody || m.personRoom[p] == m.room[i]);
    long begin;
    if (m.began[i] != Model.EVER) {
      begin = m.began[i];
    } else if (m.slotsOf(i) == 0) {
      begin = good;
    } else {
      ImpliedBeginning implied = new ImpliedBeginning(good);
      for (int j : m.before[i]) {
        implied.after(m.good[j]);
      }
      if (followed) {
        implied.from(lastFinish(m, p, m.room[i]));
      }
      if (m.place[i] >= 0) {
        implied.from(m.opensAt[m.place[i]]);
      }
      if (m.inRoom[i]) {
        implied.from(by(course.emptied[m.room[i]], good));
      }
      for (int n = m.firstNeed[i]; n < m.firstNeed[i + 1]; n++) {
        implied.from(by(course.needSince[n], good));
      }
      begin = implied.moment() == null ? good - m.usualOf(i) : implied.moment();
    }
    begin = Math.min(begin, good);
    course.set(i, begin, good, good, good);
    if (m.isArrival[i] && cameByItself(m, i)) {
      course.arrival[i] = good;
    }
    if (followed && m.slotsOf(i) > 0) {
      int slot = m.firstSlot[i];
      boolean idle = idleSince[p] <= begin;
      course.slot(slot, p, idle ? idleSince[p] : Model.EVER, idle ? idleAfter[p] : Course.CAME);
      if (good > idleSince[p]) {
        idleSince[p] = good;
        idleAfter[p] = i;
      }
    }
  }

  /** Null if that was never told, or happened only after the work was good. */
  private static Long by(long moment, long good) {
    return moment == Model.EVER || moment > good ? null : (Long) moment;
  }

  private static boolean cameByItself(Model m, int i) {
    for (int j : m.before[i]) {
      if (m.good[j] >= m.good[i]) {
        return false;
      }
    }
    return true;
  }
}
