package sunup.board;

import java.time.LocalDate;
import java.util.List;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;

/**
 * What a suite's own closed mornings taught of how long things take, frozen for one morning when it
 * was opened. The sheets stay what they are; this stands beside them, so that a replay needs
 * neither the archive nor the mornings that taught.
 *
 * @param upTo the last morning that taught
 * @param mornings how many taught
 * @param items what this morning goes by instead of its sheets, by key in order
 */
public record LearnedTimes(LocalDate upTo, int mornings, List<Time> items) {
  public LearnedTimes {
    items = List.copyOf(items);
  }

  /**
   * One item.
   *
   * @param sheet what its sheet said when it was learned; a sheet that says something else is a new
   *     decision, and goes first
   * @param hands what this morning goes by
   * @param measured on how many durations that rests
   */
  public record Time(String key, Hands sheet, Hands hands, int measured) {}

  /** An item as this morning goes by it. */
  public SheetItem applied(SheetItem item) {
    for (Time time : items) {
      if (time.key().equals(item.key()) && time.sheet().equals(item.hands())) {
        return item.withHands(time.hands());
      }
    }
    return item;
  }
}
