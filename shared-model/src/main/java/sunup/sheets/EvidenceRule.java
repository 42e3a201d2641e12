package sunup.sheets;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import sunup.codec.Maybe;

/**
 * What makes an item good.
 *
 * @param kind the kind of evidence asked for
 * @param unit for a number, its unit as shown
 * @param least for a number, the least value that can be meant at all; below it the entry is
 *     refused
 * @param most for a number, the largest value that can be meant at all
 * @param low for a number, the low end of the good band, or null; outside the band is a fault
 * @param high for a number, the high end of the good band, or null
 * @param choices for a choice, the words to choose from; a word that begins with {@code !} is a
 *     fault
 * @param witness true if a second person must sign
 * @param undo what was opened or moved for the check and must be put back, to be confirmed with it,
 *     or null
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record EvidenceRule(
    Kind kind,
    @Maybe String unit,
    @Maybe Double least,
    @Maybe Double most,
    @Maybe Double low,
    @Maybe Double high,
    List<String> choices,
    boolean witness,
    @Maybe String undo) {
  /** The kinds of evidence. */
  public enum Kind {
    /** A touch, alone or in a section gone through. */
    @JsonProperty("touch")
    TOUCH,
    /** A number with a unit; a section can't be gone through without it. */
    @JsonProperty("number")
    NUMBER,
    /** One of a few words. */
    @JsonProperty("choice")
    CHOICE,
    /** The tag of a piece of equipment, now in the room. */
    @JsonProperty("scan")
    SCAN,
    /** The time at which it happened. */
    @JsonProperty("time")
    TIME
  }

  public static final EvidenceRule TOUCHED =
      new EvidenceRule(Kind.TOUCH, null, null, null, null, null, List.of(), false, null);

  public EvidenceRule {
    choices = choices == null ? List.of() : List.copyOf(choices);
  }
}
