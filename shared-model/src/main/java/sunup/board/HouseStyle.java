package sunup.board;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import sunup.codec.Maybe;
import sunup.units.Quantity;
import sunup.units.Unit;

/**
 * How a site writes: pages follow it. What goes over the wire and into the journal does not: there
 * it is British words, times of 24 hours, and readings in the unit of their sheet.
 *
 * @param english whose words
 * @param pressure psi, bar or kPa: what its gauges read and its pages show; absent for the unit
 *     that each sheet gives
 * @param clock hours of its clock, 24 or 12
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record HouseStyle(English english, @Maybe String pressure, int clock) {
  /** Whose words. */
  public enum English {
    @JsonProperty("british")
    BRITISH,
    @JsonProperty("american")
    AMERICAN
  }

  // Before FIRST, which is checked by it.
  public static final List<Integer> CLOCKS = List.of(24, 12);

  /** The style of a site that says nothing of it. */
  public static final HouseStyle FIRST = new HouseStyle(English.BRITISH, null, 24);

  public HouseStyle {
    if (english == null) {
      throw new IllegalArgumentException("words must be british or american");
    }
    if (pressure != null
        && Unit.of(Quantity.PRESSURE).stream().noneMatch(u -> u.word().equals(pressure))) {
      throw new IllegalArgumentException("pressure must be psi, bar or kPa");
    }
    if (!CLOCKS.contains(clock)) {
      throw new IllegalArgumentException("a clock has 24 or 12 hours");
    }
  }
}
