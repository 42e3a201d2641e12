package sunup.sheets;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.Section;
import sunup.codec.Lined;
import sunup.codec.Problem;

/**
 * Puts a base and its additions together. What an addition takes goes first, then comes what each
 * adds, then what each changes, so the order in which additions are named makes no difference; two
 * that want different things of the same item are refused with both places.
 */
final class Composer {
  /** What each addition did to an item, for messages about contradictions. */
  private record Done(Lined value, String by) {}

  /** Fields of a change that set nothing by themselves. */
  private static final Set<String> UNSET = Set.of("key", "ifThere", "note", "alsoAfter");

  private final List<Problem> problems;
  private final Map<String, Lined> items = new LinkedHashMap<>();
  private final Map<String, Done> taken = new LinkedHashMap<>();
  private final Map<String, Done> changed = new LinkedHashMap<>();

  Composer(Sheet base, List<Problem> problems) {
    this.problems = problems;
    for (Lined item : base.adds()) {
      items.put(ItemReader.keyOf(item), item);
    }
  }

  /** The items in sheet order, as written and merged. */
  List<Lined> compose(List<Sheet> additions) {
    for (Sheet addition : additions) {
      addition.takes().forEach(take -> take(addition, take));
    }
    for (Sheet addition : additions) {
      addition.adds().forEach(item -> add(addition, item));
    }
    for (Sheet addition : additions) {
      addition.changes().forEach(change -> change(addition, change));
    }
    // After all that is set anew, so that no addition's prerequisites are lost to another's name.
    for (Sheet addition : additions) {
      addition.changes().forEach(this::alsoAfter);
    }
    return new ArrayList<>(items.values());
  }

  private void take(Sheet addition, Lined take) {
    String key = take.text().strip();
    Lined there = items.get(key);
    if (there != null && UnwaivableCore.isCore(there)) {
      problems.add(UnwaivableCore.taken(key, addition.name(), take, there));
      return;
    }
    if (items.remove(key) == null && !taken.containsKey(key)) {
      problem(take, key, "can't be taken away: " + near(key));
    }
    taken.putIfAbsent(key, new Done(take, addition.name()));
  }

  private void add(Sheet addition, Lined item) {
    String key = ItemReader.keyOf(item);
    Lined there = items.get(key);
    if (there != null) {
      if (!there.same(item)) {
        problem(
            item,
            key,
            "is added by '"
                + addition.name()
                + "' but is there already, and different, in "
                + there.where()
                + "; use another key or change it instead");
      }
      return;
    }
    insert(key, item);
  }

  /** Behind the item that it follows, or else at the end of its section. */
  private void insert(String key, Lined item) {
    Lined follows = item.fields().get("follows");
    String behind = follows == null ? null : follows.text();
    if (follows != null && !items.containsKey(behind)) {
      problem(follows, key + ": follows", near(behind));
      behind = null;
    }
    if (behind == null) {
      behind = endOfSection(key);
    }
    Map<String, Lined> old = new LinkedHashMap<>(items);
    items.clear();
    if (behind == null) {
      items.put(key, item);
    }
    for (Map.Entry<String, Lined> each : old.entrySet()) {
      items.put(each.getKey(), each.getValue());
      if (each.getKey().equals(behind)) {
        items.put(key, item);
      }
    }
  }

  /** The last item of the key's section or of those before it, or null if it comes first. */
  private String endOfSection(String key) {
    Section section = ItemReader.sectionOf(key);
    String last = null;
    for (String k : items.keySet()) {
      if (ItemReader.sectionOf(k).compareTo(section) <= 0) {
        last = k;
      }
    }
    return last;
  }

  private void change(Sheet addition, Lined change) {
    String key = ItemReader.keyOf(change);
    Lined item = items.get(key);
    if (item == null) {
      Lined ifThere = change.fields().get("ifThere");
      if (ifThere != null && "true".equals(ifThere.text())) {
        return;
      }
      Done by = taken.get(key);
      problem(
          change,
          key,
          by == null
              ? "can't be changed: " + near(key)
              : "is changed by '"
                  + addition.name()
                  + "' but taken away by '"
                  + by.by()
                  + "' in "
                  + by.value().where()
                  + "; the two don't go together, or write \"ifThere\": true");
      return;
    }
    Map<String, Lined> fields = new LinkedHashMap<>(item.fields());
    for (Map.Entry<String, Lined> field : change.fields().entrySet()) {
      String name = field.getKey();
      if (!UNSET.contains(name)) {
        Done before =
            changed.putIfAbsent(key + ": " + name, new Done(field.getValue(), addition.name()));
        if (before != null && !before.value().same(field.getValue())) {
          problem(
              field.getValue(),
              key + ": " + name,
              "is changed by '"
                  + addition.name()
                  + "' and otherwise by '"
                  + before.by()
                  + "' in "
                  + before.value().where()
                  + "; the two don't go together");
        }
        if (UnwaivableCore.isCore(item) && UnwaivableCore.weakens(name, field.getValue(), item)) {
          problem(
              field.getValue(),
              key + ": " + name,
              "makes less of what may never be left out, see " + item.where());
        }
        fields.put(name, field.getValue());
      }
    }
    put(key, item, fields);
  }

  private void alsoAfter(Lined change) {
    String key = ItemReader.keyOf(change);
    Lined more = change.fields().get("alsoAfter");
    Lined item = items.get(key);
    if (more != null && item != null) {
      Map<String, Lined> fields = new LinkedHashMap<>(item.fields());
      fields.put("after", union(fields.get("after"), more));
      put(key, item, fields);
    }
  }

  private void put(String key, Lined item, Map<String, Lined> fields) {
    items.put(
        key, new Lined(item.file(), item.line(), item.kind(), item.text(), fields, item.items()));
  }

  private static Lined union(Lined one, Lined other) {
    if (one == null || one.kind() == Lined.Kind.NULL) {
      return other;
    }
    List<Lined> all = new ArrayList<>(one.items());
    Set<String> there = new HashSet<>();
    one.items().forEach(i -> there.add(i.text()));
    other.items().stream().filter(i -> there.add(i.text())).forEach(all::add);
    return new Lined(one.file(), one.line(), one.kind(), one.text(), one.fields(), all);
  }

  private String near(String key) {
    return sunup.codec.Fields.unknown(key, items.keySet());
  }

  private void problem(Lined at, String field, String message) {
    problems.add(new Problem(at.file(), at.line(), field, message));
  }
}
