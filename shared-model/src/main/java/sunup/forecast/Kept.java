package sunup.forecast;

import java.util.Arrays;
import java.util.stream.Stream;

/**
 * Which of one silent person's histories were kept, in the order in which they are tried. Whoever
 * plays a trial tries on until the history that carries it is known, so that it does not depend on
 * the order in which trials are played. Held by one thread at a time.
 */
final class Kept {
  private int[] numbers = new int[16];
  private int count;
  private int tried;

  static Kept[] ofEach(int people) {
    return Stream.generate(Kept::new).limit(people).toArray(Kept[]::new);
  }

  /** Histories tried so far. */
  int tried() {
    return tried;
  }

  /** Of them kept. */
  int count() {
    return count;
  }

  /** Whether more must be tried, up to a limit, before it is known what carries a trial. */
  boolean lacks(int trial, int limit) {
    return count <= trial && tried < limit;
  }

  /** The next was tried. */
  void tried(boolean isKept) {
    if (isKept) {
      if (count == numbers.length) {
        numbers = Arrays.copyOf(numbers, 2 * count);
      }
      numbers[count++] = tried;
    }
    tried++;
  }

  /**
   * The history that carries a trial, of those that may be tried for it: if fewer are kept they are
   * used in turn. -1 if none is.
   */
  int carries(int trial, int limit) {
    int found = count;
    if (tried > limit) {
      // Another trial had a further limit.
      int at = Arrays.binarySearch(numbers, 0, count, limit);
      found = at < 0 ? -at - 1 : at;
    }
    return found == 0 ? -1 : numbers[trial < found ? trial : trial % found];
  }
}
