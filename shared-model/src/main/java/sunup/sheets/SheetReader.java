package sunup.sheets;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import sunup.codec.Fields;
import sunup.codec.Lined;
import sunup.codec.Problem;

/**
 * Reads a sheet file. All mistakes are found in one go, each with its line and how to mend it. What
 * depends on other sheets (an addition's {@code after}, gates, cycles) is checked when they are put
 * together, see {@link Sheets}.
 */
public final class SheetReader {
  /** Items that a sheet may bring. */
  public static final int MAX_ITEMS = 200;

  /** Kinds of shared equipment that a base may name. */
  public static final int MAX_KINDS = 40;

  static final Pattern NAME = Pattern.compile("[a-z][a-z0-9-]{0,29}");

  private static final Map<String, Sheet.Kind> KINDS =
      Map.of(
          "base",
          Sheet.Kind.BASE,
          "technique",
          Sheet.Kind.TECHNIQUE,
          "option",
          Sheet.Kind.OPTION,
          "personal",
          Sheet.Kind.PERSONAL);

  private SheetReader() {}

  /**
   * @param sheet null if there are problems
   */
  public record Result(Sheet sheet, List<Problem> problems) {
    public Result {
      problems = List.copyOf(problems);
    }
  }

  /** Reads the text of one file. */
  public static Result read(String file, String text) {
    List<Problem> problems = new ArrayList<>();
    Lined root = Lined.parse(file, text, problems);
    Sheet sheet = root == null ? null : sheet(root, problems);
    return new Result(problems.isEmpty() ? sheet : null, problems);
  }

  private static Sheet sheet(Lined root, List<Problem> problems) {
    Fields f = new Fields(root, "", problems);
    String name = f.text("sheet", 30);
    if (name != null && !NAME.matcher(name).matches()) {
      f.problem(
          "sheet", "must be lower-case letters, digits and dashes, for example 'awake-scope'");
    }
    Integer version = f.whole("version", 1, 1_000_000);
    if (version == null && f.get("version") == null) {
      f.problem("version", "is missing; write 1 and count up with every change");
    }
    Sheet.Kind kind = f.oneOf("kind", KINDS);
    if (kind == null && f.get("kind") == null) {
      f.problem("kind", "is missing; write base, technique, option or personal");
    }
    String title = f.text("title", 60);
    f.get("note");
    if (kind == null) {
      return null;
    }
    boolean base = kind == Sheet.Kind.BASE;
    String on = kind == Sheet.Kind.TECHNIQUE ? f.text("on", 30) : null;
    List<String> kinds = base ? f.texts("kinds", MAX_KINDS) : List.of();
    List<Lined> adds = f.list(base ? "items" : "adds", MAX_ITEMS);
    boolean personal = kind == Sheet.Kind.PERSONAL;
    boolean whole = base || personal;
    List<Lined> changes = whole ? List.of() : f.list("changes", MAX_ITEMS);
    List<Lined> takes = whole ? List.of() : f.list("takes", MAX_ITEMS);
    List<Lined> brings = whole ? List.of() : f.list("brings", MAX_ITEMS);
    List<Lined> notWith = whole ? List.of() : f.list("notWith", MAX_ITEMS);
    List<Lined> order = personal ? f.list("order", MAX_ITEMS) : List.of();
    f.done();
    checkTexts("brings", "sheet names", brings, problems);
    checkTexts("notWith", "sheet names", notWith, problems);
    checkTexts("takes", "item keys", takes, problems);
    checkTexts("order", "item keys", order, problems);
    Sheet sheet =
        new Sheet(
            root,
            name,
            version == null ? 0 : version,
            kind,
            title,
            on,
            kinds,
            brings,
            notWith,
            personal ? adds.stream().map(Personal::withWall).toList() : adds,
            changes,
            takes,
            order);
    checkParts(sheet, root, problems);
    return sheet;
  }

  private static void checkParts(Sheet sheet, Lined root, List<Problem> problems) {
    Map<String, Lined> seen = new HashMap<>();
    boolean nothing =
        sheet.adds().isEmpty()
            && sheet.changes().isEmpty()
            && sheet.takes().isEmpty()
            && sheet.brings().isEmpty()
            && sheet.order().isEmpty();
    if (nothing) {
      problems.add(new Problem(root.file(), root.line(), "", "does nothing: no items, no changes"));
    }
    for (Lined item : sheet.adds()) {
      ItemReader.read(item, problems);
      String key = ItemReader.keyOf(item);
      Lined first = key == null ? null : seen.putIfAbsent(key, item);
      if (first != null) {
        problems.add(
            new Problem(
                item.file(),
                item.line(),
                key + ": key",
                "is there already, in line " + first.line() + "; give one of them another key"));
      }
    }
    seen.clear();
    for (Lined change : sheet.changes()) {
      ItemReader.checkChange(change, problems);
      String key = ItemReader.keyOf(change);
      Lined first = key == null ? null : seen.putIfAbsent(key, change);
      if (first != null) {
        problems.add(
            new Problem(
                change.file(),
                change.line(),
                key,
                "is changed already in line " + first.line() + "; put both changes there"));
      }
    }
    if (sheet.kind() == Sheet.Kind.PERSONAL) {
      Personal.checkAdds(sheet, problems);
    }
  }

  private static void checkTexts(
      String field, String what, List<Lined> entries, List<Problem> problems) {
    for (Lined entry : entries) {
      if (entry.kind() != Lined.Kind.TEXT) {
        problems.add(
            new Problem(
                entry.file(), entry.line(), field, "must be a list of " + what + " in quotes"));
      }
    }
  }
}
