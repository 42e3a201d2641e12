package sunup.outlook;

import sunup.forecast.Forecast;

/**
 * The newest figures there are.
 *
 * @param forecast null if there are none
 * @param of journal sequence of the state that they were computed from
 * @param old true if newer ones could not be computed, so that they must not pass for today's
 */
public record Foretold(Forecast forecast, long of, boolean old) {
  /** Before anything was computed, or where nothing is. */
  public static final Foretold NONE = new Foretold(null, 0, false);
}
