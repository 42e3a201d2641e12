package sunup.forecast;

/**
 * Where rooms stood when they started, or at their cap: what their figures are read from. A trial
 * goes on as long as any room of the component waits, and a room's figures must not depend on how
 * long that is. Only an item that lapses, or is done again, is overwritten by what comes later: of
 * such a one the record of that moment is kept and put back at the end.
 */
final class Settled {
  private final Model m;
  private final Course course;

  /** When each room started, or {@link Model#NEVER}: its start too may lapse. */
  private final long[] startedAt;

  private final Course kept;
  private final boolean[] isKept;
  private final int[] items;
  private int count;

  Settled(Model m, Course course) {
    this.m = m;
    this.course = course;
    startedAt = new long[m.rooms];
    kept = new Course(m);
    isKept = new boolean[m.items];
    items = new int[m.items];
  }

  /** From what is known at now. */
  void reset() {
    for (int r = 0; r < m.rooms; r++) {
      int start = m.startItem[r];
      startedAt[r] = m.state[start] == Model.GOOD ? course.good(start) : Model.NEVER;
    }
  }

  /** The start of a room is good; false if it was before, and is so again. */
  boolean starts(int room, long at) {
    if (startedAt[room] < Model.NEVER) {
      return false;
    }
    startedAt[room] = at;
    return true;
  }

  /** What is known of an item is about to be overwritten by what happened then. */
  void changes(int item, long then) {
    int r = m.room[item];
    if (!isKept[item] && (startedAt[r] < then || m.cap[r] < then)) {
      isKept[item] = true;
      items[count++] = item;
      kept.copy(m, item, course);
    }
  }

  /** Puts back what was overwritten after its room's start or cap. */
  void restore() {
    for (int n = 0; n < count; n++) {
      isKept[items[n]] = false;
      course.copy(m, items[n], kept);
    }
    count = 0;
  }
}
