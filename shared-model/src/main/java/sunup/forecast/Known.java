package sunup.forecast;

import java.util.stream.IntStream;

/** What is known at now of work that is done: with implied beginnings (rule 3). */
final class Known {
  final Course course;

  /** Since when a person is idle if here, and after which item of the own room. */
  final long[] idleSince;

  final int[] idleAfter;

  Known(Model m) {
    course = new Course(m);
    idleSince = new long[m.people];
    idleAfter = new int[m.people];
    for (int p = 0; p < m.people; p++) {
      idleSince[p] = m.arrivedAt[p] == Model.NEVER ? Model.EVER : m.arrivedAt[p];
      idleAfter[p] = Course.CAME;
    }
    course.blank();
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

  private void finish(Model m, int i) {
    long good = m.good[i];
    int p = m.by[i];
    boolean own = p >= 0 && m.personRoom[p] == m.room[i];
    long begin = Model.EVER;
    if (m.began[i] != Model.EVER) {
      begin = m.began[i];
    } else if (m.slotsOf(i) == 0) {
      begin = good;
    } else {
      for (int j : m.before[i]) {
        begin = Math.max(begin, Math.min(m.good[j], good));
      }
      if (own) {
        begin = Math.max(begin, idleSince[p]);
      }
      if (m.place[i] >= 0) {
        begin = Math.max(begin, m.opensAt[m.place[i]]);
      }
      if (begin == Model.EVER) {
        begin = good - m.usualOf(i);
      }
    }
    begin = Math.min(begin, good);
    course.set(i, begin, good, good, good);
    if (own && m.slotsOf(i) > 0) {
      int slot = m.firstSlot[i];
      boolean idle = idleSince[p] <= begin;
      course.slot(slot, p, idle ? idleSince[p] : Model.EVER, idle ? idleAfter[p] : Course.CAME);
      if (good > idleSince[p]) {
        idleSince[p] = good;
        idleAfter[p] = i;
      }
    }
  }
}
