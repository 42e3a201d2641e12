package sunup.archive;

import java.time.LocalDate;
import java.util.List;
import sunup.board.CaseId;
import sunup.board.MorningId;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.board.SuiteId;
import sunup.codec.Maybe;
import sunup.review.facts.AsRunFact;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Beside;
import sunup.review.facts.FirstCaseFact.Reported;
import sunup.review.facts.FirstCaseFact.Times;

/**
 * A first case of the time before Sunup as it is kept: what a history can say of it. What the
 * site's file said when it was brought goes with it.
 *
 * @param step that counts as the start
 * @param started null if it was cancelled
 */
public record BroughtCase(
    LocalDate date,
    String room,
    @Maybe String service,
    @Maybe String technique,
    Step step,
    int grace,
    long booked,
    @Maybe Long started,
    boolean cancelled,
    @Maybe Reported reported) {
  /** What is kept of a fact. */
  static BroughtCase of(FirstCaseFact f) {
    return new BroughtCase(
        f.morning().date(),
        f.room().value(),
        f.service(),
        f.technique(),
        f.startEvent(),
        f.graceMinutes(),
        f.bookedAt(),
        f.times().of(f.startEvent()),
        f.cancelled(),
        f.reported());
  }

  /** The fact that it makes. */
  public FirstCaseFact fact(SuiteId suite) {
    return new FirstCaseFact(
        1,
        new MorningId(suite, date),
        new CaseId("history-" + room),
        new RoomId(room),
        service,
        technique,
        step,
        grace,
        booked,
        null,
        booked,
        cancelled,
        new Times(
            List.of(),
            null,
            null,
            step == Step.WHEELS_IN ? started : null,
            step == Step.INDUCTION ? started : null,
            null,
            step == Step.INCISION ? started : null),
        AsRunFact.NONE,
        reported,
        new Beside(null, 0, 0, 0, 0, 0, 0),
        List.of());
  }
}
