package sunup.review.facts;

import java.time.DayOfWeek;
import java.util.List;
import sunup.board.CaseId;
import sunup.board.DelayReason;
import sunup.board.MorningId;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.codec.Maybe;

/**
 * What is kept of one first case of a closed morning. Times are epoch milliseconds, durations
 * milliseconds. No person is named in it, so that no page can break anything down by person.
 *
 * @param version of this record's form: 1
 * @param morning suite and date
 * @param caseId the case
 * @param room where it stood at the end
 * @param service the surgical service, or null
 * @param technique the anaesthetic technique
 * @param startEvent the step that counts as the start on this morning
 * @param graceMinutes minutes after the target that counted as on time on this morning
 * @param bookedAt the booked time of the start event
 * @param agreedAt a later start that was agreed, or null
 * @param beginsAt when set-up was planned to begin
 * @param cancelled true if it did not happen
 * @param times what happened when, as it was told
 * @param asRun where the minutes went
 * @param reported the cause that people gave, or null
 * @param beside what must not suffer while starts get earlier
 * @param said what the board said at T-60, T-40, T-20 and T-10
 */
public record FirstCaseFact(
    int version,
    MorningId morning,
    CaseId caseId,
    RoomId room,
    @Maybe String service,
    @Maybe String technique,
    Step startEvent,
    int graceMinutes,
    long bookedAt,
    @Maybe Long agreedAt,
    long beginsAt,
    boolean cancelled,
    Times times,
    AsRunFact asRun,
    @Maybe Reported reported,
    Beside beside,
    List<BoardSaid> said) {
  public static final long MINUTE = 60_000;

  public FirstCaseFact {
    said = List.copyOf(said);
  }

  /** The same with what the board said. */
  FirstCaseFact with(List<BoardSaid> words) {
    return new FirstCaseFact(
        version,
        morning,
        caseId,
        room,
        service,
        technique,
        startEvent,
        graceMinutes,
        bookedAt,
        agreedAt,
        beginsAt,
        cancelled,
        times,
        asRun,
        reported,
        beside,
        words);
  }

  /** The time that the start is measured against: agreed, or else booked. T of rule 6. */
  public long target() {
    return agreedAt != null ? agreedAt : bookedAt;
  }

  /**
   * When it started, or null if it was cancelled or nobody ever said so. Where the start event was
   * not told and a later step was, that step's time: it had started by then ({@link
   * #startInferred}).
   */
  public Long startedAt() {
    Long told = times.of(startEvent);
    return cancelled ? null : told != null ? told : times.reachedBy(startEvent);
  }

  /** True if it has a start that nobody told: it had started by {@link #startedAt}. */
  public boolean startInferred() {
    return hasStarted() && times.of(startEvent) == null;
  }

  /** True if it has a start to measure. */
  public boolean hasStarted() {
    return startedAt() != null;
  }

  /** Start less target, negative if early. Only of one that has started. */
  public long latenessMs() {
    return startedAt() - target();
  }

  /** Late minutes of rule 6, exact: max(0, start - target). 0 of one that has not started. */
  public long lateMs() {
    return hasStarted() ? Math.max(0, latenessMs()) : 0;
  }

  /** The same in minutes. */
  public double lateMinutes() {
    return (double) lateMs() / MINUTE;
  }

  /**
   * Known to be on time: the start, cut to whole minutes, is not after target + grace (rule 6). Of
   * one that nobody told it is known where the step after it was in time.
   */
  public boolean onTime(int grace) {
    return hasStarted() && isOnTime(startedAt(), target(), grace);
  }

  /** The same under the morning's own grace. */
  public boolean onTime() {
    return onTime(graceMinutes);
  }

  /**
   * Known to be late. One that nobody told may be neither: it had started by a step that was too
   * late, and nobody knows when.
   */
  public boolean late(int grace) {
    return Boolean.FALSE.equals(cameBy(target(), grace));
  }

  /** The same under the morning's own grace. */
  public boolean late() {
    return late(graceMinutes);
  }

  /** Whether it is known if it was on time. */
  public boolean judged(int grace) {
    return onTime(grace) || late(grace);
  }

  /** The same under the morning's own grace. */
  public boolean judged() {
    return judged(graceMinutes);
  }

  /**
   * It did not start before this: the start itself if it was told, else the latest step before it
   * that was; null if there is none. A step that was told with a time after {@link #startedAt} was
   * told after the next one: it says nothing of the start.
   */
  public Long startedFrom() {
    if (!hasStarted() || !startInferred()) {
      return startedAt();
    }
    Long from = null;
    for (Step step : Step.values()) {
      Long at = step.compareTo(startEvent) < 0 ? times.of(step) : null;
      if (at != null && at <= startedAt() && (from == null || at > from)) {
        from = at;
      }
    }
    return from;
  }

  /**
   * Whether it was on time by another target; null if it never started, or if what was told does
   * not say: a start that is inferred is on time if it was by the step after it, and late if the
   * step before it was too late already.
   */
  Boolean cameBy(long target, int grace) {
    if (!hasStarted() || !startInferred() || isOnTime(startedAt(), target, grace)) {
      return hasStarted() ? (Boolean) isOnTime(startedAt(), target, grace) : null;
    }
    Long from = startedFrom();
    boolean late = from != null && !isOnTime(from, target, grace);
    return late ? Boolean.FALSE : null;
  }

  static boolean isOnTime(long start, long target, int grace) {
    return Math.floorDiv(start, MINUTE) * MINUTE <= target + grace * MINUTE;
  }

  public DayOfWeek weekday() {
    return morning.date().getDayOfWeek();
  }

  /**
   * Times of the case; those that nobody reported are null.
   *
   * @param arrivals who or what came, first ones first: an item's key for what comes by itself
   *     ({@code patient.arrived}), else a role of the room's own people
   * @param readyAt when the room was last reported ready
   */
  public record Times(
      List<Came> arrivals,
      @Maybe Long readyAt,
      @Maybe Long sentFor,
      @Maybe Long wheelsIn,
      @Maybe Long induction,
      @Maybe Long release,
      @Maybe Long incision) {
    public Times {
      arrivals = List.copyOf(arrivals);
    }

    /** When a step was reached, or null. */
    public Long of(Step step) {
      return switch (step) {
        case SENT_FOR -> sentFor;
        case WHEELS_IN -> wheelsIn;
        case INDUCTION -> induction;
        case RELEASE -> release;
        case INCISION -> incision;
      };
    }

    /** When a step had been reached at the latest by what was told, or null. */
    public Long reachedBy(Step step) {
      return Step.reachedBy(step, this::of);
    }
  }

  /** Who or what came, and when. */
  public record Came(String what, long at) {}

  /**
   * The cause that people gave.
   *
   * @param reason the first side's
   * @param settled whether the other side agreed
   * @param instead the other side's, if it disputed and named one
   */
  public record Reported(DelayReason reason, Settled settled, @Maybe DelayReason instead) {}

  /** How a reported cause stands. */
  public enum Settled {
    /** The other side has not spoken. */
    OPEN,
    AGREED,
    DISPUTED
  }

  /**
   * Balancing measures of one case: an earlier start bought by these is none.
   *
   * @param wheelsInToInductionMs null if one of them is missing, or they come in the wrong order
   * @param asked items that the case asked for in its room
   * @param leftOut of these left out with a reason
   * @param openAtStep items that were open when a step happened all the same
   * @param together items entered together
   * @param lateEntries items entered more than five minutes after they happened
   * @param faults how often something was found at fault
   */
  public record Beside(
      @Maybe Long wheelsInToInductionMs,
      int asked,
      int leftOut,
      int openAtStep,
      int together,
      int lateEntries,
      int faults) {}
}
