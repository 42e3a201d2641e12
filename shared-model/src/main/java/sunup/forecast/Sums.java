package sunup.forecast;

import java.util.Arrays;

/**
 * Late milliseconds of one room by what carried them: for each kind of piece their sum and the
 * moments at which it ended. Keys are any numbers.
 */
final class Sums {
  private static final int FIRST_SIZE = 64;
  private static final int FIRST_ENDS = 8;

  /** Open addressing: the place of a key in the lists, plus one; 0 if there is none. */
  private int[] slot = new int[FIRST_SIZE];

  private long[] key = new long[FIRST_SIZE / 2];
  private long[] ms = new long[FIRST_SIZE / 2];
  private int[][] ends = new int[FIRST_SIZE / 2][];
  private int[] endCount = new int[FIRST_SIZE / 2];
  private int count;

  /** How many keys there are. */
  int count() {
    return count;
  }

  /** The k-th key, in the order in which they came. */
  long key(int k) {
    return key[k];
  }

  long ms(int k) {
    return ms[k];
  }

  /** Moments at which a piece of the k-th key ended, in {@link #endCount} places. */
  int[] ends(int k) {
    return ends[k];
  }

  int endCount(int k) {
    return endCount[k];
  }

  /** Places of the keys, least key first. */
  Integer[] inOrder() {
    Integer[] order = new Integer[count];
    for (int k = 0; k < count; k++) {
      order[k] = k;
    }
    Arrays.sort(order, (a, b) -> Long.compare(key[a], key[b]));
    return order;
  }

  void add(long of, long piece, int end) {
    int k = placeOf(of);
    ms[k] += piece;
    reserve(k, 1);
    ends[k][endCount[k]++] = end;
  }

  /** Takes over all that another has and empties it. The order of ends matters to no figure. */
  void takeOver(Sums other) {
    for (int o = 0; o < other.count; o++) {
      int k = placeOf(other.key[o]);
      ms[k] += other.ms[o];
      reserve(k, other.endCount[o]);
      System.arraycopy(other.ends[o], 0, ends[k], endCount[k], other.endCount[o]);
      endCount[k] += other.endCount[o];
    }
    Arrays.fill(other.slot, 0);
    other.count = 0;
  }

  private void reserve(int k, int more) {
    int wanted = endCount[k] + more;
    if (wanted > ends[k].length) {
      ends[k] = Arrays.copyOf(ends[k], Math.max(wanted, 2 * ends[k].length));
    }
  }

  private int placeOf(long of) {
    int at = slotOf(of);
    if (slot[at] > 0) {
      return slot[at] - 1;
    }
    if (count == key.length) {
      grow();
      at = slotOf(of);
    }
    key[count] = of;
    ms[count] = 0;
    endCount[count] = 0;
    if (ends[count] == null) {
      ends[count] = new int[FIRST_ENDS];
    }
    slot[at] = ++count;
    return count - 1;
  }

  /** Where the key stands, or the empty slot where it would. */
  private int slotOf(long of) {
    int mask = slot.length - 1;
    int at = (int) Hash.mix(of) & mask;
    while (slot[at] > 0 && key[slot[at] - 1] != of) {
      at = (at + 1) & mask;
    }
    return at;
  }

  private void grow() {
    int size = 2 * key.length;
    key = Arrays.copyOf(key, size);
    ms = Arrays.copyOf(ms, size);
    ends = Arrays.copyOf(ends, size);
    endCount = Arrays.copyOf(endCount, size);
    slot = new int[2 * size];
    for (int k = 0; k < count; k++) {
      slot[slotOf(key[k])] = k + 1;
    }
  }
}
