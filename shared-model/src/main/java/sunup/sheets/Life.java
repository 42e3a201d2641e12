package sunup.sheets;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Locale;

/**
 * How long an item stays good.
 *
 * @param minutes after so many minutes it has lapsed, or null if time alone does not end it
 * @param ends in words, what else ends it ("any part changed"), or null
 * @param source where the limit comes from: a section of the check values, a site rule
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Life(Integer minutes, String ends, String source) {
  /**
   * True if what was good for one case is good for the next one too: time ends it, and the words do
   * not name the case.
   */
  public boolean outlastsTheCase() {
    return minutes != null && (ends == null || !ends.toLowerCase(Locale.ROOT).contains("case"));
  }
}
