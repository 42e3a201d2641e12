package sunup.bedside;

import com.fasterxml.jackson.annotation.JsonInclude;
import sunup.codec.Maybe;
import sunup.units.Unit;

/**
 * What a person entered, as typed.
 *
 * @param text the number or the chosen word
 * @param unit the unit's word, chosen by the person and never assumed; null for a choice
 * @param again the same number once more, typed anew because it was asked again, or null
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Entry(String text, @Maybe String unit, @Maybe String again) {
  public static Entry number(String text, Unit unit) {
    return new Entry(text, unit.word(), null);
  }

  public static Entry choice(String word) {
    return new Entry(word, null, null);
  }

  public Entry withAgain(String second) {
    return new Entry(text, unit, second);
  }
}
