package sunup.review.learn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import sunup.review.learn.Learned.DelayLearned;
import sunup.review.learn.Learned.ItemLearned;
import sunup.review.learn.Learned.Reporting;
import sunup.sheets.Hands;

/**
 * What changed from one opening's numbers to the next one's, and why.
 *
 * @param what an item's key, or {@code reporting}, {@code forgotten touches} or {@code delay of
 *     words}
 * @param before as it was
 * @param after as it is
 * @param why what it rests on
 * @param size by how much, for their order: the larger ratio of both numbers less one, or the
 *     difference of shares
 */
public record Change(String what, String before, String after, String why, double size) {
  private static final Comparator<Change> LARGEST_FIRST =
      Comparator.comparingDouble((Change c) -> -c.size()).thenComparing(Change::what);

  /** Durations that change by less are not told, in minutes. */
  static final double LEAST_MINUTES = 0.1;

  /** Delays that change by less are not told. */
  static final double LEAST_DELAY_MS = 1000;

  /** Shares that change by less are not told. */
  static final double LEAST_SHARE = 0.01;

  /**
   * The changes, largest first.
   *
   * @param before null if nothing was learned before: then against the sheet and first settings
   */
  public static List<Change> between(Learned before, Learned after) {
    List<Change> changes = new ArrayList<>();
    for (ItemLearned now : after.items()) {
      Hands was =
          before == null
              ? now.sheet()
              : before.item(now.work()).map(ItemLearned::hands).orElse(now.sheet());
      if (differs(was, now.hands())) {
        changes.add(item(was, now));
      }
    }
    Reporting first =
        before == null ? Learned.of(List.of(), List.of()).reporting() : before.reporting();
    changes.addAll(ofReporting(first, after.reporting()));
    changes.sort(LARGEST_FIRST);
    return changes;
  }

  /** The changes of how the board is told, largest first. */
  static List<Change> ofReporting(Reporting before, Reporting after) {
    List<Change> changes = new ArrayList<>();
    reporting(before, after, changes);
    changes.sort(LARGEST_FIRST);
    return changes;
  }

  private static boolean differs(Hands was, Hands is) {
    return Math.abs(was.usual() - is.usual()) >= LEAST_MINUTES
        || Math.abs(was.oneInTen() - is.oneInTen()) >= LEAST_MINUTES;
  }

  private static Change item(Hands was, ItemLearned now) {
    Hands is = now.hands();
    String why =
        now.n()
            + " measured ("
            + now.implied()
            + " with a beginning that nobody touched, "
            + now.unbelieved()
            + " too long or too short to be believed and left out); the sheet's word counts as 6";
    return new Change(
        now.work().key(),
        words(was),
        words(is),
        why,
        Math.max(ratio(was.usual(), is.usual()), ratio(was.oneInTen(), is.oneInTen())));
  }

  private static double ratio(double one, double other) {
    return Math.max(one / other, other / one) - 1;
  }

  private static String words(Hands hands) {
    return String.format(
        Locale.ROOT, "usually %.1f min, one in ten over %.1f", hands.usual(), hands.oneInTen());
  }

  private static void reporting(Reporting was, Reporting is, List<Change> changes) {
    double moved =
        Math.max(
            Math.max(
                Math.abs(was.eachItem() - is.eachItem()),
                Math.abs(was.eachSection() - is.eachSection())),
            Math.max(Math.abs(was.atEnd() - is.atEnd()), Math.abs(was.never() - is.never())));
    if (moved >= LEAST_SHARE) {
      changes.add(
          new Change(
              "reporting",
              words(was),
              words(is),
              is.rooms() + " rooms of mornings; the first shares count as 20",
              moved));
    }
    double p = Math.abs(was.forgotten() - is.forgotten());
    if (p >= LEAST_SHARE / 10) {
      changes.add(
          new Change(
              "forgotten touches",
              String.format(Locale.ROOT, "%.1f in 100", 100 * was.forgotten()),
              String.format(Locale.ROOT, "%.1f in 100", 100 * is.forgotten()),
              is.begun() + " items begun by touch; the first share counts as 100",
              p));
    }
    delay(was.delay(), is.delay(), changes);
  }

  private static void delay(DelayLearned was, DelayLearned is, List<Change> changes) {
    Double before = was.oneInTenMs();
    Double now = is.oneInTenMs();
    if (now != null && (before == null || Math.abs(now - before) >= LEAST_DELAY_MS)) {
      changes.add(
          new Change(
              "delay of words",
              before == null ? "too few to say" : words(before),
              words(now),
              is.n() + " words",
              before == null ? 0 : Math.abs(now - before) / Math.max(now, before)));
    }
  }

  private static String words(double oneInTenMs) {
    return String.format(Locale.ROOT, "one in ten over %.0f s", oneInTenMs / 1000);
  }

  private static String words(Reporting r) {
    return String.format(
        Locale.ROOT,
        "each item %.0f, each section %.0f, at the end %.0f, never %.0f in 100",
        100 * r.eachItem(),
        100 * r.eachSection(),
        100 * r.atEnd(),
        100 * r.never());
  }
}
