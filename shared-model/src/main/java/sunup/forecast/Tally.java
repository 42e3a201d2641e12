package sunup.forecast;

import java.util.Arrays;

/**
 * What is kept of each trial of a component. Moments are cut to ints: trials end within days. Those
 * of items stand in blocks of {@link #BLOCK} trials, item by item: a trial writes in one go, and
 * the moments of one item are read in stretches.
 */
final class Tally {
  /** Stands for a moment that does not come. */
  static final int NONE = Integer.MAX_VALUE;

  /** Late pieces of one room: what each was, when it ended and how much it carried. */
  static final class Late {
    long total;
    int late;
    int onTime;
    int capped;
    int count;
    long[] key = new long[64];
    int[] end = new int[64];
    long[] piece = new long[64];

    void add(long k, long ended, long ms) {
      if (count == key.length) {
        key = Arrays.copyOf(key, 2 * count);
        end = Arrays.copyOf(end, 2 * count);
        piece = Arrays.copyOf(piece, 2 * count);
      }
      key[count] = k;
      end[count] = cut(ended);
      piece[count++] = ms;
    }
  }

  private static final long MINUTE = 60_000;

  /** Trials of a block: their moments of one item are a line of memory. */
  private static final int BLOCK = 16;

  private final Model m;
  private final long epoch;
  private final Chain chain;
  private final LastMoments lastMoments;
  private long[] pieces = new long[65];
  private final long[] starts;

  /** Items that stood on the chain that was walked last, by its stamp. */
  private final int[] seen;

  private int stamp;

  int trials;
  final int[][] start;
  final int[][] could;
  private final int[] done;
  private final int[] last;
  final int[] critical;
  final Late[] late;

  Tally(Model m, int trials, long epoch) {
    this.m = m;
    this.epoch = epoch;
    chain = new Chain(m);
    lastMoments = new LastMoments(m);
    start = new int[m.rooms][trials];
    could = new int[m.rooms][trials];
    int blocks = (trials + BLOCK - 1) / BLOCK;
    done = new int[Math.multiplyExact(blocks * BLOCK, m.undone.length)];
    last = new int[done.length];
    critical = new int[m.items];
    starts = new long[m.rooms];
    seen = new int[m.items];
    late = new Late[m.rooms];
    for (int r = 0; r < m.rooms; r++) {
      late[r] = new Late();
    }
  }

  static int cut(long ms) {
    return ms >= NONE ? NONE : ms <= -NONE ? -NONE : (int) ms;
  }

  void take(Course c) {
    int n = trials++;
    for (int r = 0; r < m.rooms; r++) {
      starts[r] = takeRoom(c, r, n);
    }
    lastMoments.read(c);
    int at = place(0, n);
    for (int i : m.undone) {
      long good = c.good(i);
      done[at] = good <= starts[m.room[i]] ? cut(good) : NONE;
      last[at] = c.position[i] >= 0 ? lastMoments.begin(i) : NONE;
      at += BLOCK;
    }
  }

  private int place(int undone, int trial) {
    return (trial / BLOCK * m.undone.length + undone) * BLOCK + trial % BLOCK;
  }

  /** When an item was good, by trial; NONE if not by its room's start. By position in undone. */
  void readDone(int undone, int[] into) {
    read(done, undone, into);
  }

  /** The last moments to begin an item, by trial. */
  void readLast(int undone, int[] into) {
    read(last, undone, into);
  }

  private void read(int[] from, int undone, int[] into) {
    for (int n = 0; n < trials; n += BLOCK) {
      System.arraycopy(from, place(undone, n), into, n, Math.min(BLOCK, trials - n));
    }
  }

  private long takeRoom(Course c, int r, int n) {
    int x = m.startItem[r];
    Late l = late[r];
    long s;
    if (m.started[r] < Model.NEVER) {
      s = m.started[r];
      could[r][n] = cut(s);
    } else {
      s = Math.min(c.good(x), m.cap[r]);
      l.capped += c.good(x) > m.cap[r] ? 1 : 0;
      could[r][n] = cut(Math.min(c.natural(x), s));
    }
    start[r][n] = cut(s);
    if (Math.floorDiv(s + epoch, MINUTE) * MINUTE - epoch <= m.target[r] + m.grace) {
      l.onTime++;
    }
    if (s > m.target[r]) {
      l.late++;
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
      l.add(key(Chain.PLAN, -1, -1, -1), m.begins[r], pieces[0]);
    }
    for (int k = 0; k < n; k++) {
      int i = chain.item[k];
      if (pieces[k + 1] > 0) {
        l.add(key(chain.kind[k], i, chain.thing[k], chain.where[k]), chain.end[k], pieces[k + 1]);
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
