package sunup.forecast;

import java.util.Arrays;

/**
 * A binary heap of events, each one long: the moment above, what and which below. Taking an event
 * leaves a hole at the top that the next one entered fills: handling an event mostly enters
 * another.
 */
final class Heap {
  static final int CODE_BITS = 22;
  static final int INDEX_BITS = 18;

  private long[] a = new long[256];
  private int n;
  private boolean hole;

  void clear() {
    n = 0;
    hole = false;
  }

  boolean isEmpty() {
    return n == (hole ? 1 : 0);
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

  /** The next event; one must be there. */
  long peek() {
    if (hole) {
      hole = false;
      sink(a[--n]);
    }
    return a[0];
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

  long pop() {
    long first = peek();
    hole = true;
    return first;
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
