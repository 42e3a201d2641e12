package sunup.outlook;

import sunup.forecast.Forecast;
import sunup.moves.Ideas;

/**
 * The newest figures there are.
 *
 * @param forecast null if there are none
 * @param of journal sequence of the state that they were computed from
 * @param old true if newer ones could not be computed, so that they must not pass for today's
 * @param ideas moves that are expected to help, by the last search that came to its end
 */
public record Foretold(Forecast forecast, long of, boolean old, Ideas ideas) {
  /** Before anything was computed, or where nothing is. */
  public static final Foretold NONE = new Foretold(null, 0, false);

  /** Figures beside which no moves were looked for. */
  public Foretold(Forecast forecast, long of, boolean old) {
    this(forecast, of, old, Ideas.NONE);
  }

  /** The same figures beside other moves. */
  public Foretold with(Ideas newest) {
    return new Foretold(forecast, of, old, newest);
  }

  /** The same moves beside other figures. */
  public Foretold with(Forecast newest, long seq, boolean isOld) {
    return new Foretold(newest, seq, isOld, ideas);
  }
}
