package sunup.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sunup.codec.Json;
import sunup.codec.Maybe;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetDraft;
import sunup.sheets.SheetMinutes;
import sunup.sheets.Sheets;

/**
 * One sheet of a draft, for the editor.
 *
 * @param items that it brings, as they are written
 * @param changes that it makes on items that others bring, as they are written
 * @param takes keys of items that it takes away
 * @param technique with which its minutes are told
 * @param list the whole list that it makes with that technique
 * @param before minutes of that list in the edition; absent if it has none
 * @param after minutes of that list in the draft; absent while something is wrong
 * @param text the sheet's file, whose lines problems name
 */
record SheetView(
    String name,
    String title,
    String kind,
    List<Map<String, Object>> items,
    List<Map<String, Object>> changes,
    List<String> takes,
    String technique,
    List<Line> list,
    @Maybe SheetMinutes before,
    @Maybe SheetMinutes after,
    String text) {
  /** A sheet's name, what the desk calls it, and its kind: base, technique, option. */
  record Named(String name, String title, String kind) {}

  /** An item of a whole list. */
  record Line(String key, String desk) {}

  private static JsonNode read(String text) {
    try {
      return Json.mapper().readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  static List<Named> names(Map<String, String> files) {
    List<Named> names = new ArrayList<>();
    files.values().forEach(text -> names.add(named(read(text))));
    return names;
  }

  private static Named named(JsonNode sheet) {
    return new Named(
        sheet.path("sheet").asText(), sheet.path("title").asText(), sheet.path("kind").asText());
  }

  /**
   * A sheet of a draft.
   *
   * @param asked its name; the first if it is null
   */
  static SheetView of(SheetDraft draft, String asked) throws Answers.Wrong {
    String text =
        asked == null
            ? draft.files().values().iterator().next()
            : draft.files().get(asked + ".json");
    if (text == null) {
      throw new Answers.Wrong("No such sheet", 404, "There is no sheet of this name.");
    }
    JsonNode sheet = read(text);
    Named named = named(sheet);
    boolean base = named.kind().equals("base");
    List<String> options = named.kind().equals("option") ? List.of(named.name()) : List.of();
    Sheets old = draft.on().sheets();
    String technique =
        options.isEmpty()
            ? named.name()
            : techniqueWith(draft.sheets() == null ? old : draft.sheets(), options);
    ComposedSheet before = UsableSheets.list(old, technique, options);
    ComposedSheet after = UsableSheets.list(draft.sheets(), technique, options);
    ComposedSheet shown = after == null ? before : after;
    return new SheetView(
        named.name(),
        named.title(),
        named.kind(),
        objects(sheet.path(base ? "items" : "adds")),
        objects(sheet.path("changes")),
        texts(sheet.path("takes")),
        technique,
        shown == null
            ? List.of()
            : shown.items().stream().map(i -> new Line(i.key(), i.desk())).toList(),
        before == null ? null : SheetMinutes.of(before),
        after == null ? null : SheetMinutes.of(after),
        text);
  }

  /** The first technique that these options go with; empty if there is none. */
  private static String techniqueWith(Sheets sheets, List<String> options) {
    if (sheets != null) {
      for (Sheets.Choice technique : sheets.techniques()) {
        if (UsableSheets.list(sheets, technique.name(), options) != null) {
          return technique.name();
        }
      }
    }
    return "";
  }

  @SuppressWarnings("unchecked")
  private static List<Map<String, Object>> objects(JsonNode list) {
    List<Map<String, Object>> all = new ArrayList<>();
    list.forEach(one -> all.add(Json.mapper().convertValue(one, Map.class)));
    return all;
  }

  private static List<String> texts(JsonNode list) {
    List<String> all = new ArrayList<>();
    list.forEach(one -> all.add(one.asText()));
    return all;
  }
}
