package sunup.review.learn;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sunup.board.LearnedTimes;
import sunup.board.LearnedTimes.Reporting;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.Silence;
import sunup.review.learn.Learned.ItemLearned;
import sunup.sheets.Hands;

/**
 * What the next opening freezes of what was learned (rules 3 and 4), bounded twice: an item counts
 * once as many durations were measured as its sheet's word counts for (how people report once as
 * many rooms were seen as the first shares are worth), and from one morning to the next no number
 * goes further than a quarter. So a morning of wrong touches moves the next one by little, and
 * somebody can see it coming.
 */
public final class NextOpening {
  /** A number grows to so many times what the morning before went by at most, or shrinks to it. */
  public static final double STEP_MOST = 1.25;

  /** From words that come at once a delay's 90 % point goes no further in one morning. */
  static final long FIRST_DELAY_MS = 60_000;

  /** A delay that is shorter than from one forecast to the next is none. */
  static final long AT_ONCE_MS = 10_000;

  /**
   * No share of how people report goes below this: from nothing a quarter more is nothing, and one
   * room that reports otherwise stays possible however many did not.
   */
  static final double LEAST_SHARE = 0.001;

  /** Rule 3's first settings. */
  private static final Reporting FIRST = first();

  /** Two numbers that are nearer are the same, in minutes. */
  private static final double SAME = 0.01;

  private NextOpening() {}

  private static Reporting first() {
    Silence s = Silence.DEFAULT;
    double forgotten = ForecastInput.Settings.DEFAULT.forgottenTouch();
    return new Reporting(
        s.eachItem(), s.eachSection(), s.atEnd(), s.never(), forgotten, null, 0, 0, 0);
  }

  /**
   * The learned times of the opening after a closing.
   *
   * @param closed the last morning that taught
   * @param went what that morning went by, or null if by its sheets
   */
  public static LearnedTimes after(LocalDate closed, Learned learned, LearnedTimes went) {
    List<LearnedTimes.Time> items = new ArrayList<>();
    for (ItemLearned item : learned.items()) {
      if (item.n() < CutStudent.KAPPA) {
        continue;
      }
      LearnedTimes.Time was = went == null ? null : went.of(item.work());
      Hands next = within(was != null ? was.hands() : item.sheet(), item.hands());
      if (differs(next, item.sheet())) {
        items.add(new LearnedTimes.Time(item.work(), next, item.n()));
      }
    }
    Reporting before = went == null ? null : went.reporting();
    Reporting next = reporting(learned.reporting(), before == null ? FIRST : before);
    return new LearnedTimes(closed, learned.mornings(), items, isFirst(next) ? null : next);
  }

  /**
   * How people report: the shares count once as many rooms were seen as the first shares are worth,
   * forgotten touches likewise, a delay once there are enough words for a 90 % point.
   */
  private static Reporting reporting(Learned.Reporting is, Reporting was) {
    double[] shares = {was.eachItem(), was.eachSection(), was.atEnd(), was.never()};
    if (is.rooms() >= Learned.STYLES_WORTH) {
      double[] to = {is.eachItem(), is.eachSection(), is.atEnd(), is.never()};
      for (int i = 0; i < shares.length; i++) {
        shares[i] = bounded(Math.max(LEAST_SHARE, shares[i]), to[i]);
      }
    }
    toOne(shares);
    boolean touches = is.begun() >= Learned.FORGOTTEN_WORTH;
    return new Reporting(
        shares[0],
        shares[1],
        shares[2],
        shares[3],
        touches ? forgotten(was.forgotten(), is.forgotten()) : was.forgotten(),
        delay(is.delay(), was.delayOneInTenMs()),
        is.rooms(),
        is.begun(),
        is.delay().n());
  }

  private static double forgotten(double was, double is) {
    return Math.max(LEAST_SHARE, share(bounded(Math.max(LEAST_SHARE, was), is)));
  }

  /**
   * They add to one, to no more digits than can be read; the largest takes what rounding leaves.
   */
  private static void toOne(double[] shares) {
    double sum = Arrays.stream(shares).sum();
    int largest = 0;
    for (int i = 0; i < shares.length; i++) {
      shares[i] = Math.max(LEAST_SHARE, share(shares[i] / sum));
      largest = shares[i] > shares[largest] ? i : largest;
    }
    shares[largest] = share(shares[largest] + 1 - Arrays.stream(shares).sum());
  }

  private static Long delay(Learned.DelayLearned is, Long was) {
    if (is.oneInTenMs() == null) {
      return was;
    }
    double next =
        was == null ? Math.min(FIRST_DELAY_MS, is.oneInTenMs()) : bounded(was, is.oneInTenMs());
    return next < AT_ONCE_MS ? null : (Long) Math.round(next);
  }

  private static double share(double value) {
    return Math.round(value * 10_000) / 10_000.0;
  }

  private static boolean isFirst(Reporting r) {
    return r.eachItem() == FIRST.eachItem()
        && r.eachSection() == FIRST.eachSection()
        && r.atEnd() == FIRST.atEnd()
        && r.never() == FIRST.never()
        && r.forgotten() == FIRST.forgotten()
        && r.delayOneInTenMs() == null;
  }

  private static Hands within(Hands from, Hands to) {
    double usual = within(from.usual(), to.usual());
    // A duration that is learned is none that is fixed.
    return new Hands(usual, Math.max(usual + SAME, within(from.oneInTen(), to.oneInTen())));
  }

  private static double within(double from, double to) {
    return Math.round(bounded(from, to) * 100) / 100.0;
  }

  private static double bounded(double from, double to) {
    return Math.max(from / STEP_MOST, Math.min(from * STEP_MOST, to));
  }

  private static boolean differs(Hands one, Hands other) {
    return Math.abs(one.usual() - other.usual()) >= SAME
        || Math.abs(one.oneInTen() - other.oneInTen()) >= SAME;
  }
}
