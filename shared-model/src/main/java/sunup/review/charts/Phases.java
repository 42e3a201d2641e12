package sunup.review.charts;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Marked changes: from each on, centre and limits are computed anew. */
final class Phases {
  private Phases() {}

  /** A stretch of points, from inclusive, to exclusive. */
  record Stretch(int from, int to) {}

  /**
   * @param points how many
   * @param changes indices of the first points after a change
   */
  static List<Stretch> of(int points, List<Integer> changes) {
    TreeSet<Integer> starts = new TreeSet<>(changes);
    starts.add(0);
    List<Stretch> stretches = new ArrayList<>();
    for (int from : starts) {
      Integer next = starts.higher(from);
      int to = next == null ? points : Math.min(next, points);
      if (from >= 0 && from < to) {
        stretches.add(new Stretch(from, to));
      }
    }
    return stretches;
  }

  static List<RunRule.Signal> moved(List<RunRule.Signal> signals, int by) {
    return signals.stream()
        .map(s -> new RunRule.Signal(s.rule(), s.from() + by, s.to() + by))
        .toList();
  }
}
