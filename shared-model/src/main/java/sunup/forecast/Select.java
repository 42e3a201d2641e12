package sunup.forecast;

/** Order statistics. */
final class Select {
  private Select() {}

  /** The ceil(q n)-th smallest of the first n values, which are put in another order. */
  static int quantile(int[] a, int n, double q) {
    int k = Math.min(n, Math.max(1, (int) Math.ceil(q * n - 1e-9))) - 1;
    int low = 0;
    int high = n - 1;
    while (low < high) {
      int pivot = middle(a[low], a[(low + high) >>> 1], a[high]);
      int i = low;
      int j = high;
      while (i <= j) {
        while (a[i] < pivot) {
          i++;
        }
        while (a[j] > pivot) {
          j--;
        }
        if (i <= j) {
          int t = a[i];
          a[i++] = a[j];
          a[j--] = t;
        }
      }
      if (k <= j) {
        high = j;
      } else if (k >= i) {
        low = i;
      } else {
        break;
      }
    }
    return a[k];
  }

  private static int middle(int a, int b, int c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
