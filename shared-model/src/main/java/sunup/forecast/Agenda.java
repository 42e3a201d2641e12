package sunup.forecast;

import java.util.Arrays;

/**
 * What is still to happen in a trial, first things first. Most of it is that somebody finishes the
 * one thing in hand: one event a person, in the leaves of a tree whose nodes hold the least below
 * them, so that the next of the same person costs one way up and no search. All else is in a heap.
 */
final class Agenda {
  private final Heap rest = new Heap();
  private final long[] least;
  private final int leaves;

  Agenda(int people) {
    leaves = Math.max(2, Integer.highestOneBit(Math.max(1, people - 1)) << 1);
    least = new long[2 * leaves];
  }

  void clear() {
    rest.clear();
    Arrays.fill(least, Heap.NONE);
  }

  /** The next event, or {@link Heap#NONE}. */
  long next() {
    return Math.min(least[1], rest.next());
  }

  /** The next event but for the one of this person. */
  long nextBut(int p) {
    long first = rest.next();
    for (int n = leaves + p; n > 1; n >>= 1) {
      first = Math.min(first, least[n ^ 1]);
    }
    return first;
  }

  /** Whether this person's event is that one. */
  boolean has(int p, long event) {
    return least[leaves + p] == event;
  }

  /** The one event of this person, who has none; or none any more. */
  void set(int p, long event) {
    long first = event;
    int n = leaves + p;
    while (n > 1) {
      least[n] = first;
      first = Math.min(first, least[n ^ 1]);
      n >>= 1;
    }
    least[1] = first;
  }

  void push(long event) {
    rest.push(event);
  }

  /** Takes the next event of those that are nobody's one thing in hand. */
  long pop() {
    return rest.pop();
  }
}
