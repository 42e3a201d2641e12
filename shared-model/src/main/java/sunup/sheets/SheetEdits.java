package sunup.sheets;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import sunup.board.Section;
import sunup.codec.Fields;
import sunup.codec.Json;
import sunup.codec.Problem;

/**
 * Makes a draft's changes on the texts of sheets. What can't be done is told and left aside, the
 * rest is done: whether what comes out can be used is for {@link Sheets} to say.
 */
public final class SheetEdits {
  /** Changes of one draft. */
  public static final int MAX_EDITS = 400;

  /** An item's lists on a sheet, by the sheet's kind. */
  private static final String CHANGES = "changes";

  private static final String TAKES = "takes";

  private static final List<String> SECTIONS =
      Arrays.stream(Section.values()).map(Section::word).toList();

  private final SheetTexts texts;
  private final WholeSheets whole;

  private SheetEdits(Map<String, String> files, IntFunction<Map<String, String>> editions) {
    texts = new SheetTexts(files);
    whole = new WholeSheets(texts, editions);
  }

  /**
   * What came out.
   *
   * @param files text by file name; those that nothing changed as they were, letter for letter, the
   *     others with their version counted up
   * @param problems what could not be done
   */
  public record Edited(Map<String, String> files, List<Problem> problems) {
    public Edited {
      files = Collections.unmodifiableMap(new LinkedHashMap<>(files));
      problems = List.copyOf(problems);
    }
  }

  /**
   * Makes the changes in their order.
   *
   * @param editions the texts of an edition, or null if there is none of this number
   */
  public static Edited apply(
      Map<String, String> files, List<SheetEdit> edits, IntFunction<Map<String, String>> editions) {
    SheetEdits all = new SheetEdits(files, editions);
    if (edits.size() > MAX_EDITS) {
      Problem many = new Problem("draft", 0, "", "has more than " + MAX_EDITS + " changes");
      return new Edited(files, List.of(many));
    }
    edits.forEach(all::make);
    return new Edited(all.texts.counted(files), all.texts.problems());
  }

  private void make(SheetEdit edit) {
    String sheet = edit.sheet() == null ? "" : edit.sheet();
    switch (edit.does()) {
      case AS_IN -> whole.asIn(edit);
      case ADD_SHEET -> whole.add(sheet, edit);
      default -> {
        ObjectNode root = texts.sheet(sheet);
        if (root == null) {
          problem(sheet, "", "sheet " + Fields.unknown(sheet, texts.names()));
        } else {
          make(sheet, root, edit);
        }
      }
    }
  }

  private void make(String sheet, ObjectNode root, SheetEdit edit) {
    switch (edit.does()) {
      case HEAD -> whole.head(sheet, root, edit);
      case REMOVE_SHEET -> whole.remove(sheet);
      default -> {
        if (edit.key() == null) {
          problem(sheet, "key", "is missing; name the item");
        } else {
          item(sheet, root, edit);
        }
      }
    }
  }

  private void item(String sheet, ObjectNode root, SheetEdit edit) {
    switch (edit.does()) {
      case CHANGE -> change(sheet, root, edit);
      case ADD -> add(sheet, root, edit);
      case LEAVE_OUT -> leaveOut(sheet, root, edit.key());
      case PUT_BACK -> putBack(sheet, root, edit.key());
      case MOVE -> move(sheet, root, edit);
      case AS_IN, ADD_SHEET, HEAD, REMOVE_SHEET -> throw new IllegalStateException();
    }
  }

  private static boolean isBase(ObjectNode root) {
    return root.path("kind").asText().equals("base");
  }

  /** The items that the sheet brings. */
  private static ArrayNode own(ObjectNode root) {
    return root.withArray(isBase(root) ? "items" : "adds");
  }

  private static int find(ArrayNode items, String key) {
    for (int i = 0; i < items.size(); i++) {
      JsonNode item = items.get(i);
      if ((item.isTextual() ? item : item.path("key")).asText().strip().equals(key)) {
        return i;
      }
    }
    return -1;
  }

  private static List<String> keys(ArrayNode items) {
    List<String> keys = new ArrayList<>();
    items.forEach(item -> keys.add(item.path("key").asText()));
    return keys;
  }

  private void change(String sheet, ObjectNode root, SheetEdit edit) {
    int at = find(own(root), edit.key());
    if (edit.fields().isEmpty() || edit.fields().containsKey("key")) {
      problem(sheet, edit.key(), "keeps its key; name other fields to change");
    } else if (at >= 0) {
      set((ObjectNode) own(root).get(at), edit.fields());
    } else if (isBase(root)) {
      problem(
          sheet, edit.key(), "can't be changed: " + Fields.unknown(edit.key(), keys(own(root))));
    } else if (find(root.withArray(TAKES), edit.key()) >= 0) {
      problem(sheet, edit.key(), "can't be changed: this sheet takes it away; put it back first");
    } else {
      ArrayNode changes = root.withArray(CHANGES);
      int there = find(changes, edit.key());
      ObjectNode change =
          there >= 0 ? (ObjectNode) changes.get(there) : changes.addObject().put("key", edit.key());
      set(change, edit.fields());
      if (change.size() == 1) {
        changes.remove(find(changes, edit.key()));
      }
    }
  }

  private static void set(ObjectNode item, Map<String, Object> fields) {
    fields.forEach(
        (name, value) -> {
          if (value == null) {
            item.remove(name);
          } else {
            item.set(name, Json.mapper().valueToTree(value));
          }
        });
  }

  private void add(String sheet, ObjectNode root, SheetEdit edit) {
    String key = edit.key();
    ArrayNode items = own(root);
    if (find(items, key) >= 0) {
      problem(sheet, key, "is there already; change it, or give the new item another key");
      return;
    }
    if (find(root.withArray(TAKES), key) >= 0) {
      problem(sheet, key, "is taken away by this sheet; put it back first");
      return;
    }
    ObjectNode item = Json.mapper().createObjectNode().put("key", key);
    set(item, edit.fields());
    item.put("key", key);
    stand(sheet, root, item, edit.behind(), endOfSection(items, key));
  }

  /** Where an added item stands that follows none. */
  private static int endOfSection(ArrayNode items, String key) {
    int section = section(key);
    int at = 0;
    for (int i = 0; i < items.size(); i++) {
      if (section(items.get(i).path("key").asText()) <= section) {
        at = i + 1;
      }
    }
    return at;
  }

  private static int startOfSection(ArrayNode items, String key) {
    int section = section(key);
    int at = 0;
    while (at < items.size() && section(items.get(at).path("key").asText()) < section) {
      at++;
    }
    return at;
  }

  /** The place of a key's section among all; one that is not known comes last. */
  private static int section(String key) {
    int at = SECTIONS.indexOf(key.substring(0, Math.max(0, key.indexOf('.'))));
    return at < 0 ? SECTIONS.size() : at;
  }

  private void stand(String sheet, ObjectNode root, ObjectNode item, String behind, int otherwise) {
    ArrayNode items = own(root);
    int at = behind == null ? -1 : find(items, behind);
    if (isBase(root) && behind != null && at < 0) {
      String key = item.path("key").asText();
      problem(sheet, key, "can't stand there: " + Fields.unknown(behind, keys(items)));
    }
    item.remove("follows");
    if (behind != null && !isBase(root)) {
      item.put("follows", behind);
    }
    items.insert(at >= 0 ? at + 1 : otherwise, item);
  }

  private void leaveOut(String sheet, ObjectNode root, String key) {
    ArrayNode items = own(root);
    int at = find(items, key);
    if (at >= 0) {
      JsonNode gone = items.remove(at);
      items.forEach(item -> waitInstead((ObjectNode) item, key, gone.path("after")));
    } else if (isBase(root)) {
      problem(sheet, key, "can't be left out: " + Fields.unknown(key, keys(items)));
    } else {
      putBack(root, key);
      root.withArray(TAKES).add(key);
    }
  }

  /** What waited for an item that is gone waits for what that item waited for. */
  private static void waitInstead(ObjectNode item, String key, JsonNode its) {
    ArrayNode after = item.path("after").isArray() ? (ArrayNode) item.get("after") : null;
    int at = after == null ? -1 : find(after, key);
    if (at < 0) {
      return;
    }
    after.remove(at);
    for (JsonNode one : its) {
      if (find(after, one.asText()) < 0) {
        after.insert(at++, one);
      }
    }
    if (after.isEmpty()) {
      item.remove("after");
    }
  }

  private void putBack(String sheet, ObjectNode root, String key) {
    if (!putBack(root, key)) {
      problem(sheet, key, "is neither changed nor taken away by this sheet");
    }
  }

  private static boolean putBack(ObjectNode root, String key) {
    boolean any = false;
    for (String list : List.of(CHANGES, TAKES)) {
      int at = root.path(list).isArray() ? find((ArrayNode) root.get(list), key) : -1;
      if (at >= 0) {
        ((ArrayNode) root.get(list)).remove(at);
        any = true;
      }
    }
    return any;
  }

  private void move(String sheet, ObjectNode root, SheetEdit edit) {
    ArrayNode items = own(root);
    int at = find(items, edit.key());
    if (at < 0) {
      problem(sheet, edit.key(), "can't be moved: it stands on another sheet; move it there");
    } else if (!edit.key().equals(edit.behind())) {
      ObjectNode item = (ObjectNode) items.remove(at);
      stand(sheet, root, item, edit.behind(), startOfSection(items, edit.key()));
    }
  }

  private void problem(String sheet, String field, String message) {
    texts.problem(sheet, field, message);
  }
}
