package sunup.board;

import java.util.List;
import java.util.Map;
import sunup.sheets.ComposedSheet;

/**
 * The state of one morning: what the events so far make of it. Immutable; maps keep the order in
 * which the plan named things.
 *
 * @param id suite and date, or null before the first plan
 * @param phase draft, open or closed
 * @param seq the journal sequence of the last event applied
 * @param settings the site's decisions
 * @param beginsAt when set-up is planned to begin
 * @param openedAt when the morning was opened, or null
 * @param closedAt when it was closed, or null
 * @param lastRecordedAt recordedAt of the last event; the next is never before it
 * @param rooms by id, in the wall's order
 * @param cases by id
 * @param people by id
 * @param units by id
 * @param places by id
 * @param sheets composed sheets by hash
 * @param items every item of every room and case, by reference
 * @param notes in order
 */
public record Morning(
    MorningId id,
    Phase phase,
    long seq,
    SiteSettings settings,
    long beginsAt,
    Long openedAt,
    Long closedAt,
    long lastRecordedAt,
    Map<RoomId, RoomDay> rooms,
    Map<CaseId, CaseDay> cases,
    Map<PersonId, PersonDay> people,
    Map<UnitId, UnitDay> units,
    Map<PlaceId, PlaceDay> places,
    Map<String, ComposedSheet> sheets,
    Map<ItemRef, Item> items,
    List<NoteKept> notes) {

  /** Phases of a morning. */
  public enum Phase {
    NONE,
    DRAFT,
    OPEN,
    CLOSED
  }

  /** Before the first event. */
  public static final Morning NONE =
      new Morning(
          null,
          Phase.NONE,
          0,
          null,
          0,
          null,
          null,
          0,
          Map.of(),
          Map.of(),
          Map.of(),
          Map.of(),
          Map.of(),
          Map.of(),
          Map.of(),
          List.of());

  /**
   * A room on this morning.
   *
   * @param caseId its first case, or null
   * @param use what it is used for
   * @param useUntil until when, as expected, or null
   * @param revision the journal sequence that last touched it
   * @param lastWordAt when anybody last said anything about its set-up from the room, by
   *     happenedAt, or null
   * @param readyAt when it was last reported ready, or null
   * @param readyBy the role that reported it
   * @param readyOpen what was open then
   * @param taken the holdup that somebody has taken, or null
   * @param help the request for help that stands, or null
   */
  public record RoomDay(
      RoomId id,
      CaseId caseId,
      RoomUse use,
      Long useUntil,
      long revision,
      Long lastWordAt,
      Long readyAt,
      Role readyBy,
      List<ItemRef> readyOpen,
      Taken taken,
      Help help) {}

  /** A holdup that somebody has taken. */
  public record Taken(String holdup, Role by, Private said, Long lookAgainAt, long at) {}

  /** A request for help. {@code answeredBy} is null until somebody goes. */
  public record Help(Private what, long at, PersonId answeredBy) {}

  /**
   * A first case on this morning.
   *
   * @param plan as it stands now; its room is where the case is now
   * @param agreedAt an agreed later start, or null
   * @param cancelled true if it will not happen
   * @param revision the journal sequence that last touched it
   * @param steps when each step of the start chain was reached
   * @param flagged items that were open when a step happened all the same
   * @param reason the reported cause, or null
   */
  public record CaseDay(
      CasePlan plan,
      Long agreedAt,
      boolean cancelled,
      long revision,
      Map<Step, Long> steps,
      List<ItemRef> flagged,
      Reason reason) {
    /** The time that its start is measured against: agreed, or else booked. */
    public long target() {
      return agreedAt != null ? agreedAt : plan.bookedAt();
    }
  }

  /** A reported cause; {@code instead} is what the other side sees, or null. */
  public record Reason(DelayReason reason, Private said, boolean agreed, DelayReason instead) {}

  /**
   * A person on this morning.
   *
   * @param plan as planned
   * @param arrivedAt or null
   * @param expectedAt another expected time than planned, or null
   * @param room where the person is, or null
   * @param leftAt when the person left the morning, or null
   * @param lastWordAt when the person last reported anything, or null
   */
  public record PersonDay(
      PersonPlan plan,
      Long arrivedAt,
      Long expectedAt,
      RoomId room,
      Long leftAt,
      Long lastWordAt,
      long revision) {}

  /** A piece of equipment: with which room, and to which room the next free one is promised. */
  public record UnitDay(UnitPlan plan, RoomId with, Long since, RoomId promised, long revision) {}

  /** A place and when it opens. */
  public record PlaceDay(PlacePlan plan, long opensAt, long revision) {}

  /** A note. */
  public record NoteKept(RoomId room, Role by, long at, Private text) {}

  /** The composed sheet of a case. */
  public ComposedSheet sheetOf(CaseDay caseDay) {
    return sheets.get(caseDay.plan().sheet());
  }
}
