package sunup.board;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Morning.Entered;

/**
 * What was entered together. Eight or more touches on one room's items within 20 s are one entry:
 * neutral, and no lesson about durations. The site may find other numbers; these are first
 * settings.
 */
final class TogetherRule {
  static final int TOUCHES = 8;
  static final long WITHIN_MS = 20_000;
  static final String FLAG = "together";

  private TogetherRule() {}

  /** The touches of a room after one more. */
  static List<Entered> after(List<Entered> entered, Entered next) {
    List<Entered> list = new ArrayList<>();
    for (Entered one : entered) {
      if (Math.abs(one.at() - next.at()) <= WITHIN_MS && !one.item().equals(next.item())) {
        list.add(one);
      }
    }
    list.add(next);
    int from = Math.max(0, list.size() - TOUCHES);
    return List.copyOf(list.subList(from, list.size()));
  }

  static boolean isTogether(List<Entered> entered) {
    return entered.size() >= TOUCHES;
  }
}
