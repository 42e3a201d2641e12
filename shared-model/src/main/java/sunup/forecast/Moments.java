package sunup.forecast;

/**
 * The moments of all trials of a component, trial by trial, cut to ints: trials end within days.
 * Those of items stand in blocks of {@link #BLOCK} trials, item by item: a trial writes in one go,
 * and the moments of one item are read in stretches. Threads may write at the same time as long as
 * no two of them are in one block.
 */
final class Moments {
  /** Stands for a moment that does not come. */
  static final int NONE = Integer.MAX_VALUE;

  /** Trials of a block: their moments of one item are a line of memory. */
  static final int BLOCK = 16;

  /** Trials that memory is taken for at a time: a first answer need not wait for that of all. */
  private static final int STRETCH = 256;

  private final int undone;
  private final int[][] done;
  private final int[][] last;

  /** By room and trial: when it started, and when it could have without its booked time. */
  final int[][] start;

  final int[][] could;

  Moments(Model m, int trials) {
    undone = m.undone.length;
    int stretches = (trials + STRETCH - 1) / STRETCH;
    done = new int[stretches][];
    last = new int[stretches][];
    start = new int[m.rooms][trials];
    could = new int[m.rooms][trials];
  }

  static int cut(long ms) {
    return ms >= NONE ? NONE : ms <= -NONE ? -NONE : (int) ms;
  }

  /** Takes memory for the trials up to one; on one thread at a time. */
  void reach(int upTo) {
    int trials = start.length == 0 ? 0 : start[0].length;
    for (int s = (upTo - 1) / STRETCH; s >= 0 && done[s] == null; s--) {
      int size = Math.min(STRETCH, trials - s * STRETCH + BLOCK - 1) / BLOCK * BLOCK;
      done[s] = new int[Math.multiplyExact(size, undone)];
      last[s] = new int[done[s].length];
    }
  }

  /** Where a trial writes when items were good; the items follow each other by {@link #BLOCK}. */
  int[] done(int trial) {
    return done[trial / STRETCH];
  }

  /** Where a trial writes the last moments to begin them. */
  int[] last(int trial) {
    return last[trial / STRETCH];
  }

  /** The place of an undone item there, by its position among them. */
  int place(int item, int trial) {
    int n = trial % STRETCH;
    return (n / BLOCK * undone + item) * BLOCK + n % BLOCK;
  }

  /** When an item was good, by trial; NONE if not by its room's start. By position in undone. */
  void readDone(int item, int trials, int[] into) {
    read(done, item, trials, into);
  }

  /** The last moments to begin an item, by trial. */
  void readLast(int item, int trials, int[] into) {
    read(last, item, trials, into);
  }

  private void read(int[][] from, int item, int trials, int[] into) {
    for (int n = 0; n < trials; n += BLOCK) {
      System.arraycopy(from[n / STRETCH], place(item, n), into, n, Math.min(BLOCK, trials - n));
    }
  }
}
