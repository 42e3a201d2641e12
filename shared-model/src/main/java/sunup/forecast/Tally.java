package sunup.forecast;

/**
 * What one thread counts of the trials that it plays, and how it reads the moments of each. Tallies
 * of several add up to that of one alone.
 */
final class Tally {
  /** One room's late minutes. */
  static final class Late {
    long total;
    int onTime;
    int capped;

    /** Of the total what ended before now. */
    long lost;

    /** The rest of it, by what carried it. */
    final Sums sums = new Sums();

    void add(int kind, long key, long ended, long ms) {
      int end = Moments.cut(ended);
      if (end <= 0 && kind != Chain.PLAN) {
        lost += ms;
      } else {
        sums.add(key, ms, end);
      }
    }

    private void takeOver(Late other) {
      total += other.total;
      onTime += other.onTime;
      capped += other.capped;
      lost += other.lost;
      sums.takeOver(other.sums);
      other.total = 0;
      other.onTime = 0;
      other.capped = 0;
      other.lost = 0;
    }
  }

  private static final long MINUTE = 60_000;

  private final Model m;
  private final Moments moments;
  private final long epoch;
  private final Chain chain;
  private final LastMoments lastMoments;
  private long[] pieces = new long[65];
  private final long[] starts;

  /** Items that stood on the chain that was walked last, by its stamp. */
  private final int[] seen;

  private int stamp;

  final int[] critical;
  final Late[] late;

  Tally(Model m, Moments moments, long epoch) {
    this.m = m;
    this.moments = moments;
    this.epoch = epoch;
    chain = new Chain(m);
    lastMoments = new LastMoments(m);
    critical = new int[m.items];
    starts = new long[m.rooms];
    seen = new int[m.items];
    late = new Late[m.rooms];
    for (int r = 0; r < m.rooms; r++) {
      late[r] = new Late();
    }
  }

  /** Takes down a trial. */
  void take(Course c, int n) {
    for (int r = 0; r < m.rooms; r++) {
      starts[r] = takeRoom(c, r, n);
    }
    lastMoments.read(c);
    int[] done = moments.done(n);
    int[] last = moments.last(n);
    int at = moments.place(0, n);
    for (int i : m.undone) {
      long good = c.good(i);
      done[at] = good <= starts[m.room[i]] ? Moments.cut(good) : Moments.NONE;
      last[at] = c.position[i] >= 0 ? lastMoments.begin(i) : Moments.NONE;
      at += Moments.BLOCK;
    }
  }

  /** Takes over all that another tally of the same component has counted. */
  void takeOver(Tally other) {
    for (int i = 0; i < critical.length; i++) {
      critical[i] += other.critical[i];
      other.critical[i] = 0;
    }
    for (int r = 0; r < late.length; r++) {
      late[r].takeOver(other.late[r]);
    }
  }

  private long takeRoom(Course c, int r, int n) {
    int x = m.startItem[r];
    Late l = late[r];
    long s;
    if (m.started[r] < Model.NEVER) {
      s = m.started[r];
      moments.could[r][n] = Moments.cut(s);
    } else {
      s = Math.min(c.good(x), m.cap[r]);
      l.capped += c.good(x) > m.cap[r] ? 1 : 0;
      moments.could[r][n] = Moments.cut(Math.min(c.natural(x), s));
    }
    moments.start[r][n] = Moments.cut(s);
    if (Math.floorDiv(s + epoch, MINUTE) * MINUTE - epoch <= m.target[r] + m.grace) {
      l.onTime++;
    }
    if (s > m.target[r]) {
      l.total += s - m.target[r];
      explain(c, r, s, l);
    }
    return s;
  }

  private void explain(Course c, int r, long s, Late l) {
    chain.walk(c, r, s);
    stamp++;
    int n = chain.count;
    if (pieces.length <= n) {
      pieces = new long[2 * n + 1];
    }
    Pieces.split(Math.min(s, m.begins[r]), m.target[r], n, chain.length, chain.allowed, pieces);
    if (pieces[0] > 0) {
      l.add(Chain.PLAN, key(Chain.PLAN, -1, -1, -1), m.begins[r], pieces[0]);
    }
    for (int k = 0; k < n; k++) {
      int i = chain.item[k];
      if (pieces[k + 1] > 0) {
        int kind = chain.kind[k];
        long key = key(kind, i, chain.thing[k], chain.where[k]);
        l.add(kind, key, chain.end[k], pieces[k + 1]);
      }
      if (seen[i] != stamp) {
        seen[i] = stamp;
        critical[i]++;
      }
    }
  }

  /** What, of which item (18 bits), which thing and where (12 bits each). */
  private static long key(int kind, int item, int thing, int where) {
    return ((long) kind << 48)
        | ((long) (item + 1) << 28)
        | ((long) (thing + 1) << 14)
        | (where + 1);
  }

  static int kindOf(long key) {
    return (int) (key >>> 48);
  }

  static int itemOf(long key) {
    return ((int) (key >>> 28) & 0xfffff) - 1;
  }

  static int thingOf(long key) {
    return ((int) (key >>> 14) & 0x3fff) - 1;
  }

  static int whereOf(long key) {
    return ((int) key & 0x3fff) - 1;
  }
}
