package sunup.review.facts;

import java.util.List;
import sunup.board.CaseId;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.RoomId;
import sunup.codec.Maybe;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.wire.Standing;

/**
 * One line of the forecast log: what the board said of one room at one moment. A board that keeps
 * its word writes one for each room at {@link BoardSaid#MOMENTS} minutes before its target, with
 * the figures that it showed then.
 *
 * @param version of this record's form: 1
 * @param morning suite and date
 * @param room the room
 * @param caseId its case then
 * @param at the moment, morning time
 * @param target the start's target as it stood then
 * @param seq journal sequence of the state that the figures were computed from
 * @param model version of the model
 * @param inputs names the input, as {@link Forecast#inputs}
 * @param seed of the morning
 * @param trials that it was computed with
 * @param onTime P(start by target + grace)
 * @param start10 10 % point of the start
 * @param start50 median
 * @param start90 90 % point
 * @param standing as shown
 * @param named holdups as shown, largest first, at most {@link #NAMED_AT_MOST}; people as roles
 * @param origin whether the board said so then, or today's model says it of that moment
 */
public record ForecastNote(
    int version,
    MorningId morning,
    RoomId room,
    CaseId caseId,
    long at,
    long target,
    long seq,
    int model,
    String inputs,
    long seed,
    int trials,
    double onTime,
    long start10,
    long start50,
    long start90,
    @Maybe Standing standing,
    List<Named> named,
    Origin origin) {
  /** So many holdups of a room are kept. */
  public static final int NAMED_AT_MOST = 5;

  /** Where a note comes from. */
  public enum Origin {
    /** Written when it was said. */
    LOGGED,
    /** Computed from the journal afterwards, by the model of today. */
    RECOMPUTED
  }

  /** A holdup with its share of the late minutes to come. */
  public record Named(Cause cause, double share) {}

  public ForecastNote {
    named = List.copyOf(named);
  }

  /**
   * What the board says of one room now.
   *
   * @param state that the figures were computed from
   * @param figures all of them
   * @param out the room's
   */
  public static ForecastNote of(
      Morning state, Forecast figures, RoomOut out, Standing standing, Origin origin) {
    RoomId room = new RoomId(out.id());
    Morning.CaseDay day = state.caseIn(room);
    RolesOf roles = RolesOf.morning(state);
    List<Named> named =
        out.holdups().stream()
            .limit(NAMED_AT_MOST)
            .map(
                s ->
                    new Named(
                        new Cause(s.kind(), s.item(), roles.thing(s.kind(), s.thing()), s.where()),
                        s.share()))
            .toList();
    return new ForecastNote(
        1,
        state.id(),
        room,
        day.plan().id(),
        figures.now(),
        day.target(),
        state.seq(),
        figures.model(),
        figures.inputs(),
        figures.seed(),
        figures.trials(),
        out.onTime(),
        out.start10(),
        out.start50(),
        out.start90(),
        standing,
        named,
        origin);
  }
}
