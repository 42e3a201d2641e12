package sunup.review.facts;

import java.util.List;
import sunup.codec.Maybe;

/**
 * What the board said of a start some minutes before its target, and what came of it.
 *
 * @param minutesBefore 60, 40, 20 or 10
 * @param at the moment that it was said for
 * @param target the target as it stood then
 * @param done share of the items that gate the start which were good or left out by then as
 *     reported, 0 to 1: what a plain "percent done" would go by
 * @param note what the log holds, or null if it holds nothing of that moment
 * @param deskActed true if the desk acted on the room after that and before the start
 * @param came true if the start was on time by that target; null if it never started, or if nobody
 *     told the start and what was told around it does not say
 */
public record BoardSaid(
    int minutesBefore,
    long at,
    long target,
    double done,
    @Maybe ForecastNote note,
    boolean deskActed,
    @Maybe Boolean came) {
  /** The moments that forecasts are kept of, in minutes before the target. */
  public static final List<Integer> MOMENTS = List.of(60, 40, 20, 10);
}
