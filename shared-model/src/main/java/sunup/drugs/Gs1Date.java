package sunup.drugs;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.YearMonth;
import sunup.codec.Maybe;

/**
 * A date of a GS1 code.
 *
 * @param written as in the code: two ways of writing one day are two strings, and a service that
 *     verifies packages compares the string
 * @param day the last day that it means: day 00 is the last of its month (General Specifications);
 *     since 1 January 2025 healthcare writes a real day (GSCN 21-040), so 00 is read and never
 *     written
 * @param time the time of that day from which it has ended, or null for its end
 */
public record Gs1Date(String written, LocalDate day, @Maybe LocalTime time) {
  private static final int LAST_YEAR = 9999;

  /** Six digits YYMMDD, or null if there is no such day. */
  static Gs1Date of(String yymmdd, LocalDate today) {
    int month = number(yymmdd, 2);
    int day = number(yymmdd, 4);
    if (month < 1 || month > 12) {
      return null;
    }
    int year = year(number(yymmdd, 0), today.getYear());
    if (year < 1 || year > LAST_YEAR) {
      return null;
    }
    YearMonth of = YearMonth.of(year, month);
    if (day > of.lengthOfMonth()) {
      return null;
    }
    return new Gs1Date(yymmdd, day == 0 ? of.atEndOfMonth() : of.atDay(day), null);
  }

  /** Ten digits YYMMDDhhmm with a real day, or null. */
  static Gs1Date withTime(String digits, LocalDate today) {
    Gs1Date date = of(digits.substring(0, 6), today);
    int hour = number(digits, 6);
    int minute = number(digits, 8);
    boolean real = date != null && number(digits, 4) > 0 && hour < 24 && minute < 60;
    return real ? new Gs1Date(digits, date.day, LocalTime.of(hour, minute)) : null;
  }

  /** Two digits at a place of a text that is digits only. */
  private static int number(String digits, int at) {
    return (digits.charAt(at) - '0') * 10 + digits.charAt(at + 1) - '0';
  }

  /** Of the hundred years around now: 51 or more ahead was, 50 or more back will be. */
  static int year(int twoDigits, int now) {
    int century = now - Math.floorMod(now, 100);
    int ahead = twoDigits - Math.floorMod(now, 100);
    if (ahead >= 51) {
      return century - 100 + twoDigits;
    }
    return ahead <= -50 ? century + 100 + twoDigits : century + twoDigits;
  }
}
