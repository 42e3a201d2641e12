package sunup.review.facts;

import java.util.Objects;
import sunup.codec.Maybe;

/**
 * What a start waited for, as the chain and the board name it.
 *
 * @param kind as in {@link AsRunFact.Piece}
 * @param item key of the item, or null
 * @param thing the role, place or kind of equipment, or null
 * @param where the room where that was meanwhile, or null
 */
public record Cause(String kind, @Maybe String item, @Maybe String thing, @Maybe String where) {
  /**
   * True if both point to the same work: the same item; or where one of them names none, the same
   * kind and thing. So the board that said "drugs, waits for the pharmacy" was right if the drugs'
   * own work came out as the longest.
   */
  public boolean pointsTo(Cause other) {
    return (item != null && other.item != null)
        ? item.equals(other.item)
        : kind.equals(other.kind) && Objects.equals(thing, other.thing);
  }

  /** The section of the item, the part before the point of its key; or the kind if it has none. */
  public String section() {
    int point = item == null ? -1 : item.indexOf('.');
    return point < 0 ? kind : item.substring(0, point);
  }
}
