package sunup.sheets;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import sunup.codec.Maybe;

/** What is other in the texts of one edition than in those of another, item by item. */
public final class EditionChanges {
  private static final List<String> LISTS = List.of("items", "adds", "changes");

  private EditionChanges() {}

  /**
   * Something that is other.
   *
   * @param sheet the sheet's name
   * @param key the item's key, or empty if it is about the sheet
   * @param field as it is written in a sheet; empty if the whole item comes or goes
   * @param before as it was, for people; null if it was not there
   * @param after as it is now; null if it is gone
   */
  public record Changed(
      String sheet, String key, String field, @Maybe String before, @Maybe String after) {
    /** For example "general, machine.bag: hands 0.6 (1.2), now 1 (2)". */
    public String words() {
      String where = sheet + (key.isEmpty() ? "" : ", " + key) + ": ";
      if (before == null) {
        return where + (field.isEmpty() ? "added" : field + " " + after);
      }
      if (after == null) {
        return where + (field.isEmpty() ? "gone" : "no " + field + ", was " + before);
      }
      return where + field + " " + before + ", now " + after;
    }
  }

  /** All that is other, sheet by sheet. */
  public static List<Changed> between(Map<String, String> before, Map<String, String> after) {
    List<Changed> all = new ArrayList<>();
    Set<String> files = new LinkedHashSet<>(before.keySet());
    files.addAll(after.keySet());
    for (String file : files) {
      if (Objects.equals(before.get(file), after.get(file))) {
        continue;
      }
      String sheet = SheetFiles.sheet(file);
      if (before.get(file) == null || after.get(file) == null) {
        boolean came = before.get(file) == null;
        all.add(new Changed(sheet, "", "", came ? null : "there", came ? "there" : null));
        continue;
      }
      JsonNode old = SheetFiles.read(before.get(file));
      JsonNode next = SheetFiles.read(after.get(file));
      sheets(sheet, old, next, all);
    }
    return all;
  }

  private static void sheets(String sheet, JsonNode old, JsonNode next, List<Changed> all) {
    for (String field : names(old, next)) {
      if (!LISTS.contains(field) && !field.equals("version")) {
        fields(sheet, "", field, old.get(field), next.get(field), all);
      }
    }
    for (String list : LISTS) {
      Map<String, JsonNode> was = byKey(old.path(list));
      Map<String, JsonNode> is = byKey(next.path(list));
      for (Map.Entry<String, JsonNode> each : was.entrySet()) {
        JsonNode now = is.get(each.getKey());
        if (now == null) {
          all.add(new Changed(sheet, each.getKey(), "", "there", null));
          continue;
        }
        for (String field : names(each.getValue(), now)) {
          fields(sheet, each.getKey(), field, each.getValue().get(field), now.get(field), all);
        }
      }
      is.keySet().stream()
          .filter(key -> !was.containsKey(key))
          .forEach(key -> all.add(new Changed(sheet, key, "", null, "there")));
      order(sheet, list, was, is, all);
    }
  }

  private static void order(
      String sheet,
      String list,
      Map<String, JsonNode> was,
      Map<String, JsonNode> is,
      List<Changed> all) {
    List<String> before = new ArrayList<>(was.keySet());
    before.retainAll(is.keySet());
    List<String> after = new ArrayList<>(is.keySet());
    after.retainAll(was.keySet());
    if (list.equals("changes") || before.equals(after)) {
      return;
    }
    for (String key : SheetChanges.moved(new LinkedHashSet<>(before), new LinkedHashSet<>(after))) {
      int at = after.indexOf(key);
      String behind = at == 0 ? "first" : "behind " + after.get(at - 1);
      int from = before.indexOf(key);
      String stood = from == 0 ? "first" : "behind " + before.get(from - 1);
      all.add(new Changed(sheet, key, "order", stood, behind));
    }
  }

  private static void fields(
      String sheet, String key, String field, JsonNode old, JsonNode next, List<Changed> all) {
    if (!Objects.equals(old, next)) {
      all.add(new Changed(sheet, key, field, words(old), words(next)));
    }
  }

  private static Set<String> names(JsonNode one, JsonNode other) {
    Set<String> names = new TreeSet<>();
    one.fieldNames().forEachRemaining(names::add);
    other.fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static Map<String, JsonNode> byKey(JsonNode items) {
    Map<String, JsonNode> all = new LinkedHashMap<>();
    items.forEach(item -> all.put(item.path("key").asText(), item));
    return all;
  }

  /**
   * A value as people read it: minutes as "1 (2)", a list with commas, anything else as its fields
   * one after the other.
   */
  static String words(JsonNode value) {
    if (value == null) {
      return null;
    }
    if (value.isTextual()) {
      return "“" + value.asText() + "”";
    }
    return value.isContainerNode() ? listed(value) : value.asText();
  }

  private static String listed(JsonNode value) {
    if (value.has("usual") && value.has("oneInTen")) {
      return number(value.get("usual")) + " (" + number(value.get("oneInTen")) + ")";
    }
    List<String> parts = new ArrayList<>();
    if (value.isObject()) {
      value.properties().forEach(field -> name(field.getKey(), field.getValue(), parts));
    } else {
      value.forEach(part -> parts.add(inner(part)));
    }
    return parts.isEmpty() ? "none" : String.join(", ", parts);
  }

  private static void name(String field, JsonNode value, List<String> parts) {
    boolean no =
        value.isContainerNode() ? value.isEmpty() : value.isBoolean() && !value.asBoolean();
    if (!no) {
      parts.add(value.isBoolean() ? field : field + " " + inner(value));
    }
  }

  private static String inner(JsonNode value) {
    if (value.isContainerNode()) {
      return "(" + listed(value) + ")";
    }
    return value.isNumber() ? number(value) : value.asText();
  }

  private static String number(JsonNode value) {
    double n = value.asDouble();
    return n == Math.rint(n) ? Long.toString((long) n) : Double.toString(n);
  }
}
