package sunup.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.zone.ZoneOffsetTransition;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Times of a day as people write them, in a zone whose clocks are put forward and back. */
final class LocalTimes {
  private static final Pattern TIME = Pattern.compile("(\\d{1,2}):(\\d{2})(?::00)?");
  private static final Pattern LIKE_TIME =
      Pattern.compile("(\\d{1,2})\\s*[.:hH,-]\\s*(\\d{2})?\\s*(?:h|uhr|[ap]\\.?m\\.?)?");
  private static final DateTimeFormatter SHOWN = DateTimeFormatter.ofPattern("HH:mm");

  private LocalTimes() {}

  /**
   * @param at epoch milliseconds, or null if there is a problem
   * @param problem what is wrong and how to mend it, or null
   */
  record Read(Long at, String problem) {}

  /**
   * Reads {@code 07:30}, {@code 2026-11-25 07:30} or, where a time comes twice, {@code
   * 2026-10-25T01:30+01:00}.
   */
  static Read read(String text, LocalDate date, ZoneId zone) {
    String trimmed = text.strip();
    if (trimmed.isEmpty()) {
      return wrong("is empty; write the booked time, for example 07:30");
    }
    String time = trimmed;
    if (trimmed.length() > 10 && (trimmed.charAt(10) == 'T' || trimmed.charAt(10) == ' ')) {
      LocalDate named;
      try {
        named = LocalDate.parse(trimmed.substring(0, 10));
      } catch (DateTimeException e) {
        return wrong(notATime(trimmed));
      }
      if (!named.equals(date)) {
        return wrong("'" + shortened(trimmed) + "' is on another day; this list is for " + date);
      }
      time = trimmed.substring(11).strip();
      if (time.matches("\\d{2}:\\d{2}(:00)?(Z|[+-]\\d{2}:\\d{2})")) {
        return withOffset(named + "T" + time, zone);
      }
    }
    Matcher m = TIME.matcher(time);
    if (!m.matches()) {
      return wrong(notATime(trimmed));
    }
    try {
      LocalTime local = LocalTime.of(Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2)));
      return at(date.atTime(local), zone);
    } catch (DateTimeException e) {
      return wrong(
          "'"
              + shortened(trimmed)
              + "' is not a time of the day; write hours 00 to 23 and minutes 00 to 59, for example"
              + " 07:30");
    }
  }

  private static Read withOffset(String text, ZoneId zone) {
    try {
      OffsetDateTime time = OffsetDateTime.parse(text);
      if (!zone.getRules().isValidOffset(time.toLocalDateTime(), time.getOffset())) {
        return wrong(
            "'" + text + "' has an offset that " + zone + " does not have then; leave it out");
      }
      return new Read(time.toInstant().toEpochMilli(), null);
    } catch (DateTimeException e) {
      return wrong(notATime(text));
    }
  }

  private static Read at(LocalDateTime local, ZoneId zone) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.size() == 1) {
      return new Read(local.toInstant(offsets.get(0)).toEpochMilli(), null);
    }
    if (offsets.isEmpty()) {
      ZoneOffsetTransition gap = zone.getRules().getTransition(local);
      return wrong(
          SHOWN.format(local)
              + " does not exist on "
              + local.toLocalDate()
              + ": the clocks go from "
              + SHOWN.format(gap.getDateTimeBefore())
              + " to "
              + SHOWN.format(gap.getDateTimeAfter())
              + "; write "
              + SHOWN.format(local.plus(gap.getDuration()))
              + " or another time");
    }
    return wrong(
        SHOWN.format(local)
            + " comes twice on "
            + local.toLocalDate()
            + ": the clocks go back; write "
            + local
            + offsets.get(0)
            + " for the first or "
            + local
            + offsets.get(1)
            + " for the second");
  }

  /** A planned time of the site's file: in a gap the time after it, of two the first. */
  static long planned(LocalDate date, LocalTime time, ZoneId zone) {
    return date.atTime(time).atZone(zone).toInstant().toEpochMilli();
  }

  private static String notATime(String text) {
    String message = "'" + shortened(text) + "' is not a time, write ";
    Matcher m = LIKE_TIME.matcher(text);
    if (m.matches()) {
      int hour = Integer.parseInt(m.group(1));
      int minute = m.group(2) == null ? 0 : Integer.parseInt(m.group(2));
      if (hour < 24 && minute < 60) {
        return message + SHOWN.format(LocalTime.of(hour, minute));
      }
    }
    if (text.matches("\\d{4}")) {
      int number = Integer.parseInt(text);
      if (number / 100 < 24 && number % 100 < 60) {
        return message + SHOWN.format(LocalTime.of(number / 100, number % 100));
      }
    }
    return message + "hours and minutes, for example 07:30";
  }

  private static Read wrong(String problem) {
    return new Read(null, problem);
  }

  static String shortened(String text) {
    String one = text.replaceAll("\\s+", " ");
    return one.length() > 40 ? one.substring(0, 40) + "..." : one;
  }
}
