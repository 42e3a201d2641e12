package sunup.sheets;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import sunup.codec.Json;
import sunup.codec.Maybe;
import sunup.codec.Problem;

/**
 * What a new version of the sheets changes on a list, for whoever is about to publish it.
 *
 * @param added items that come
 * @param taken items that go
 * @param changed items of which a field changes
 * @param moved keys of items that stand elsewhere among those on both lists
 * @param setUpMinutes usual hands-on minutes of the set-up sections that come (or go, below 0)
 * @param allMinutes usual hands-on minutes of all that come (or go, below 0)
 */
public record SheetChanges(
    List<String> added,
    List<String> taken,
    List<Change> changed,
    List<String> moved,
    double setUpMinutes,
    double allMinutes) {
  /**
   * A field that changes.
   *
   * @param key the item's key
   * @param field as it is written in a sheet
   * @param before as it was, null if it was absent
   * @param after as it will be, null if it goes
   */
  public record Change(String key, String field, @Maybe String before, @Maybe String after) {}

  /**
   * A case that is coming.
   *
   * @param label what the editor calls it, without anything about the patient
   * @param technique its technique
   * @param options its options
   */
  public record Coming(String label, String technique, List<String> options) {
    public Coming {
      options = List.copyOf(options);
    }
  }

  /**
   * What changes for one case that is coming.
   *
   * @param changes null if its list could not be composed of the new sheets, or of the old ones
   * @param problems why its list could not be composed of the new sheets
   */
  public record ForCase(Coming coming, @Maybe SheetChanges changes, List<Problem> problems) {
    public ForCase {
      problems = List.copyOf(problems);
    }
  }

  public SheetChanges {
    added = List.copyOf(added);
    taken = List.copyOf(taken);
    changed = List.copyOf(changed);
    moved = List.copyOf(moved);
  }

  /** True if both lists are the same. */
  public boolean nothing() {
    return added.isEmpty() && taken.isEmpty() && changed.isEmpty() && moved.isEmpty();
  }

  /** From one list to another. */
  public static SheetChanges between(ComposedSheet before, ComposedSheet after) {
    Map<String, SheetItem> old = before.byKey();
    Map<String, SheetItem> next = after.byKey();
    List<Change> changed = new ArrayList<>();
    for (SheetItem item : next.values()) {
      SheetItem was = old.get(item.key());
      if (was != null && !was.equals(item)) {
        changed.addAll(fields(was, item));
      }
    }
    SheetMinutes minutesBefore = SheetMinutes.of(before);
    SheetMinutes minutesAfter = SheetMinutes.of(after);
    return new SheetChanges(
        without(next.keySet(), old.keySet()),
        without(old.keySet(), next.keySet()),
        changed,
        moved(old.keySet(), next.keySet()),
        minutesAfter.setUp().handsUsual() - minutesBefore.setUp().handsUsual(),
        minutesAfter.all().handsUsual() - minutesBefore.all().handsUsual());
  }

  /**
   * What publishing the next sheets would change for cases that are coming, for as many as are
   * given. A case that the old sheets could not compose is compared with nothing.
   */
  public static List<ForCase> forCases(Sheets old, Sheets next, Collection<Coming> coming) {
    List<ForCase> all = new ArrayList<>();
    for (Coming each : coming) {
      ComposedSheet after;
      try {
        after = next.compose(each.technique(), each.options());
      } catch (BadSheet e) {
        all.add(new ForCase(each, null, e.problems()));
        continue;
      }
      SheetChanges changes;
      try {
        changes = between(old.compose(each.technique(), each.options()), after);
      } catch (BadSheet e) {
        changes = null;
      }
      all.add(new ForCase(each, changes, List.of()));
    }
    return all;
  }

  private static List<String> without(Collection<String> keys, Collection<String> others) {
    Set<String> left = new LinkedHashSet<>(keys);
    left.removeAll(others);
    return List.copyOf(left);
  }

  private static List<Change> fields(SheetItem was, SheetItem item) {
    JsonNode before = Json.mapper().valueToTree(was);
    JsonNode after = Json.mapper().valueToTree(item);
    Set<String> names = new TreeSet<>();
    before.fieldNames().forEachRemaining(names::add);
    after.fieldNames().forEachRemaining(names::add);
    List<Change> changes = new ArrayList<>();
    for (String name : names) {
      JsonNode one = before.get(name);
      JsonNode other = after.get(name);
      if (one == null || !one.equals(other)) {
        changes.add(new Change(item.key(), name, text(one), text(other)));
      }
    }
    return changes;
  }

  /** As people read it; texts without quotation marks. */
  private static String text(JsonNode value) {
    return value != null && value.isTextual() ? value.textValue() : EditionChanges.words(value);
  }

  /** Keys of both lists whose neighbour before, among those of both, is another one. */
  static List<String> moved(Set<String> old, Set<String> next) {
    List<String> moved = new ArrayList<>();
    Map<String, String> was = neighbours(old, next);
    Map<String, String> becomes = neighbours(next, old);
    for (Map.Entry<String, String> each : becomes.entrySet()) {
      if (!each.getValue().equals(was.get(each.getKey()))) {
        moved.add(each.getKey());
      }
    }
    return moved;
  }

  private static Map<String, String> neighbours(Set<String> keys, Set<String> common) {
    Map<String, String> before = new LinkedHashMap<>();
    String last = "";
    for (String key : keys) {
      if (common.contains(key)) {
        before.put(key, last);
        last = key;
      }
    }
    return before;
  }
}
