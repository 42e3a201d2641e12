package sunup.sheets;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sunup.board.Role;

/**
 * The minutes that a list implies. Usual minutes are medians, and medians of parts do not add up to
 * the median of the whole: the sums are what people say on paper, the means are what a long run of
 * mornings comes to. The forecast, not this, says when a room is ready.
 *
 * @param shares by who does it, in sheet order
 * @param setUp the anaesthetist's own sections, machine to special
 * @param all every item
 * @param leastUsual minutes of the longest chain of items that wait for each other, hands-on and
 *     waiting, all at their usual: no number of people makes it shorter
 * @param chain keys of that chain
 */
public record SheetMinutes(
    List<Share> shares, Sum setUp, Sum all, double leastUsual, List<String> chain) {
  /** The normal distribution's 90 % point: what turns "one in ten" into a spread. */
  private static final double TENTH = 1.2816;

  /**
   * Minutes summed.
   *
   * @param items how many
   * @param handsUsual hands-on minutes for each person that an item takes, usual
   * @param handsMean the same in the mean, rare extras included
   * @param waitsUsual minutes that pass with nobody there, usual
   * @param waitsMean the same in the mean
   */
  public record Sum(
      int items, double handsUsual, double handsMean, double waitsUsual, double waitsMean) {
    static final Sum NONE = new Sum(0, 0, 0, 0, 0);

    Sum plus(SheetItem item, int people) {
      double extra = item.extra() == null ? 0 : item.extra().minutes() / item.extra().oneIn();
      return new Sum(
          items + 1,
          handsUsual + people * item.hands().usual(),
          handsMean + people * mean(item.hands()),
          waitsUsual + (item.waits() == null ? 0 : item.waits().usual()),
          waitsMean + (item.waits() == null ? 0 : mean(item.waits())) + extra);
    }
  }

  /**
   * Minutes of one person, or of one of several roles of whom one is enough.
   *
   * @param who the roles
   * @param sum of the items that take one of them
   */
  public record Share(List<Role> who, Sum sum) {
    /** For example "technician or anaesthetist". */
    public String words() {
      return who.stream().map(Role::word).collect(Collectors.joining(" or "));
    }
  }

  public SheetMinutes {
    shares = List.copyOf(shares);
    chain = List.copyOf(chain);
  }

  /** The minutes of a list; arrivals and milestones take nobody and count nothing. */
  public static SheetMinutes of(ComposedSheet list) {
    Map<List<Role>, Sum> shares = new LinkedHashMap<>();
    Sum setUp = Sum.NONE;
    Sum all = Sum.NONE;
    for (SheetItem item : list.items()) {
      if (item.who().isEmpty()) {
        continue;
      }
      for (List<Role> who : item.who()) {
        shares.merge(who, Sum.NONE.plus(item, 1), SheetMinutes::added);
      }
      all = all.plus(item, item.who().size());
      if (item.section().isSetUp()) {
        setUp = setUp.plus(item, item.who().size());
      }
    }
    List<String> chain = longest(list);
    Map<String, SheetItem> byKey = list.byKey();
    double least = chain.stream().mapToDouble(key -> usual(byKey.get(key))).sum();
    List<Share> whose =
        shares.entrySet().stream().map(e -> new Share(e.getKey(), e.getValue())).toList();
    return new SheetMinutes(whose, setUp, all, least, chain);
  }

  private static Sum added(Sum one, Sum other) {
    return new Sum(
        one.items + other.items,
        one.handsUsual + other.handsUsual,
        one.handsMean + other.handsMean,
        one.waitsUsual + other.waitsUsual,
        one.waitsMean + other.waitsMean);
  }

  /** Mean of a log-normal with this median and 90 % point. */
  private static double mean(Hands hands) {
    if (hands.usual() == 0) {
      return 0;
    }
    double sigma = Math.log(hands.oneInTen() / hands.usual()) / TENTH;
    return hands.usual() * Math.exp(sigma * sigma / 2);
  }

  private static double usual(SheetItem item) {
    if (item.isArrival()) {
      return 0;
    }
    return item.hands().usual() + (item.waits() == null ? 0 : item.waits().usual());
  }

  private static List<String> longest(ComposedSheet list) {
    Map<String, SheetItem> byKey = list.byKey();
    Map<String, Double> lengths = new HashMap<>();
    Map<String, String> from = new HashMap<>();
    String last = null;
    for (SheetItem item : list.items()) {
      double length = length(item, byKey, lengths, from);
      if (last == null || length > lengths.get(last)) {
        last = item.key();
      }
    }
    List<String> chain = new ArrayList<>();
    for (String key = last; key != null; key = from.get(key)) {
      chain.add(0, key);
    }
    return chain;
  }

  /** Lists have no circles: {@link SheetChecks} refuses them. */
  private static double length(
      SheetItem item,
      Map<String, SheetItem> byKey,
      Map<String, Double> lengths,
      Map<String, String> from) {
    Double known = lengths.get(item.key());
    if (known != null) {
      return known;
    }
    double before = 0;
    for (SheetItem other : byKey.values()) {
      boolean gates = item.marks() != null && other.gates() == item.marks();
      if (item.after().contains(other.key()) || (gates && !other.key().equals(item.key()))) {
        double length = length(other, byKey, lengths, from);
        if (length > before) {
          before = length;
          from.put(item.key(), other.key());
        }
      }
    }
    lengths.put(item.key(), before + usual(item));
    return before + usual(item);
  }
}
