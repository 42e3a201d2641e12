package sunup.outlook;

import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.ForecastInput;
import sunup.wire.Standing;

/**
 * When a room may start, as far as that can be told: nothing of a room that nobody was heard from,
 * never a moment that is past, and "more than so many hours" beyond what is computed.
 *
 * @param known false if nobody knows
 * @param at10 10 % point, or null; with at50 and at90
 * @param lateMinutes the median less the target; if {@code moreThanHours} is told, that
 * @param moreThanHours so much later than the target at least, or null
 */
record StartTold(
    boolean known, Long at10, Long at50, Long at90, int lateMinutes, Integer moreThanHours) {
  private static final StartTold UNKNOWN = new StartTold(false, null, null, null, 0, null);
  private static final long HOUR = 60 * FirstSettings.MINUTE;

  /**
   * @param figure null if there are no figures
   */
  static StartTold of(RoomSheet sheet, RoomOut figure, Standing standing, long now) {
    if (figure == null || standing == Standing.UNHEARD) {
      return UNKNOWN;
    }
    long computed = ForecastInput.Settings.DEFAULT.capMs();
    long end = sheet.target() + computed;
    Long at50 = told(figure.start50(), end, now);
    if (at50 == null) {
      long hours = Math.max(computed, now - sheet.target()) / HOUR;
      return new StartTold(true, null, null, null, (int) (60 * hours), (int) hours);
    }
    long late = Math.round((at50 - sheet.target()) / (double) FirstSettings.MINUTE);
    return new StartTold(
        true,
        told(figure.start10(), end, now),
        at50,
        told(figure.start90(), end, now),
        (int) Math.max(0, late),
        null);
  }

  /** Figures may be some seconds older than now, or older still if newer ones failed. */
  private static Long told(long at, long end, long now) {
    return at >= end || now >= end ? null : minute(Math.max(at, now));
  }

  /** To the minute, as figures are shown. */
  static long minute(long at) {
    return Math.round(at / (double) FirstSettings.MINUTE) * FirstSettings.MINUTE;
  }
}
