package sunup.sheets;

import java.util.List;
import sunup.codec.Lined;

/**
 * One sheet file as read: a base with its items, an addition to a base, or what one person adds for
 * himself or herself. Items stay as written until a case's list is composed of them, so that every
 * mistake has a line.
 *
 * @param at the file's own object, for messages about the whole sheet
 * @param name its word in a case list: technique or option
 * @param version counted up by whoever changes it
 * @param kind base, technique, option or personal
 * @param title what the desk calls it
 * @param on for a technique, the base that it changes
 * @param kinds for a base, every kind of shared equipment, in the order in which they are taken
 * @param brings options that come with it
 * @param notWith sheets that it does not go with
 * @param adds the items that it brings
 * @param changes what it changes on items that others bring
 * @param takes the items that it takes away
 * @param order of a personal sheet, keys in the order in which the person goes
 */
public record Sheet(
    Lined at,
    String name,
    int version,
    Kind kind,
    String title,
    String on,
    List<String> kinds,
    List<Lined> brings,
    List<Lined> notWith,
    List<Lined> adds,
    List<Lined> changes,
    List<Lined> takes,
    List<Lined> order) {
  /** What a sheet is. */
  public enum Kind {
    BASE,
    TECHNIQUE,
    OPTION,
    PERSONAL
  }

  public Sheet {
    kinds = List.copyOf(kinds);
    brings = List.copyOf(brings);
    notWith = List.copyOf(notWith);
    adds = List.copyOf(adds);
    changes = List.copyOf(changes);
    takes = List.copyOf(takes);
    order = List.copyOf(order);
  }

  /** True if a case list may name it as technique. */
  boolean isTechnique() {
    return kind == Kind.BASE || kind == Kind.TECHNIQUE;
  }
}
