package sunup.board;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonSubTypes.Type;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import sunup.drugs.ControlledEntry;
import sunup.drugs.DrawnDrug;
import sunup.sheets.ComposedSheet;

/**
 * A fact of the morning, in the past tense. The only truth: state is what {@code apply} makes of
 * the events in order. The type names are a format that old journals are read by: never rename one.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
@JsonSubTypes({
  @Type(value = Event.MorningPlanned.class, name = "morning-planned"),
  @Type(value = Event.MorningOpened.class, name = "morning-opened"),
  @Type(value = Event.MorningClosed.class, name = "morning-closed"),
  @Type(value = Event.CaseAdded.class, name = "case-added"),
  @Type(value = Event.CaseChanged.class, name = "case-changed"),
  @Type(value = Event.CasesSwapped.class, name = "cases-swapped"),
  @Type(value = Event.SwapConfirmed.class, name = "swap-confirmed"),
  @Type(value = Event.CaseCancelled.class, name = "case-cancelled"),
  @Type(value = Event.LaterAgreed.class, name = "later-agreed"),
  @Type(value = Event.RoomUsed.class, name = "room-used"),
  @Type(value = Event.PersonAdded.class, name = "person-added"),
  @Type(value = Event.PersonArrived.class, name = "person-arrived"),
  @Type(value = Event.PersonExpected.class, name = "person-expected"),
  @Type(value = Event.PersonJoined.class, name = "person-joined"),
  @Type(value = Event.PersonLeft.class, name = "person-left"),
  @Type(value = Event.HandedOver.class, name = "handed-over"),
  @Type(value = Event.ItemBegun.class, name = "item-begun"),
  @Type(value = Event.ItemGood.class, name = "item-good"),
  @Type(value = Event.ItemWitnessed.class, name = "item-witnessed"),
  @Type(value = Event.SectionSwept.class, name = "section-swept"),
  @Type(value = Event.ItemFaulted.class, name = "item-faulted"),
  @Type(value = Event.FaultTaken.class, name = "fault-taken"),
  @Type(value = Event.ItemMended.class, name = "item-mended"),
  @Type(value = Event.ItemReopened.class, name = "item-reopened"),
  @Type(value = Event.ItemLeftOut.class, name = "item-left-out"),
  @Type(value = Event.ItemExpected.class, name = "item-expected"),
  @Type(value = Event.WordKept.class, name = "word-kept"),
  @Type(value = Event.TouchUndone.class, name = "touch-undone"),
  @Type(value = Event.UnitClaimed.class, name = "unit-claimed"),
  @Type(value = Event.UnitReleased.class, name = "unit-released"),
  @Type(value = Event.UnitPromised.class, name = "unit-promised"),
  @Type(value = Event.PlaceOpening.class, name = "place-opening"),
  @Type(value = Event.HoldupTaken.class, name = "holdup-taken"),
  @Type(value = Event.HelpAsked.class, name = "help-asked"),
  @Type(value = Event.HelpAnswered.class, name = "help-answered"),
  @Type(value = Event.MoveAsked.class, name = "move-asked"),
  @Type(value = Event.MoveAccepted.class, name = "move-accepted"),
  @Type(value = Event.MoveDeclined.class, name = "move-declined"),
  @Type(value = Event.MoveDone.class, name = "move-done"),
  @Type(value = Event.MoveWithdrawn.class, name = "move-withdrawn"),
  @Type(value = Event.ReadyReported.class, name = "ready-reported"),
  @Type(value = Event.StepReached.class, name = "step-reached"),
  @Type(value = Event.ReasonGiven.class, name = "reason-given"),
  @Type(value = Event.ReasonAgreed.class, name = "reason-agreed"),
  @Type(value = Event.ReasonDisputed.class, name = "reason-disputed"),
  @Type(value = Event.Noted.class, name = "noted"),
  @Type(value = Event.DrugsDrawn.class, name = "drugs-drawn"),
  @Type(value = Event.DrugDiscarded.class, name = "drug-discarded"),
  @Type(value = Event.DrugCounted.class, name = "drug-counted"),
  @Type(value = Event.DurationsLearned.class, name = "durations-learned"),
  @Type(value = Event.LessonsFrozen.class, name = "lessons-frozen"),
  @Type(value = Event.NextCaseBegun.class, name = "next-case-begun"),
})
public sealed interface Event {
  record MorningPlanned(MorningPlan plan) implements Event {}

  record MorningOpened() implements Event {}

  /** Durations alone, as openings once froze them. Read, and never written any more. */
  record DurationsLearned(LearnedTimes learned) implements Event {}

  /** What the morning's forecasts go by instead of its sheets, from its opening on. */
  record LessonsFrozen(LearnedTimes learned) implements Event {}

  record MorningClosed() implements Event {}

  record CaseAdded(CasePlan plan, ComposedSheet sheet) implements Event {}

  /** {@code voided} lists the items whose evidence no longer counts. */
  record CaseChanged(CasePlan plan, ComposedSheet sheet, List<ItemRef> voided) implements Event {}

  /** {@code voided} lists the items of both cases that were made and no longer count. */
  record CasesSwapped(CaseId one, CaseId other, List<ItemRef> voided) implements Event {}

  record SwapConfirmed(RoomId room) implements Event {}

  record CaseCancelled(CaseId caseId, Private reason) implements Event {}

  record LaterAgreed(CaseId caseId, Long at) implements Event {}

  record RoomUsed(RoomId room, RoomUse use, Long until) implements Event {}

  record PersonAdded(PersonPlan plan) implements Event {}

  record PersonArrived(PersonId person, RoomId room) implements Event {}

  record PersonExpected(PersonId person, long at, Private said) implements Event {}

  record PersonJoined(PersonId person, RoomId room) implements Event {}

  record PersonLeft(PersonId person, RoomId room) implements Event {}

  record HandedOver(PersonId from, PersonId to, RoomId room) implements Event {}

  record ItemBegun(ItemRef item, PersonId by) implements Event {}

  /** {@code flags} say what was odd about it, for example {@code late-entry}. */
  record ItemGood(
      ItemRef item, Evidence evidence, PersonId by, PersonId witness, List<String> flags)
      implements Event {}

  /** Somebody else saw an item that was good already: a second witness. */
  record ItemWitnessed(ItemRef item, Evidence evidence, PersonId by) implements Event {}

  /** {@code items} became good together; the parts teach nothing about durations. */
  record SectionSwept(RoomId room, Section section, List<ItemRef> items, PersonId by)
      implements Event {}

  /** {@code reading} is the reading outside its band that made it a fault, or null. */
  record ItemFaulted(ItemRef item, Private what, Evidence reading) implements Event {}

  record FaultTaken(ItemRef item, PersonId by) implements Event {}

  record ItemMended(ItemRef item) implements Event {}

  record ItemReopened(ItemRef item, Private why) implements Event {}

  record ItemLeftOut(ItemRef item, Private reason) implements Event {}

  record ItemExpected(ItemRef item, long at, Private said) implements Event {}

  /**
   * An observation that was accepted and changes nothing: on an item that was left out, or older
   * than a later reopening or fault. {@code why} is a registered code.
   */
  record WordKept(ItemRef item, String why) implements Event {}

  /** {@code items} go back to what they were before the command {@code undone}. */
  record TouchUndone(CommandId undone, List<ItemRef> items) implements Event {}

  record UnitClaimed(UnitId unit, RoomId room) implements Event {}

  record UnitReleased(UnitId unit) implements Event {}

  record UnitPromised(UnitId unit, RoomId room) implements Event {}

  record PlaceOpening(PlaceId place, long at) implements Event {}

  record HoldupTaken(RoomId room, String holdup, Private said, Long lookAgainAt) implements Event {}

  record HelpAsked(RoomId room, Private what) implements Event {}

  record HelpAnswered(RoomId room, PersonId by) implements Event {}

  record MoveAsked(Move move, Role role, PersonId person) implements Event {}

  /** {@code move} is the key of the move; what was agreed by it are events of their own. */
  record MoveAccepted(String move) implements Event {}

  /** {@code notSafe} keeps it off for the rest of the morning. */
  record MoveDeclined(String move, boolean notSafe) implements Event {}

  record MoveDone(String move) implements Event {}

  record MoveWithdrawn(String move) implements Event {}

  /** {@code open} are the items that gate the start and were not good. */
  record ReadyReported(RoomId room, List<ItemRef> open) implements Event {}

  /** {@code open} are the items that gate this step and were not good when it happened. */
  record StepReached(CaseId caseId, Step step, List<ItemRef> open) implements Event {}

  record ReasonGiven(CaseId caseId, DelayReason reason, Private said) implements Event {}

  record ReasonAgreed(CaseId caseId) implements Event {}

  record ReasonDisputed(CaseId caseId, DelayReason instead, Private said) implements Event {}

  record Noted(RoomId room, Private text) implements Event {}

  /** {@code scanned} is the code of the package that one drug was drawn from, or null. */
  record DrugsDrawn(
      CaseId caseId,
      List<DrawnDrug> drawn,
      String scanned,
      Private reason,
      PersonId by,
      PersonId witness)
      implements Event {}

  record DrugDiscarded(CaseId caseId, int syringe, PersonId by) implements Event {}

  record DrugCounted(CaseId caseId, ControlledEntry entry) implements Event {}

  /** {@code carried} lists the keys of what was good for the case before and outlasts it. */
  record NextCaseBegun(
      CaseId id,
      RoomId room,
      CaseId like,
      String technique,
      List<String> options,
      String sheet,
      List<String> carried)
      implements Event {}
}
