package sunup.sheets;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.codec.Problem;

/** The sheets that a draft is at work on, and what of it could not be done. */
final class SheetTexts {
  /** Lists that a sheet may lack. */
  private static final List<String> LISTS =
      List.of("adds", "changes", "takes", "brings", "notWith", "order");

  private final Map<String, String> files;
  private final Map<String, ObjectNode> touched = new LinkedHashMap<>();
  private final List<Problem> problems = new ArrayList<>();

  SheetTexts(Map<String, String> files) {
    this.files = new LinkedHashMap<>(files);
  }

  List<String> names() {
    return files.keySet().stream().map(SheetFiles::sheet).toList();
  }

  /** The sheet's own object, read once; null if there is none. */
  ObjectNode sheet(String name) {
    String text = files.get(SheetFiles.file(name));
    return text == null
        ? null
        : touched.computeIfAbsent(SheetFiles.file(name), file -> SheetFiles.read(text));
  }

  /** All sheets as these texts have them. */
  void replaceAll(Map<String, String> texts) {
    files.clear();
    touched.clear();
    files.putAll(texts);
  }

  /** One sheet as this text has it; a new one comes last. */
  void replace(String name, String text) {
    touched.remove(SheetFiles.file(name));
    files.put(SheetFiles.file(name), text);
  }

  void remove(String name) {
    touched.remove(SheetFiles.file(name));
    files.remove(SheetFiles.file(name));
  }

  void problem(String sheet, String field, String message) {
    String file = sheet.isEmpty() ? "draft" : SheetFiles.file(sheet);
    problems.add(new Problem(file, 0, field, message));
  }

  List<Problem> problems() {
    return problems;
  }

  /** Sheets that came out otherwise, written anew with their version counted up. */
  Map<String, String> counted(Map<String, String> before) {
    Map<String, String> all = new LinkedHashMap<>();
    files.forEach((file, text) -> all.put(file, counted(file, text, before.get(file))));
    return all;
  }

  private String counted(String file, String text, String was) {
    if (!touched.containsKey(file) && text.equals(was)) {
      return was;
    }
    ObjectNode now = touched.containsKey(file) ? touched.get(file) : SheetFiles.read(text);
    now = withoutEmpty(now);
    ObjectNode old = was == null ? null : withoutEmpty(SheetFiles.read(was));
    if (old != null && same(old, now)) {
      return was;
    }
    if (old != null) {
      now.put("version", old.path("version").asInt() + 1);
    }
    return now.toPrettyString() + "\n";
  }

  /** Lists that nothing stands in are as good as none. */
  private static ObjectNode withoutEmpty(ObjectNode root) {
    for (String list : LISTS) {
      if (root.get(list) instanceof ArrayNode one && one.isEmpty()) {
        root.remove(list);
      }
    }
    return root;
  }

  private static boolean same(ObjectNode one, ObjectNode other) {
    ObjectNode counted = other.deepCopy();
    counted.set("version", one.get("version"));
    return one.equals(counted);
  }
}
