package sunup.forecast;

import java.util.Arrays;

/**
 * What a room's start waited for, backward from the start to the room's planned beginning, in
 * elements that tile the time between (rule 6). Works on any {@link Course}: a trial's, or what
 * happened in fact.
 */
final class Chain {
  static final int PLAN = 0;
  static final int WORK = 1;
  static final int WAITS = 2;
  static final int MEND = 3;
  static final int ARRIVAL = 4;
  static final int OCCUPIED = 5;
  static final int LAPSE = 6;
  static final int BOOKED = 7;
  static final int PERSON = 8;
  static final int PLACE = 9;
  static final int EQUIPMENT = 10;
  static final int NOT_BEGUN = 11;

  static final String[] KINDS = {
    "plan",
    "work",
    "waits",
    "mend",
    "arrival",
    "occupied",
    "lapse",
    "booked",
    "person",
    "place",
    "equipment",
    "not-begun"
  };

  private static final int PREREQUISITE = -1;

  /** The person, place or kind of equipment that an element's thing is, or null. */
  static String nameOf(Model m, int kind, int thing) {
    if (thing < 0) {
      return null;
    }
    return kind == PLACE
        ? m.placeId[thing]
        : kind == EQUIPMENT ? m.kindId[thing] : m.personId[thing];
  }

  private final Model m;

  /** Elements, first to last once walked. */
  int count;

  int[] kind = new int[64];
  int[] item = new int[64];

  /** Person, place or kind of equipment by the element's kind, or -1. */
  int[] thing = new int[64];

  /** The room where the thing was meanwhile, or -1. */
  int[] where = new int[64];

  long[] end = new long[64];
  long[] length = new long[64];
  long[] allowed = new long[64];

  private Course course;
  private int room;
  private long begins;

  /** The moment that the walk has come back to, and the item it stands at. */
  private long at;

  private int x;
  private boolean whole;

  private final int[] seen;
  private int stamp;

  /** What the beginning of the item waited for. */
  private int sources;

  private final int[] sourceKind = new int[4 + 2 * Limits.SLOTS + 2];
  private final int[] sourceOf = new int[sourceKind.length];
  private final long[] sourceAt = new long[sourceKind.length];

  Chain(Model m) {
    this.m = m;
    seen = new int[m.items];
  }

  void walk(Course of, int roomIndex, long start) {
    course = of;
    room = roomIndex;
    begins = m.begins[room];
    count = 0;
    stamp++;
    at = start;
    x = m.startItem[room];
    whole = true;
    if (at > begins && course.good(x) > start) {
      unfinished();
    }
    while (at > begins && x >= 0) {
      seen[x] = stamp;
      through();
      if (at > begins && x >= 0) {
        sources(true);
        back();
      }
    }
    reverse();
  }

  /** Back through the item's own time to its beginning. */
  private void through() {
    if (whole) {
      long natural = course.natural(x);
      if (natural < at) {
        add(BOOKED, -1, -1, natural, at - Math.max(natural, begins));
      }
      if (course.extra[x] > 0 && natural - course.extra[x] < at) {
        add(MEND, -1, -1, natural - course.extra[x], 0);
      }
      if (course.handsEnd(x) < at) {
        add(WAITS, -1, -1, course.handsEnd(x), m.waits[x].usual);
      }
    }
    if (m.isArrival[x] && course.arrival[x] == course.begin(x)) {
      add(ARRIVAL, -1, -1, begins, m.arrivalFrom[x] + m.arrivalLate[x].usual - begins);
      x = -1;
      return;
    }
    if (m.slotsOf(x) > 0 || course.begin(x) < at) {
      int p = m.slotsOf(x) > 0 ? course.person(m.firstSlot[x]) : -1;
      if (m.mends[x] >= 0) {
        add(MEND, p, -1, course.begin(x), 0);
      } else {
        long walk = course.walked[x] && m.place[x] >= 0 ? m.walk[m.place[x]].usual : 0;
        // One reported good and done again for a lapse has its hands and its waiting apart.
        boolean known = m.state[x] == Model.GOOD && course.position[x] < 0;
        add(WORK, p, -1, course.begin(x), (known ? m.usualOf(x) : m.hands[x].usual) + walk);
      }
    }
  }

  /** Of one that has not begun, or is open again, nobody and no unit is known. */
  private void sources(boolean begun) {
    sources = 0;
    int last = -1;
    for (int j : m.before[x]) {
      if (course.good(j) <= at
          && seen[j] != stamp
          && (last < 0 || course.good(j) > course.good(last))) {
        last = j;
      }
    }
    if (last >= 0) {
      source(PREREQUISITE, last, course.good(last));
    }
    if (m.inRoom[x]) {
      source(OCCUPIED, -1, course.emptied[room]);
    }
    source(LAPSE, -1, course.reopened[x]);
    if (!m.marks[x]) {
      source(BOOKED, -1, m.notBefore[x]);
    }
    if (begun) {
      persons(true);
    }
    if (m.place[x] >= 0) {
      source(PLACE, m.place[x], m.opensAt[m.place[x]]);
    }
    if (begun) {
      units();
      persons(false);
    }
  }

  private void units() {
    for (int n = m.firstNeed[x]; n < m.firstNeed[x + 1]; n++) {
      source(EQUIPMENT, n, course.needSince[n]);
    }
  }

  private void persons(boolean own) {
    for (int s = m.firstSlot[x]; s < m.firstSlot[x + 1]; s++) {
      int p = course.person(s);
      if (p >= 0 && (m.personRoom[p] == room) == own) {
        source(PERSON, s, course.since(s));
      }
    }
  }

  private void source(int ofKind, int of, long since) {
    if (since > Model.EVER && since <= at) {
      sourceKind[sources] = ofKind;
      sourceOf[sources] = of;
      sourceAt[sources++] = since;
    }
  }

  /** The latest source; of equal ones the first. */
  private int latest() {
    int best = -1;
    for (int s = 0; s < sources; s++) {
      if (sourceAt[s] > Model.EVER && (best < 0 || sourceAt[s] > sourceAt[best])) {
        best = s;
      }
    }
    return best;
  }

  /** From an item's beginning to the item that bound it, or to the beginning of the room. */
  private void back() {
    int s = latest();
    if (s < 0 || sourceAt[s] < at) {
      add(NOT_BEGUN, -1, -1, s < 0 ? begins : sourceAt[s], 0);
    }
    while (at > begins) {
      int of = sourceOf[s];
      if (sourceKind[s] == PREREQUISITE) {
        x = of;
        whole = true;
        return;
      }
      int after = sourceKind[s] == PERSON ? course.after(of) : -1;
      if (after >= 0
          && m.room[after] == room
          && course.handsEnd(after) == at
          && seen[after] != stamp) {
        x = after;
        whole = false;
        return;
      }
      int what = sourceKind[s];
      sourceAt[s] = Model.EVER;
      if (what == PERSON && course.after(of) == Course.CAME) {
        int p = course.person(of);
        add(ARRIVAL, p, -1, begins, m.plannedAt[p] - begins);
        return;
      }
      s = latest();
      waited(what, of, s < 0 ? begins : sourceAt[s]);
    }
  }

  private void waited(int what, int of, long from) {
    switch (what) {
      case PERSON -> {
        int after = course.after(of);
        add(PERSON, course.person(of), after >= 0 ? m.room[after] : -1, from, 0);
      }
      case EQUIPMENT -> {
        int after = course.needAfter[of];
        add(EQUIPMENT, m.needKind[of], after >= 0 ? m.room[after] : -1, from, 0);
      }
      case PLACE -> add(PLACE, of, -1, from, 0);
      case BOOKED -> add(BOOKED, -1, -1, from, at - Math.max(from, begins));
      default -> add(what, -1, -1, from, 0);
    }
  }

  /** The start has not come: back to what it still waits for at the moment of the cap. */
  private void unfinished() {
    int next = x;
    while (next >= 0) {
      x = next;
      next = -1;
      for (int j : m.before[x]) {
        if (course.good(j) > at) {
          next = j;
          break;
        }
      }
    }
    seen[x] = stamp;
    if (course.position[x] >= 0 && course.begin(x) < at && !course.isOpenAgain(x)) {
      return;
    }
    if (m.isArrival[x] && course.arrival[x] > at) {
      add(ARRIVAL, -1, -1, begins, m.arrivalFrom[x] + m.arrivalLate[x].usual - begins);
      return;
    }
    sources(false);
    int s = latest();
    long from = s < 0 ? begins : sourceAt[s];
    if (m.inRoom[x] && course.emptied[room] > at) {
      add(OCCUPIED, -1, -1, from, 0);
    } else if (m.place[x] >= 0 && m.opensAt[m.place[x]] > at) {
      add(PLACE, m.place[x], -1, from, 0);
    } else if (m.slotsOf(x) > 0) {
      add(PERSON, -1, -1, from, 0);
    } else if (m.needsOf(x) > 0) {
      add(EQUIPMENT, m.needKind[m.firstNeed[x]], -1, from, 0);
    } else {
      add(BOOKED, -1, -1, from, at - Math.max(from, begins));
    }
    if (at > begins) {
      back();
    }
  }

  private void add(int what, int ofThing, int ofWhere, long from, long allows) {
    if (count == kind.length) {
      int n = 2 * count;
      kind = Arrays.copyOf(kind, n);
      item = Arrays.copyOf(item, n);
      thing = Arrays.copyOf(thing, n);
      where = Arrays.copyOf(where, n);
      end = Arrays.copyOf(end, n);
      length = Arrays.copyOf(length, n);
      allowed = Arrays.copyOf(allowed, n);
    }
    long begin = Math.min(at, Math.max(from, begins));
    kind[count] = what;
    item[count] = m.shown(x);
    thing[count] = ofThing;
    where[count] = ofWhere;
    end[count] = at;
    length[count] = at - begin;
    allowed[count++] = allows;
    at = begin;
  }

  private void reverse() {
    for (int i = 0, j = count - 1; i < j; i++, j--) {
      swap(kind, i, j);
      swap(item, i, j);
      swap(thing, i, j);
      swap(where, i, j);
      swap(end, i, j);
      swap(length, i, j);
      swap(allowed, i, j);
    }
  }

  private static void swap(int[] a, int i, int j) {
    int t = a[i];
    a[i] = a[j];
    a[j] = t;
  }

  private static void swap(long[] a, int i, int j) {
    long t = a[i];
    a[i] = a[j];
    a[j] = t;
  }
}
