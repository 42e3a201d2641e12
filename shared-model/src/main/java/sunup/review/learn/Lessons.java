package sunup.review.learn;

import java.util.List;
import sunup.sheets.Work;

/**
 * What one closed morning teaches. Names nobody.
 *
 * @param took durations of single items
 * @param sums durations of several items in one, which teach nothing but their sum
 * @param styles how each started room's set-up was reported
 * @param delays how long the board waited for the word, per item
 * @param begun items whose beginning was touched in rooms that started
 * @param forgotten of these, never reported to their end
 * @param left what taught nothing, and why
 */
public record Lessons(
    List<Took> took,
    List<Sum> sums,
    List<Style> styles,
    List<Delay> delays,
    int begun,
    int forgotten,
    Left left) {
  public Lessons {
    took = List.copyOf(took);
    sums = List.copyOf(sums);
    styles = List.copyOf(styles);
    delays = List.copyOf(delays);
  }

  /**
   * One duration.
   *
   * @param work the item as its sheet asked for it
   * @param ms from its beginning to its being good
   * @param implied true if nobody touched its beginning (rule 3)
   */
  public record Took(Work work, long ms, boolean implied) {}

  /**
   * Several items in one: finishes of one person within 20 s, or an item whose hands and waiting
   * nobody told apart.
   *
   * @param keys in order of the sheet
   * @param ms in all
   */
  public record Sum(List<String> keys, long ms) {
    public Sum {
      keys = List.copyOf(keys);
    }
  }

  /** How a room's set-up was reported; rule 3's styles. */
  public enum Style {
    EACH_ITEM,
    EACH_SECTION,
    AT_END,
    NEVER
  }

  /** From a touch to its record: how long the board did not know. */
  public record Delay(String key, long ms) {}

  /**
   * What taught nothing.
   *
   * @param lateEntries entered over five minutes late: their times are not to be trusted
   * @param unsigned nobody signed them and nobody touched a beginning: whose finish came before is
   *     not known
   * @param noBeginning nothing tells when they began
   */
  public record Left(int lateEntries, int unsigned, int noBeginning) {}
}
