package sunup.review.trial;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sunup.board.MorningId;
import sunup.codec.Maybe;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.Cause;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;

/**
 * One forecast of the board with what came of it.
 *
 * @param morning on which
 * @param chance of a start on time that it said
 * @param came true if the start was on time
 * @param done share of the gating items that was reported done then
 * @param deskActed whether the desk acted after it
 * @param recomputed true if the board did not keep it
 * @param named 1 if the first holdup that it named was the as-run one, 0 if not, null if nothing
 *     was late or nothing explains it
 */
public record Said(
    MorningId morning,
    double chance,
    boolean came,
    double done,
    boolean deskActed,
    boolean recomputed,
    @Maybe Integer named) {
  private static final Comparator<Said> ORDER =
      Comparator.comparing((Said s) -> s.morning().date())
          .thenComparing(s -> s.morning().suite().value());

  /** The forecasts of one moment, by date and suite. */
  public static List<Said> of(List<FirstCaseFact> facts, int minutesBefore) {
    List<Said> said = new ArrayList<>();
    for (FirstCaseFact fact : facts) {
      for (BoardSaid one : fact.said()) {
        if (one.minutesBefore() == minutesBefore && one.note() != null && one.came() != null) {
          said.add(
              new Said(
                  fact.morning(),
                  one.note().onTime(),
                  one.came(),
                  one.done(),
                  one.deskActed(),
                  one.note().origin() == ForecastNote.Origin.RECOMPUTED,
                  named(fact, one)));
        }
      }
    }
    said.sort(ORDER);
    return said;
  }

  /** Whether the first holdup named was the as-run one; null as in {@link #named}. */
  public static Integer named(FirstCaseFact fact, BoardSaid one) {
    Optional<Cause> cause = fact.asRun().largest();
    if (one.came() || cause.isEmpty()) {
      return null;
    }
    List<ForecastNote.Named> named = one.note().named();
    return !named.isEmpty() && named.get(0).cause().pointsTo(cause.get()) ? 1 : 0;
  }

  double squared() {
    return squared(chance);
  }

  double squared(double other) {
    double off = other - (came ? 1 : 0);
    return off * off;
  }
}
