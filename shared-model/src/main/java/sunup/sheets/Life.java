package sunup.sheets;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.regex.Pattern;

/**
 * How long an item stays good.
 *
 * @param minutes after so many minutes it has lapsed, or null if time alone does not end it
 * @param ends in words, what else ends it ("any part changed"), or null
 * @param source where the limit comes from: a section of the check values, a site rule
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Life(Integer minutes, String ends, String source) {
  private static final Pattern EACH_TIME =
      Pattern.compile(
          "\\b(cases?|patients?|uses?|used|operations?|procedures?)\\b", Pattern.CASE_INSENSITIVE);

  /**
   * True if what was good for one case is good for the next one too: time ends it, and the words
   * name neither a case nor a patient nor a use.
   */
  public boolean outlastsTheCase() {
    return minutes != null && (ends == null || !EACH_TIME.matcher(ends).find());
  }
}
