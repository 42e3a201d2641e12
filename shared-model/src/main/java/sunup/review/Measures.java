package sunup.review;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToIntFunction;
import sunup.codec.Maybe;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.Cause;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Beside;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.Withheld;
import sunup.review.stats.Quantiles;

/**
 * The measures of a set of first cases. A start counts if the case was not cancelled and somebody
 * told of its start event, or of a step after it: by that it had started at the latest. A share or
 * a mean of fewer than {@link Withheld#LEAST_STARTS} of them is withheld, however many there are.
 *
 * @param cases all first cases
 * @param cancelled of these
 * @param untold not cancelled, and neither the start nor a step after it told
 * @param starts the others: what all figures but the balancing ones are of
 * @param inferred of these, those whose start nobody told: they had started by the earliest step
 *     told after it, so that their minutes late are the most that they can be
 * @param mornings on which there was one
 * @param figures null if there are fewer than {@link Withheld#LEAST_STARTS} starts: withheld
 */
public record Measures(
    int cases,
    int cancelled,
    int untold,
    int starts,
    int inferred,
    int mornings,
    @Maybe Figures figures) {

  /** The graces that stand side by side, in minutes. */
  public static final List<Integer> GRACES = List.of(0, 5, 10, 15);

  /** So many minutes before its target a cause must have been shown to count as shown ahead. */
  public static final int AHEAD_MINUTES = 20;

  /**
   * @param onTime under each morning's own grace; null if it is known of too few
   * @param graces the same under 0, 5, 10 and 15 minutes
   * @param minutes late
   * @param beside balancing measures
   * @param ahead causes that the board had shown; null if it is known of too few
   * @param unjudged starts that the share on time leaves out: nobody told them, the step after them
   *     was too late, and no step before them was
   */
  public record Figures(
      @Maybe Share onTime,
      List<Grace> graces,
      Minutes minutes,
      Balancing beside,
      @Maybe Ahead ahead,
      int unjudged) {}

  /**
   * On time under one grace.
   *
   * @param minutes of grace
   * @param onTime starts that, cut to whole minutes, were not after target + grace; null if it is
   *     known of too few
   * @param meanOverLate mean minutes late (from the target, not from the end of the grace) of those
   *     known to be late; null if there are too few
   * @param unjudged starts that the share leaves out, as nobody knows whether they were on time
   */
  public record Grace(int minutes, @Maybe Share onTime, @Maybe Double meanOverLate, int unjudged) {}

  /**
   * Minutes late: max(0, start - target), seconds included; early starts count 0 and never offset
   * late ones.
   *
   * @param total over all starts
   * @param meanOverAll per start: tardiness per room and day, as a room has one first case a day
   * @param perMorning total / mornings: tardiness of the suite per day
   * @param late starts that are known not to have been on time under their morning's own grace;
   *     null if it is known of too few whether they were
   * @param meanOverLate mean of these; null if there are too few
   * @param median over all starts; Hyndman and Fan's definition 7, as all quantiles
   * @param ninth nine in ten starts are not later: the 90 % point over all starts
   * @param medianOverLate the same
   * @param inferred starts whose minutes are the most that they can be, as nobody told them: those
   *     over all starts go by them
   * @param lateInferred of the late ones; null as they are
   * @param intervals of these, by mornings; null until they are known
   */
  public record Minutes(
      double total,
      double meanOverAll,
      double perMorning,
      @Maybe Integer late,
      @Maybe Double meanOverLate,
      double median,
      double ninth,
      @Maybe Double medianOverLate,
      int inferred,
      @Maybe Integer lateInferred,
      @Maybe LateIntervals intervals) {
    Minutes with(LateIntervals known) {
      return new Minutes(
          total,
          meanOverAll,
          perMorning,
          late,
          meanOverLate,
          median,
          ninth,
          medianOverLate,
          inferred,
          lateInferred,
          known);
    }
  }

  /**
   * What must not suffer while starts get earlier.
   *
   * @param wheelsInToInduction mean minutes; null if too few have both times
   * @param wheelsInToInductionMedian the same
   * @param wheelsInToInductionOf starts that have both times
   * @param cancelled share of all cases
   * @param leftOut items left out, per 100 asked for
   * @param openAtStep items that were open when a step happened all the same, per 100 asked for
   * @param together items entered together, per 100 asked for
   * @param lateEntries items entered over five minutes late, per 100 asked for
   * @param faults found, per 100 asked for
   */
  public record Balancing(
      @Maybe Double wheelsInToInduction,
      @Maybe Double wheelsInToInductionMedian,
      int wheelsInToInductionOf,
      Share cancelled,
      double leftOut,
      double openAtStep,
      double together,
      double lateEntries,
      double faults) {}

  /**
   * Late starts of which the board had named the largest as-run cause at least {@link
   * #AHEAD_MINUTES} minutes before the target, among the holdups that it showed.
   *
   * @param shown of the late starts that have a cause and a word of the board of that time
   * @param unknown late starts without one of them: not counted
   */
  public record Ahead(Share shown, int unknown) {}

  /** The same with the intervals of the minutes late; none where the figures are withheld. */
  public Measures with(LateIntervals known) {
    if (figures == null) {
      return this;
    }
    Figures f = figures;
    return new Measures(
        cases,
        cancelled,
        untold,
        starts,
        inferred,
        mornings,
        new Figures(
            f.onTime(), f.graces(), f.minutes().with(known), f.beside(), f.ahead(), f.unjudged()));
  }

  /** The measures of these first cases. */
  public static Measures of(List<FirstCaseFact> facts) {
    List<FirstCaseFact> starts = facts.stream().filter(FirstCaseFact::hasStarted).toList();
    int cancelled = (int) facts.stream().filter(FirstCaseFact::cancelled).count();
    int mornings = (int) starts.stream().map(FirstCaseFact::morning).distinct().count();
    return new Measures(
        facts.size(),
        cancelled,
        facts.size() - cancelled - starts.size(),
        starts.size(),
        (int) starts.stream().filter(FirstCaseFact::startInferred).count(),
        mornings,
        Withheld.isWithheld(starts.size()) ? null : figures(facts, starts, mornings));
  }

  /** The measures of each group; groups of few starts are there with their figures withheld. */
  public static Map<String, Measures> by(Split split, List<FirstCaseFact> facts) {
    Map<String, Measures> groups = new LinkedHashMap<>();
    split.apart(facts).forEach((name, group) -> groups.put(name, of(group)));
    return groups;
  }

  private static Figures figures(
      List<FirstCaseFact> facts, List<FirstCaseFact> starts, int mornings) {
    List<FirstCaseFact> judged = starts.stream().filter(FirstCaseFact::judged).toList();
    return new Figures(
        Share.of(judged, FirstCaseFact::onTime).orWithheld(),
        GRACES.stream().map(grace -> grace(starts, grace)).toList(),
        minutes(starts, judged.size(), mornings),
        balancing(facts, starts),
        ahead(starts),
        starts.size() - judged.size());
  }

  private static Grace grace(List<FirstCaseFact> starts, int grace) {
    List<Double> late =
        starts.stream().filter(f -> f.late(grace)).map(FirstCaseFact::lateMinutes).toList();
    List<FirstCaseFact> judged = starts.stream().filter(f -> f.judged(grace)).toList();
    return new Grace(
        grace,
        Share.of(judged, f -> f.onTime(grace)).orWithheld(),
        ofEnough(late.size(), Quantiles.mean(late)),
        starts.size() - judged.size());
  }

  /** What is known of so many starts; null if they are too few. */
  public static <T> T ofEnough(int starts, T known) {
    return Withheld.isWithheld(starts) ? null : known;
  }

  private static Minutes minutes(List<FirstCaseFact> starts, int judged, int mornings) {
    List<Double> all = starts.stream().map(FirstCaseFact::lateMinutes).toList();
    List<FirstCaseFact> lateOnes = starts.stream().filter(FirstCaseFact::late).toList();
    List<Double> late = lateOnes.stream().map(FirstCaseFact::lateMinutes).toList();
    double total = all.stream().mapToDouble(Double::doubleValue).sum();
    return new Minutes(
        total,
        total / starts.size(),
        total / mornings,
        ofEnough(judged, late.size()),
        ofEnough(late.size(), Quantiles.mean(late)),
        Quantiles.of(all, 0.5),
        Quantiles.of(all, 0.9),
        ofEnough(late.size(), Quantiles.of(late, 0.5)),
        (int) starts.stream().filter(FirstCaseFact::startInferred).count(),
        ofEnough(judged, (int) lateOnes.stream().filter(FirstCaseFact::startInferred).count()),
        LateIntervals.of(starts));
  }

  private static Balancing balancing(List<FirstCaseFact> facts, List<FirstCaseFact> starts) {
    List<Double> took =
        starts.stream()
            .map(f -> f.beside().wheelsInToInductionMs())
            .filter(Objects::nonNull)
            .map(ms -> (double) ms / FirstCaseFact.MINUTE)
            .toList();
    return new Balancing(
        ofEnough(took.size(), Quantiles.mean(took)),
        ofEnough(took.size(), Quantiles.of(took, 0.5)),
        took.size(),
        Share.of(facts, FirstCaseFact::cancelled),
        perHundred(starts, Beside::leftOut),
        perHundred(starts, Beside::openAtStep),
        perHundred(starts, Beside::together),
        perHundred(starts, Beside::lateEntries),
        perHundred(starts, Beside::faults));
  }

  private static double perHundred(List<FirstCaseFact> starts, ToIntFunction<Beside> what) {
    double asked = starts.stream().mapToInt(f -> f.beside().asked()).sum();
    double sum = starts.stream().mapToInt(f -> what.applyAsInt(f.beside())).sum();
    return asked == 0 ? 0 : 100 * sum / asked;
  }

  private static Ahead ahead(List<FirstCaseFact> starts) {
    List<FirstCaseFact> late = starts.stream().filter(FirstCaseFact::late).toList();
    List<FirstCaseFact> known = late.stream().filter(f -> shownAhead(f) != null).toList();
    Share shown = Share.of(known, Measures::shownAhead);
    return ofEnough(known.size(), new Ahead(shown, late.size() - known.size()));
  }

  /**
   * Whether the board had named the largest as-run cause of this start at least {@link
   * #AHEAD_MINUTES} minutes ahead; null if it has no cause, or no word of the board is kept.
   */
  public static Boolean shownAhead(FirstCaseFact fact) {
    boolean known =
        fact.asRun().largest().isPresent() && fact.said().stream().anyMatch(Measures::isAhead);
    return known ? (Boolean) wasShown(fact) : null;
  }

  private static boolean isAhead(BoardSaid said) {
    // What today's model says of that moment is no word of the board.
    return said.note() != null
        && said.note().origin() == ForecastNote.Origin.LOGGED
        && said.minutesBefore() >= AHEAD_MINUTES;
  }

  private static boolean wasShown(FirstCaseFact fact) {
    Optional<Cause> cause = fact.asRun().largest();
    return cause.isPresent()
        && fact.said().stream()
            .filter(Measures::isAhead)
            .flatMap(s -> s.note().named().stream())
            .anyMatch(named -> named.cause().pointsTo(cause.get()));
  }
}
