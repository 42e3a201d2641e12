package sunup.http;

import java.time.DateTimeException;
import java.time.LocalDate;
import sunup.board.MorningId;
import sunup.live.Mornings;

/** The morning that a request is about. */
final class AskedMorning {
  private AskedMorning() {}

  /**
   * The morning of a date.
   *
   * @param date as the request gives it; none or an empty one means the one that is on
   */
  static MorningId of(Mornings mornings, String date) throws Answers.Wrong {
    MorningId today = mornings.today();
    LocalDate day;
    try {
      day = date == null || date.isEmpty() ? today.date() : LocalDate.parse(date);
    } catch (DateTimeException e) {
      throw new Answers.Wrong("Not a date", 400, "Give the date as 2026-11-25.");
    }
    MorningId morning = new MorningId(today.suite(), day);
    if (!mornings.takes(morning)) {
      throw new Answers.Wrong(
          "Too far", 422, "Only dates near today, " + today.date() + ", can be worked on.");
    }
    return morning;
  }
}
