package sunup.forecast;

import java.util.Arrays;

/**
 * A binary heap of events, each one long: the moment above, what and which below. Taking an event
 * leaves a hole at the top that the next one entered fills: handling an event mostly enters
 * another.
 */
final class Heap {
  /** After all events. */
  static final long NONE = Long.MAX_VALUE;

  static final int CODE_BITS = 22;
  static final int INDEX_BITS = 18;

  private long[] a = new long[256];
  private int n;
  private boolean hole;

  void clear() {
    n = 0;
    hole = false;
  }

  static long event(long at, int what, int which) {
    return (at << CODE_BITS) | ((long) what << INDEX_BITS) | which;
  }

  static long at(long event) {
    return event >> CODE_BITS;
  }

  static int what(long event) {
    return (int) (event >>> INDEX_BITS) & ((1 << (CODE_BITS - INDEX_BITS)) - 1);
  }

  static int which(long event) {
    return (int) event & ((1 << INDEX_BITS) - 1);
  }

  /** The next event, or {@link #NONE}. */
  long next() {
    if (!hole) {
      return n > 0 ? a[0] : NONE;
    }
    return n > 2 ? Math.min(a[1], a[2]) : n > 1 ? a[1] : NONE;
  }

  void push(long event) {
    if (hole) {
      hole = false;
      sink(event);
      return;
    }
    if (n == a.length) {
      a = Arrays.copyOf(a, 2 * n);
    }
    int i = n++;
    while (i > 0) {
      int up = (i - 1) >> 1;
      if (a[up] <= event) {
        break;
      }
      a[i] = a[up];
      i = up;
    }
    a[i] = event;
  }

  /** Takes the next event; one must be there. */
  long pop() {
    if (hole) {
      sink(a[--n]);
    }
    hole = true;
    return a[0];
  }

  /** Puts an event in the place of the first. */
  private void sink(long event) {
    long[] h = a;
    int end = n;
    int i = 0;
    int down = 1;
    while (down < end) {
      long least = h[down];
      if (down + 1 < end && h[down + 1] < least) {
        least = h[++down];
      }
      if (least >= event) {
        break;
      }
      h[i] = least;
      i = down;
      down = 2 * i + 1;
    }
    h[i] = event;
  }
}
