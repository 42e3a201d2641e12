package sunup.http;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.codec.Json;
import sunup.codec.Maybe;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetDraft;
import sunup.sheets.SheetFiles;
import sunup.sheets.SheetMinutes;
import sunup.sheets.Sheets;
import sunup.sheets.UnwaivableCore;

/**
 * One sheet of a draft, for the editor.
 *
 * @param on for a technique, the base that it changes
 * @param brings options that come with it
 * @param notWith sheets that it does not go with
 * @param order of a person's own sheet: keys, those that go first in their section
 * @param note for whoever reads it
 * @param kinds of shared equipment that this base names, or else all that bases name: what an item
 *     can use
 * @param unwaivable keys of items that every list has as core, whoever wrote the sheets
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
    @Maybe String on,
    List<String> brings,
    List<String> notWith,
    List<String> order,
    @Maybe String note,
    List<String> kinds,
    List<String> unwaivable,
    List<Map<String, Object>> items,
    List<Map<String, Object>> changes,
    List<String> takes,
    String technique,
    List<Line> list,
    @Maybe SheetMinutes before,
    @Maybe SheetMinutes after,
    String text) {
  private static final List<String> ADDED_TO_A_LIST = List.of("option", "personal");

  /** A sheet's name, what the desk calls it, and its kind: base, technique, option, personal. */
  record Named(String name, String title, String kind) {}

  /**
   * An item of a whole list.
   *
   * @param core true if it may never be left out
   */
  record Line(String key, String desk, boolean core) {}

  /** Sheets as they are written, by file name, each read once. */
  record Written(Map<String, JsonNode> sheets) {
    static Written of(Map<String, String> files) {
      Map<String, JsonNode> sheets = new LinkedHashMap<>();
      files.forEach((file, text) -> sheets.put(file, SheetFiles.read(text)));
      return new Written(sheets);
    }

    List<Named> names() {
      return sheets.values().stream().map(SheetView::named).toList();
    }

    List<String> kinds() {
      return sheets.values().stream()
          .flatMap(sheet -> texts(sheet.path("kinds")).stream())
          .distinct()
          .toList();
    }
  }

  private static Named named(JsonNode sheet) {
    return new Named(
        sheet.path("sheet").asText(), sheet.path("title").asText(), sheet.path("kind").asText());
  }

  /**
   * A sheet of a draft.
   *
   * @param written the draft's sheets
   * @param asked its name; the first if it is null
   */
  static SheetView of(SheetDraft draft, Written written, String asked) throws Answers.Wrong {
    String file = asked == null ? draft.files().keySet().iterator().next() : SheetFiles.file(asked);
    JsonNode sheet = written.sheets().get(file);
    if (sheet == null) {
      throw new Answers.Wrong("No such sheet", 404, "There is no sheet of this name.");
    }
    Named named = named(sheet);
    boolean base = named.kind().equals("base");
    List<String> options =
        ADDED_TO_A_LIST.contains(named.kind()) ? List.of(named.name()) : List.of();
    Sheets old = draft.on().sheets();
    String technique =
        options.isEmpty()
            ? named.name()
            : techniqueWith(draft.sheets() == null ? old : draft.sheets(), options);
    ComposedSheet before = UsableSheets.list(old, technique, options);
    ComposedSheet after = UsableSheets.list(draft.sheets(), technique, options);
    ComposedSheet made = after == null ? before : after;
    ComposedSheet shown = made == null ? plain(old, text(sheet.path("on"))) : made;
    return new SheetView(
        named.name(),
        named.title(),
        named.kind(),
        text(sheet.path("on")),
        texts(sheet.path("brings")),
        texts(sheet.path("notWith")),
        texts(sheet.path("order")),
        text(sheet.path("note")),
        base ? texts(sheet.path("kinds")) : written.kinds(),
        UnwaivableCore.keys(),
        objects(sheet.path(base ? "items" : "adds")),
        objects(sheet.path("changes")),
        texts(sheet.path("takes")),
        technique,
        shown == null
            ? List.of()
            : shown.items().stream().map(i -> new Line(i.key(), i.desk(), i.core())).toList(),
        before == null ? null : SheetMinutes.of(before),
        after == null ? null : SheetMinutes.of(after),
        draft.files().get(file));
  }

  /** What a sheet that makes no list yet finds: the list of its base, or of the first one. */
  private static ComposedSheet plain(Sheets sheets, String on) {
    return sheets == null
        ? null
        : UsableSheets.list(sheets, on == null ? sheets.techniques().get(0).name() : on, List.of());
  }

  private static String text(JsonNode value) {
    return value.isTextual() ? value.asText() : null;
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
