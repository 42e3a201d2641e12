package sunup.review.learn;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import sunup.board.LearnedTimes;
import sunup.board.Role;
import sunup.codec.Maybe;
import sunup.review.learn.Learned.DelayLearned;
import sunup.review.learn.Learned.ItemLearned;
import sunup.sheets.ComposedSheet;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;
import sunup.sheets.Work;

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

  /** Lessons of so many of the newest mornings are learned from: about a year's. */
  public static final int LEARNED_FROM = 250;

  /** Work that no sheet of the last morning asks for is kept if one of so many measured it. */
  static final int REMEMBERED = 30;

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
   * @param next what the next opening freezes of it, or null if it goes by the sheet
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
      @Maybe Hands next,
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
    Set<Work> works = works(sheets, lessons);
    Learned was = Learned.ofWork(works, lessons.subList(0, lessons.size() - 1));
    Learned is = Learned.ofWork(works, lessons);
    LearnedTimes next = NextOpening.after(closed, is, went);
    Names names = new Names(sheets, works);
    Map<Work, Integer> days = new HashMap<>();
    for (Lessons morning : lessons) {
      morning.took().stream()
          .map(Lessons.Took::work)
          .distinct()
          .forEach(work -> days.merge(work, 1, Integer::sum));
    }
    Map<String, DelayLearned> delays =
        is.reporting().delays().stream().collect(Collectors.toMap(DelayLearned::key, d -> d));
    List<Row> rows = new ArrayList<>();
    for (ItemLearned item : is.items()) {
      Work work = item.work();
      ItemLearned before = was.item(work).orElseThrow();
      LearnedTimes.Time frozen = next.of(work);
      rows.add(
          new Row(
              work.key(),
              names.of(work),
              item.sheet(),
              before.hands(),
              item.hands(),
              frozen == null ? null : frozen.hands(),
              item.n(),
              item.n() - before.n(),
              item.implied(),
              item.unbelieved(),
              days.getOrDefault(work, 0),
              weight(item.n()),
              delays.get(work.key())));
    }
    rows.sort(
        Comparator.comparingDouble((Row r) -> -r.moved())
            .thenComparingDouble(r -> -r.off())
            .thenComparing(Row::key)
            .thenComparingDouble(r -> r.sheet().usual()));
    List<Change> told = Change.ofReporting(was.reporting(), is.reporting());
    return new Closing(closed, lessons.size(), rows, told, next, false);
  }

  /** What the last morning's sheets ask for, and other sheets' work that was measured lately. */
  private static Set<Work> works(List<ComposedSheet> sheets, List<Lessons> lessons) {
    Set<Work> works = new HashSet<>(Learned.workOf(sheets));
    int from = Math.max(0, lessons.size() - REMEMBERED);
    for (Lessons morning : lessons.subList(from, lessons.size())) {
      morning.took().stream()
          .map(Lessons.Took::work)
          .filter(work -> Learned.isLearned(work.hands()))
          .forEach(works::add);
    }
    return works;
  }

  /** What the desk calls an item; of sheets that differ in nothing but the people, with these. */
  private static final class Names {
    private final Map<Work, String> ofWork = new HashMap<>();
    private final Map<String, String> ofKey = new HashMap<>();
    private final Map<Work, Long> alike = new HashMap<>();

    Names(List<ComposedSheet> sheets, Set<Work> works) {
      for (ComposedSheet sheet : sheets) {
        for (SheetItem item : sheet.items()) {
          ofWork.putIfAbsent(item.work(), item.desk());
          ofKey.putIfAbsent(item.key(), item.desk());
        }
      }
      works.forEach(work -> alike.merge(ofAnybody(work), 1L, Long::sum));
    }

    private static Work ofAnybody(Work work) {
      return new Work(work.key(), List.of(), work.hands());
    }

    String of(Work work) {
      // No sheet of the last morning may have it: then it goes by another sheet's name, or its key.
      String name = ofWork.getOrDefault(work, ofKey.getOrDefault(work.key(), work.key()));
      return alike.get(ofAnybody(work)) == 1
          ? name
          : name
              + ", by "
              + work.who().stream()
                  .map(any -> any.stream().map(Role::word).collect(Collectors.joining(" or ")))
                  .collect(Collectors.joining(" and "));
    }
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
