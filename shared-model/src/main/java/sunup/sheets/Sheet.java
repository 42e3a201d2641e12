package sunup.sheets;

import java.util.List;
import sunup.codec.Lined;

/**
 * One sheet file as read: a base with its items, or an addition to a base. Items stay as written
 * until a case's list is composed of them, so that every mistake has a line.
 *
 * @param name its word in a case list: technique or option
 * @param version counted up by whoever changes it
 * @param kind base, technique or option
 * @param title what the desk calls it
 * @param on for a technique, the base that it changes
 * @param kinds for a base, every kind of shared equipment, in the order in which they are taken
 * @param adds the items that it brings
 * @param changes what it changes on items that others bring
 * @param takes the items that it takes away
 */
public record Sheet(
    String name,
    int version,
    Kind kind,
    String title,
    String on,
    List<String> kinds,
    List<Lined> adds,
    List<Lined> changes,
    List<Lined> takes) {
  /** What a sheet is. */
  public enum Kind {
    BASE,
    TECHNIQUE,
    OPTION
  }

  public Sheet {
    kinds = List.copyOf(kinds);
    adds = List.copyOf(adds);
    changes = List.copyOf(changes);
    takes = List.copyOf(takes);
  }
}
