package sunup.review.learn;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sunup.codec.Maybe;
import sunup.review.learn.Lessons.Style;
import sunup.review.learn.Lessons.Sum;
import sunup.review.learn.Lessons.Took;
import sunup.review.stats.NormalGamma;
import sunup.review.stats.Quantiles;
import sunup.sheets.ComposedSheet;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;
import sunup.sheets.Work;

/**
 * What a site's closed mornings have taught; {@link NextOpening} says what of it is frozen.
 *
 * @param version of this record's form: 1
 * @param mornings how many taught
 * @param items durations, by key and what sheets ask for under it
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
   * @param work the item as sheets ask for it
   * @param n durations that taught
   * @param implied of these, with a beginning that nobody touched
   * @param unbelieved too long or too short to be believed: not learned from
   * @param known the posterior of its log milliseconds
   * @param hands median and 90 % point of the cut predictive distribution, as a sheet has them
   */
  public record ItemLearned(
      Work work, int n, int implied, int unbelieved, NormalGamma known, Hands hands) {
    /** What the sheet says. */
    Hands sheet() {
      return work.hands();
    }
  }

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
   * @param sheets what the items are believed to take before anything is learned; what several of
   *     them ask for alike counts once
   */
  public static Learned of(List<ComposedSheet> sheets, List<Lessons> mornings) {
    return ofWork(workOf(sheets), mornings);
  }

  /** What sheets ask for that can be learned. */
  static Set<Work> workOf(List<ComposedSheet> sheets) {
    return sheets.stream()
        .flatMap(sheet -> sheet.items().stream())
        .filter(Learned::isLearned)
        .map(SheetItem::work)
        .collect(Collectors.toSet());
  }

  /**
   * The same of chosen work.
   *
   * @param works what to learn of, as sheets asked for it
   */
  static Learned ofWork(Set<Work> works, List<Lessons> mornings) {
    Map<Work, List<Took>> took = new HashMap<>();
    Map<String, List<Sum>> sums = new TreeMap<>();
    for (Lessons lessons : mornings) {
      lessons.took().forEach(t -> add(took, t.work(), t));
      lessons.sums().forEach(s -> add(sums, String.join(" ", s.keys()), s));
    }
    List<ItemLearned> items =
        works.stream()
            .sorted(Work.ORDER)
            .map(work -> item(work, took.getOrDefault(work, List.of())))
            .toList();
    return new Learned(
        1,
        mornings.size(),
        items,
        sums.values().stream().map(Learned::sum).toList(),
        reporting(mornings));
  }

  private static <K, T> void add(Map<K, List<T>> lists, K key, T one) {
    lists.computeIfAbsent(key, k -> new ArrayList<>()).add(one);
  }

  /** A fixed duration is the sheet's decision; waiting and extras are not told apart from hands. */
  static boolean isLearned(SheetItem item) {
    return !item.who().isEmpty()
        && !item.isArrival()
        && item.marks() == null
        && item.waits() == null
        && item.extra() == null
        && isLearned(item.hands());
  }

  static boolean isLearned(Hands hands) {
    return hands.usual() > 0 && hands.oneInTen() > hands.usual();
  }

  private static ItemLearned item(Work work, List<Took> took) {
    Hands sheet = work.hands();
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
        work,
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
  public Optional<ItemLearned> item(Work work) {
    return items.stream().filter(i -> i.work().equals(work)).findFirst();
  }
}
