package sunup.review.learn;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sunup.board.LearnedTimes;
import sunup.codec.Maybe;
import sunup.review.learn.Learned.DelayLearned;
import sunup.review.learn.Learned.ItemLearned;
import sunup.sheets.ComposedSheet;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;

/**
 * What the last closing taught: each item as it was learned before it and after it, with what it
 * rests on.
 *
 * @param closed the last closed morning, or null if there is none
 * @param mornings how many taught, it included
 * @param items what the last morning moved first, then by how much each differs from its sheet
 * @param changes of how the board is told, before this closing and after it
 * @param next what the next opening freezes of it, or null if nothing is closed
 * @param used whether the suite's openings do so: its site file says
 */
public record Closing(
    @Maybe LocalDate closed,
    int mornings,
    List<Row> items,
    List<Change> changes,
    @Maybe LearnedTimes next,
    boolean used) {
  public Closing {
    items = List.copyOf(items);
    changes = List.copyOf(changes);
  }

  /** How far what was measured of an item is to be believed. */
  public enum Weight {
    /** Nothing was measured: the sheet's word stands. */
    NOTHING,
    /** Fewer were measured than the sheet's word counts for: it still weighs more. */
    FEW,
    /** What was measured weighs as much as the sheet's word, or more. */
    ENOUGH
  }

  /**
   * One item.
   *
   * @param name as the desk has it
   * @param sheet what its sheet says, in minutes
   * @param before as it was learned before the last closing
   * @param now as it is learned with it
   * @param measured durations that count
   * @param taught of these, by the last morning
   * @param implied of these, with a beginning that nobody touched
   * @param unbelieved left out, too long or too short to be believed
   * @param mornings on how many it was measured
   * @param delay from a touch to its record; null of none
   */
  public record Row(
      String key,
      String name,
      Hands sheet,
      Hands before,
      Hands now,
      int measured,
      int taught,
      int implied,
      int unbelieved,
      int mornings,
      Weight weight,
      @Maybe DelayLearned delay) {
    double moved() {
      return Math.abs(now.usual() - before.usual()) + Math.abs(now.oneInTen() - before.oneInTen());
    }

    double off() {
      return Math.abs(StrictMath.log(now.usual() / sheet.usual()));
    }
  }

  /**
   * Compares what is known with and without the last of the mornings.
   *
   * @param closed date of the last one, null if there is none
   * @param sheets of the last morning
   * @param lessons of closed mornings, in order of their dates
   * @param went what the last morning went by, or null if by its sheets
   */
  public static Closing of(
      LocalDate closed, List<ComposedSheet> sheets, List<Lessons> lessons, LearnedTimes went) {
    if (lessons.isEmpty()) {
      return new Closing(null, 0, List.of(), List.of(), null, false);
    }
    Learned was = Learned.of(sheets, lessons.subList(0, lessons.size() - 1));
    Learned is = Learned.of(sheets, lessons);
    Map<String, String> names = new LinkedHashMap<>();
    for (ComposedSheet sheet : sheets) {
      for (SheetItem item : sheet.items()) {
        names.putIfAbsent(item.key(), item.desk());
      }
    }
    Map<String, Integer> days = new LinkedHashMap<>();
    for (Lessons morning : lessons) {
      morning.took().stream()
          .map(Lessons.Took::key)
          .distinct()
          .forEach(key -> days.merge(key, 1, Integer::sum));
    }
    Map<String, DelayLearned> delays =
        is.reporting().delays().stream().collect(Collectors.toMap(DelayLearned::key, d -> d));
    List<Row> rows = new ArrayList<>();
    for (ItemLearned item : is.items()) {
      ItemLearned before = was.item(item.key()).orElseThrow();
      rows.add(
          new Row(
              item.key(),
              names.get(item.key()),
              item.sheet(),
              before.hands(),
              item.hands(),
              item.n(),
              item.n() - before.n(),
              item.implied(),
              item.unbelieved(),
              days.getOrDefault(item.key(), 0),
              weight(item.n()),
              delays.get(item.key())));
    }
    rows.sort(
        Comparator.comparingDouble((Row r) -> -r.moved())
            .thenComparingDouble(r -> -r.off())
            .thenComparing(Row::key));
    List<Change> told =
        Change.between(was, is).stream().filter(c -> was.item(c.what()).isEmpty()).toList();
    LearnedTimes next = NextOpening.after(closed, is, went);
    return new Closing(closed, lessons.size(), rows, told, next, false);
  }

  /**
   * The same with what the site's file says.
   *
   * @param on true if its openings freeze what was learned
   */
  public Closing used(boolean on) {
    return new Closing(closed, mornings, items, changes, next, on);
  }

  /** Enough are as many as the sheet's word counts for. */
  private static Weight weight(int n) {
    return n == 0 ? Weight.NOTHING : n < CutStudent.KAPPA ? Weight.FEW : Weight.ENOUGH;
  }
}
