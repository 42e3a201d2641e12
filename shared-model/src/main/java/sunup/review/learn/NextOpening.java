package sunup.review.learn;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sunup.board.LearnedTimes;
import sunup.review.learn.Learned.ItemLearned;
import sunup.sheets.Hands;

/**
 * What the next opening freezes of what was learned (rule 4), bounded twice: an item counts once as
 * many durations were measured as its sheet's word counts for, and from one morning to the next no
 * number goes further than a quarter. So a morning of wrong touches moves the next one by little,
 * and somebody can see it coming.
 */
public final class NextOpening {
  /** A number grows to so many times what the morning before went by at most, or shrinks to it. */
  public static final double STEP_MOST = 1.25;

  /** Two numbers that are nearer are the same, in minutes. */
  private static final double SAME = 0.01;

  private NextOpening() {}

  /**
   * The learned times of the opening after a closing.
   *
   * @param closed the last morning that taught
   * @param went what that morning went by, or null if by its sheets
   */
  public static LearnedTimes after(LocalDate closed, Learned learned, LearnedTimes went) {
    Map<String, LearnedTimes.Time> before =
        went == null
            ? Map.of()
            : went.items().stream().collect(Collectors.toMap(LearnedTimes.Time::key, t -> t));
    List<LearnedTimes.Time> items = new ArrayList<>();
    for (ItemLearned item : learned.items()) {
      if (item.n() < CutStudent.KAPPA) {
        continue;
      }
      LearnedTimes.Time was = before.get(item.key());
      boolean same = was != null && was.sheet().equals(item.sheet());
      Hands next = within(same ? was.hands() : item.sheet(), item.hands());
      if (differs(next, item.sheet())) {
        items.add(new LearnedTimes.Time(item.key(), item.sheet(), next, item.n()));
      }
    }
    return new LearnedTimes(closed, learned.mornings(), items);
  }

  private static Hands within(Hands from, Hands to) {
    double usual = within(from.usual(), to.usual());
    // A duration that is learned is none that is fixed.
    return new Hands(usual, Math.max(usual + SAME, within(from.oneInTen(), to.oneInTen())));
  }

  private static double within(double from, double to) {
    double bounded = Math.max(from / STEP_MOST, Math.min(from * STEP_MOST, to));
    return Math.round(bounded * 100) / 100.0;
  }

  private static boolean differs(Hands one, Hands other) {
    return Math.abs(one.usual() - other.usual()) >= SAME
        || Math.abs(one.oneInTen() - other.oneInTen()) >= SAME;
  }
}
