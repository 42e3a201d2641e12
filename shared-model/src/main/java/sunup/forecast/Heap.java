package sunup.forecast;

import java.util.Arrays;

/** A binary heap of events, each one long: the moment above, what and which below. */
final class Heap {
  static final int CODE_BITS = 22;
  static final int INDEX_BITS = 18;

  private long[] a = new long[256];
  private int n;

  void clear() {
    n = 0;
  }

  boolean isEmpty() {
    return n == 0;
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

  long peek() {
    return a[0];
  }

  void push(long event) {
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
    long first = a[0];
    long last = a[--n];
    int i = 0;
    while (true) {
      int down = 2 * i + 1;
      if (down >= n) {
        break;
      }
      if (down + 1 < n && a[down + 1] < a[down]) {
        down++;
      }
      if (a[down] >= last) {
        break;
      }
      a[i] = a[down];
      i = down;
    }
    a[i] = last;
    return first;
  }
}
