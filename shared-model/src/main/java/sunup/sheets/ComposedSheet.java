package sunup.sheets;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The list of one case: a base sheet with the additions for its technique, patient and options, in
 * sheet order. A morning keeps the content itself, by hash, so that a later edition changes nothing
 * that already ran.
 *
 * @param hash SHA-256 of the content in lower-case hex
 * @param from names and versions of the sheets that it was composed of, in order; before them, if
 *     it is one that the suite published, {@code edition:} and its number
 * @param items in sheet order, keys unique
 */
public record ComposedSheet(String hash, List<String> from, List<SheetItem> items) {
  public ComposedSheet {
    from = List.copyOf(from);
    items = List.copyOf(items);
  }

  /** What {@code from} begins with if a suite's own edition was composed; no sheet is called so. */
  static final String EDITION = "edition:";

  /** The edition that it was composed of; 0 for the sheets that come with the program. */
  public int edition() {
    return from.isEmpty() || !from.get(0).startsWith(EDITION)
        ? 0
        : Integer.parseInt(from.get(0).substring(EDITION.length()));
  }

  /** The items by key, in sheet order. */
  public Map<String, SheetItem> byKey() {
    Map<String, SheetItem> map = new LinkedHashMap<>();
    for (SheetItem item : items) {
      map.put(item.key(), item);
    }
    return map;
  }
}
