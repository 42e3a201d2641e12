package sunup.review.learn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sunup.codec.Maybe;
import sunup.review.learn.Lessons.Style;
import sunup.review.learn.Lessons.Sum;
import sunup.review.learn.Lessons.Took;
import sunup.review.stats.NormalGamma;
import sunup.review.stats.Quantiles;
import sunup.sheets.ComposedSheet;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;

/**
 * What a site's closed mornings have taught; {@link NextOpening} says what of it is frozen.
 *
 * @param version of this record's form: 1
 * @param mornings how many taught
 * @param items durations, by key
 * @param sums of several items in one: shown, and put to no item
 * @param reporting how the board is told
 */
public record Learned(
    int version,
    int mornings,
    List<ItemLearned> items,
    List<SumLearned> sums,
    Reporting reporting) {
  /** Durations of over so many times what one in ten takes longer than are forgotten touches. */
  static final double TOO_LONG = 4;

  /** Durations of under so small a part of the usual are touches one after the other. */
  static final double TOO_SHORT = 0.05;

  /** What rule 3's first shares of styles are worth, in rooms of mornings. */
  static final double STYLES_WORTH = 20;

  /** What its first share of forgotten touches is worth, in items begun. */
  static final double FORGOTTEN_WORTH = 100;

  private static final double MINUTE = 60_000;

  public Learned {
    items = List.copyOf(items);
    sums = List.copyOf(sums);
  }

  /**
   * One item.
   *
   * @param key the item
   * @param sheet what the sheet says
   * @param n durations that taught
   * @param implied of these, with a beginning that nobody touched
   * @param unbelieved too long or too short to be believed: not learned from
   * @param known the posterior of its log milliseconds
   * @param hands median and 90 % point of the cut predictive distribution, as a sheet has them
   */
  public record ItemLearned(
      String key,
      Hands sheet,
      int n,
      int implied,
      int unbelieved,
      NormalGamma known,
      Hands hands) {}

  /**
   * Several items in one.
   *
   * @param usual median minutes, or null of fewer than ten
   * @param oneInTen 90 % point, or null
   */
  public record SumLearned(List<String> keys, int n, @Maybe Double usual, @Maybe Double oneInTen) {}

  /**
   * How the board is told.
   *
   * @param rooms rooms of mornings that taught
   * @param eachItem share of rooms that report each item as it is done; with the next three it adds
   *     to one, and they are the shares of rule 3
   * @param begun items whose beginning was touched
   * @param forgotten share of them whose end nobody touched, rule 3's p
   * @param delay from a touch to its record, of all items
   * @param delays the same of each item, by key
   */
  public record Reporting(
      int rooms,
      double eachItem,
      double eachSection,
      double atEnd,
      double never,
      int begun,
      double forgotten,
      DelayLearned delay,
      List<DelayLearned> delays) {
    public Reporting {
      delays = List.copyOf(delays);
    }
  }

  /**
   * How long the board waits for a word.
   *
   * @param key the item, or {@code all}
   * @param n touches
   * @param usualMs median milliseconds from the touch to its record, or null of fewer than ten
   * @param oneInTenMs 90 % point, or null
   */
  public record DelayLearned(String key, int n, @Maybe Double usualMs, @Maybe Double oneInTenMs) {}

  /**
   * Learns from closed mornings. Their order does not matter.
   *
   * @param sheets what the items are believed to take before anything is learned; of two with one
   *     key the first counts
   */
  public static Learned of(List<ComposedSheet> sheets, List<Lessons> mornings) {
    Map<String, SheetItem> byKey = new LinkedHashMap<>();
    sheets.forEach(sheet -> sheet.items().forEach(i -> byKey.putIfAbsent(i.key(), i)));
    Map<String, List<Took>> took = new TreeMap<>();
    Map<String, List<Sum>> sums = new TreeMap<>();
    for (Lessons lessons : mornings) {
      lessons.took().forEach(t -> add(took, t.key(), t));
      lessons.sums().forEach(s -> add(sums, String.join(" ", s.keys()), s));
    }
    List<ItemLearned> items = new ArrayList<>();
    byKey.forEach(
        (key, item) -> {
          if (isLearned(item)) {
            items.add(item(item, took.getOrDefault(key, List.of())));
          }
        });
    items.sort(Comparator.comparing(ItemLearned::key));
    return new Learned(
        1,
        mornings.size(),
        items,
        sums.values().stream().map(Learned::sum).toList(),
        reporting(mornings));
  }

  private static <T> void add(Map<String, List<T>> lists, String key, T one) {
    lists.computeIfAbsent(key, k -> new ArrayList<>()).add(one);
  }

  /** A fixed duration is the sheet's decision; waiting and extras are not told apart from hands. */
  static boolean isLearned(SheetItem item) {
    return !item.who().isEmpty()
        && !item.isArrival()
        && item.marks() == null
        && item.waits() == null
        && item.extra() == null
        && item.hands().usual() > 0
        && item.hands().oneInTen() > item.hands().usual();
  }

  private static ItemLearned item(SheetItem item, List<Took> took) {
    Hands sheet = item.hands();
    List<Took> believed =
        took.stream()
            .filter(t -> t.ms() <= TOO_LONG * sheet.oneInTen() * MINUTE)
            .filter(t -> t.ms() >= TOO_SHORT * sheet.usual() * MINUTE)
            .toList();
    // Sorted, so that the sums behind the figures do not depend on the order of mornings.
    NormalGamma known =
        CutStudent.prior(sheet)
            .learned(believed.stream().map(t -> StrictMath.log((double) t.ms())).sorted().toList());
    return new ItemLearned(
        item.key(),
        sheet,
        believed.size(),
        (int) believed.stream().filter(Took::implied).count(),
        took.size() - believed.size(),
        known,
        believed.isEmpty() ? sheet : CutStudent.hands(known));
  }

  private static SumLearned sum(List<Sum> all) {
    List<Double> minutes = all.stream().map(s -> s.ms() / MINUTE).toList();
    boolean few = all.size() < 10;
    return new SumLearned(
        all.get(0).keys(),
        all.size(),
        few ? null : Quantiles.of(minutes, 0.5),
        few ? null : Quantiles.of(minutes, 0.9));
  }

  private static Reporting reporting(List<Lessons> mornings) {
    List<Style> styles = mornings.stream().flatMap(m -> m.styles().stream()).toList();
    List<Long> all = new ArrayList<>();
    Map<String, List<Long>> byKey = new TreeMap<>();
    for (Lessons lessons : mornings) {
      for (Lessons.Delay delay : lessons.delays()) {
        all.add(delay.ms());
        add(byKey, delay.key(), delay.ms());
      }
    }
    List<DelayLearned> delays = new ArrayList<>();
    byKey.forEach((key, of) -> delays.add(delay(key, of)));
    int begun = mornings.stream().mapToInt(Lessons::begun).sum();
    int forgotten = mornings.stream().mapToInt(Lessons::forgotten).sum();
    return new Reporting(
        styles.size(),
        style(styles, Style.EACH_ITEM, 0.40),
        style(styles, Style.EACH_SECTION, 0.35),
        style(styles, Style.AT_END, 0.20),
        style(styles, Style.NEVER, 0.05),
        begun,
        (FORGOTTEN_WORTH * 0.03 + forgotten) / (FORGOTTEN_WORTH + begun),
        delay("all", all),
        delays);
  }

  private static DelayLearned delay(String key, List<Long> ms) {
    boolean few = ms.size() < 10;
    return new DelayLearned(
        key, ms.size(), few ? null : Quantiles.of(ms, 0.5), few ? null : Quantiles.of(ms, 0.9));
  }

  private static double style(List<Style> styles, Style style, double first) {
    double counted = styles.stream().filter(style::equals).count();
    return (STYLES_WORTH * first + counted) / (STYLES_WORTH + styles.size());
  }

  /** What was learned of an item. */
  public Optional<ItemLearned> item(String key) {
    return items.stream().filter(i -> i.key().equals(key)).findFirst();
  }
}
