package sunup.sheets;

import com.fasterxml.jackson.annotation.JsonInclude;
import sunup.codec.Maybe;

/**
 * How long an item stays good.
 *
 * @param minutes after so many minutes it has lapsed, or null if time alone does not end it
 * @param ends in words, what else ends it ("any part changed"), or null
 * @param source where the limit comes from: a section of the check values, a site rule
 * @param nextCase true if what was good for one case is good for the room's next one too; null, as
 *     in sheets that were written before it could be said, is no
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Life(Integer minutes, String ends, String source, @Maybe Boolean nextCase) {
  private static final long MINUTE = 60_000L;

  /**
   * When it has lapsed; only where {@code minutes} says so.
   *
   * @param since when it became good; in milliseconds, as the answer
   */
  public long until(long since) {
    return since + minutes * MINUTE;
  }

  /** True if the next case in the room finds it good. */
  boolean outlastsTheCase() {
    return Boolean.TRUE.equals(nextCase);
  }
}
