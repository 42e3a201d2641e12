package sunup.forecast;

/** What one person did by now in one history. */
final class History {
  int count;
  final int[] item;
  final long[] begin;
  final long[] handsEnd;
  final long[] good;
  final long[] extra;
  final boolean[] walked;
  long arrived;
  long worked;
  long calledAt;
  long calledFor;

  /** When the person is back; the last time that he or she came back. */
  long awayUntil;

  long backSince;

  History(int items) {
    item = new int[items];
    begin = new long[items];
    handsEnd = new long[items];
    good = new long[items];
    extra = new long[items];
    walked = new boolean[items];
  }
}
