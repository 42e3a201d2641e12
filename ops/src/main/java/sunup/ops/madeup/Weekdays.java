package sunup.ops.madeup;

import java.time.DayOfWeek;
import java.time.LocalDate;

/** The days on which there are mornings: Monday to Friday. */
public final class Weekdays {
  private Weekdays() {}

  public static boolean isOne(LocalDate date) {
    DayOfWeek day = date.getDayOfWeek();
    return day != DayOfWeek.SATURDAY && day != DayOfWeek.SUNDAY;
  }

  /** The date that so many weekdays lie after it, itself one of them, and before the given date. */
  static LocalDate before(LocalDate date, int weekdays) {
    LocalDate first = date;
    for (int left = weekdays; left > 0; ) {
      first = first.minusDays(1);
      left -= isOne(first) ? 1 : 0;
    }
    return first;
  }

  /** Weekdays from one date up to another, that one not counted; below 0 if it lies before. */
  static int between(LocalDate from, LocalDate to) {
    if (to.isBefore(from)) {
      return -between(to, from);
    }
    int count = 0;
    for (LocalDate date = from; date.isBefore(to); date = date.plusDays(1)) {
      count += isOne(date) ? 1 : 0;
    }
    return count;
  }
}
