package sunup.sheets;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import sunup.codec.Fields;
import sunup.codec.Json;

/** Changes of a draft that are about a sheet as a whole. */
final class WholeSheets {
  private static final String NOT_WITH = "notWith";

  /** What of a sheet's head a draft may set; its name, kind and version stay. */
  private static final List<String> HEAD =
      List.of("title", "note", "on", "brings", NOT_WITH, "kinds", "order");

  private static final List<Object> ADDED = List.of("technique", "option", "personal");
  private static final String BASE = "base";

  /** Of a base that is new: the base of which it is a copy. */
  private static final String LIKE = "like";

  private final SheetTexts texts;
  private final IntFunction<Map<String, String>> editions;

  WholeSheets(SheetTexts texts, IntFunction<Map<String, String>> editions) {
    this.texts = texts;
    this.editions = editions;
  }

  /**
   * A technique, an option or a person's own sheet that is new, with nothing in it but its head; or
   * a base, which begins as a copy of another one, as no list does without all steps and the core.
   */
  void add(String sheet, SheetEdit edit) {
    if (!SheetReader.NAME.matcher(sheet).matches()) {
      texts.problem(
          sheet,
          "sheet",
          "must be lower-case letters, digits and dashes, for example 'awake-scope'");
      return;
    }
    if (texts.names().contains(sheet)) {
      texts.problem(sheet, "sheet", "is the name of a sheet already; give the new one another");
      return;
    }
    Object kind = edit.fields().get("kind");
    Map<String, Object> head = new LinkedHashMap<>(edit.fields());
    head.remove("kind");
    ObjectNode root;
    if (BASE.equals(kind)) {
      root = copy(sheet, head.remove(LIKE));
    } else if (ADDED.contains(kind)) {
      root = Json.mapper().createObjectNode().put("sheet", sheet);
      root.put("version", 1).put("kind", (String) kind);
    } else {
      texts.problem(sheet, "kind", "must be base, technique, option or personal");
      return;
    }
    if (root != null) {
      texts.replace(sheet, root.toString());
      set(sheet, texts.sheet(sheet), head);
    }
  }

  /** A base with another name; null if there is none to be like. */
  private ObjectNode copy(String sheet, Object like) {
    List<String> bases =
        texts.names().stream().filter(n -> kind(texts.sheet(n)).equals(BASE)).toList();
    if (!bases.contains(like)) {
      texts.problem(
          sheet,
          LIKE,
          "names the base of which a new one is a copy: "
              + Fields.unknown(String.valueOf(like), bases));
      return null;
    }
    return texts.sheet((String) like).deepCopy().put("sheet", sheet).put("version", 1);
  }

  private static String kind(ObjectNode sheet) {
    return sheet.path("kind").asText();
  }

  /** Fields of a sheet's head. */
  void head(String sheet, ObjectNode root, SheetEdit edit) {
    set(sheet, root, edit.fields());
  }

  private void set(String sheet, ObjectNode root, Map<String, Object> fields) {
    for (Map.Entry<String, Object> field : fields.entrySet()) {
      String name = field.getKey();
      if (!HEAD.contains(name)) {
        texts.problem(sheet, name, "can't be set on a sheet: " + Fields.unknown(name, HEAD));
      } else if (field.getValue() == null) {
        root.remove(name);
      } else {
        root.set(name, Json.mapper().valueToTree(field.getValue()));
      }
    }
  }

  /**
   * A sheet goes, and from others that they don't go with it. Who brings it is told by the checks.
   */
  void remove(String sheet) {
    texts.remove(sheet);
    for (String other : texts.names()) {
      ObjectNode root = texts.sheet(other);
      if (root.get(NOT_WITH) instanceof ArrayNode names) {
        names.removeIf(name -> name.asText().strip().equals(sheet));
      }
    }
  }

  /** A sheet, or all of them, as in an edition. */
  void asIn(SheetEdit edit) {
    int number = edit.edition() == null ? -1 : edit.edition();
    Map<String, String> then = number < 0 ? null : editions.apply(number);
    String which = number == 0 ? "what comes with the program" : "edition " + number;
    if (then == null) {
      texts.problem(edit.sheet() == null ? "" : edit.sheet(), "edition", "there is no " + which);
      return;
    }
    if (edit.sheet() == null) {
      texts.replaceAll(then);
      return;
    }
    String text = then.get(SheetFiles.file(edit.sheet()));
    if (text == null) {
      texts.problem(edit.sheet(), "", "this sheet is not in " + which);
    } else {
      texts.replace(edit.sheet(), text);
    }
  }
}
