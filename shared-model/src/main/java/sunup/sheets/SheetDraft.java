package sunup.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.IntFunction;
import sunup.codec.Maybe;
import sunup.codec.Problem;

/**
 * What a draft makes of an edition, before anybody publishes it.
 *
 * @param on the edition that it was begun on
 * @param files the texts that it makes
 * @param sheets null if they can't be used
 * @param changes what is other than in the edition
 * @param problems what must be mended before it can be published
 */
public record SheetDraft(
    Edition on,
    Map<String, String> files,
    @Maybe Sheets sheets,
    List<EditionChanges.Changed> changes,
    List<Problem> problems) {
  public SheetDraft {
    changes = List.copyOf(changes);
    problems = List.copyOf(problems);
  }

  /**
   * Tries a draft.
   *
   * @param editions the texts of an edition by number, null for one that there is not
   */
  public static SheetDraft of(
      Edition on, List<SheetEdit> edits, IntFunction<Map<String, String>> editions) {
    SheetEdits.Edited edited = SheetEdits.apply(on.files(), edits, editions);
    List<Problem> problems = new ArrayList<>(edited.problems());
    Sheets sheets = null;
    try {
      sheets = Sheets.of(on.number() + 1, edited.files());
    } catch (BadSheet e) {
      problems.addAll(e.problems());
    }
    return new SheetDraft(
        on,
        edited.files(),
        sheets,
        EditionChanges.between(on.files(), edited.files()),
        onceAPlace(problems));
  }

  /** Each composed list of a sheet meets its mistakes anew; one mend does for all. */
  private static List<Problem> onceAPlace(List<Problem> problems) {
    Map<String, Problem> first = new LinkedHashMap<>();
    for (Problem problem : problems) {
      // What is about a whole file has no place to tell it by.
      String place = problem.line() + "/" + problem.file() + "/" + problem.field();
      first.putIfAbsent(problem.line() > 0 ? place : problem.toString(), problem);
    }
    return List.copyOf(first.values());
  }

  /** Names of sheets that the edition has and the draft has not. */
  public List<String> gone() {
    return on.files().keySet().stream()
        .filter(file -> !files.containsKey(file))
        .map(SheetFiles::sheet)
        .toList();
  }

  /** True if it does something and nothing is wrong with it. */
  public boolean canBePublished() {
    return problems.isEmpty() && !changes.isEmpty();
  }

  /**
   * What others published since a draft was begun.
   *
   * @param changes what is other in the edition that stands now
   * @param both what they and the draft both touch: items as {@code sheet/key}, sheets by name
   */
  public record Since(List<EditionChanges.Changed> changes, List<String> both) {
    public Since {
      changes = List.copyOf(changes);
      both = List.copyOf(both);
    }

    /** Compares what stood when a draft was begun with what stands now. */
    public static Since of(Edition on, Edition now, List<SheetEdit> edits) {
      List<EditionChanges.Changed> changes = EditionChanges.between(on.files(), now.files());
      TreeSet<String> theirs = new TreeSet<>();
      changes.forEach(c -> theirs.add(place(c.sheet(), c.key())));
      TreeSet<String> both = new TreeSet<>();
      for (SheetEdit edit : edits) {
        if (edit.wholeSheet()) {
          theirs.stream()
              .filter(k -> edit.sheet() == null || (k + "/").startsWith(edit.sheet() + "/"))
              .forEach(both::add);
        } else if (theirs.contains(place(edit.sheet(), edit.key()))) {
          both.add(place(edit.sheet(), edit.key()));
        }
      }
      return new Since(changes, List.copyOf(both));
    }

    private static String place(String sheet, String key) {
      return key == null || key.isEmpty() ? sheet : sheet + "/" + key;
    }
  }
}
