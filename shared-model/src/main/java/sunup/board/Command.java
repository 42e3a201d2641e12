package sunup.board;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonSubTypes.Type;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.math.BigDecimal;
import java.util.List;
import sunup.codec.Maybe;

/**
 * What somebody asks the morning to record or to decide. Observations are accepted whatever
 * happened meanwhile; decisions need a current view ({@link Order#seen()}). Times are epoch
 * milliseconds.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
@JsonSubTypes({
  @Type(value = Command.Plan.class, name = "plan"),
  @Type(value = Command.OpenMorning.class, name = "open-morning"),
  @Type(value = Command.CloseMorning.class, name = "close-morning"),
  @Type(value = Command.AddCase.class, name = "add-case"),
  @Type(value = Command.ChangeCase.class, name = "change-case"),
  @Type(value = Command.SwapCases.class, name = "swap-cases"),
  @Type(value = Command.ConfirmSwap.class, name = "confirm-swap"),
  @Type(value = Command.CancelCase.class, name = "cancel-case"),
  @Type(value = Command.AgreeLater.class, name = "agree-later"),
  @Type(value = Command.SayRoom.class, name = "say-room"),
  @Type(value = Command.AddPerson.class, name = "add-person"),
  @Type(value = Command.Arrive.class, name = "arrive"),
  @Type(value = Command.ExpectPerson.class, name = "expect-person"),
  @Type(value = Command.Join.class, name = "join"),
  @Type(value = Command.Leave.class, name = "leave"),
  @Type(value = Command.HandOver.class, name = "hand-over"),
  @Type(value = Command.Begin.class, name = "begin"),
  @Type(value = Command.Good.class, name = "good"),
  @Type(value = Command.Sweep.class, name = "sweep"),
  @Type(value = Command.Fault.class, name = "fault"),
  @Type(value = Command.TakeFault.class, name = "take-fault"),
  @Type(value = Command.Mend.class, name = "mend"),
  @Type(value = Command.Reopen.class, name = "reopen"),
  @Type(value = Command.LeaveOut.class, name = "leave-out"),
  @Type(value = Command.ExpectItem.class, name = "expect-item"),
  @Type(value = Command.Undo.class, name = "undo"),
  @Type(value = Command.Claim.class, name = "claim"),
  @Type(value = Command.Release.class, name = "release"),
  @Type(value = Command.PromiseUnit.class, name = "promise"),
  @Type(value = Command.PlaceOpens.class, name = "place-opens"),
  @Type(value = Command.TakeHoldup.class, name = "take-holdup"),
  @Type(value = Command.AskHelp.class, name = "ask-help"),
  @Type(value = Command.AnswerHelp.class, name = "answer-help"),
  @Type(value = Command.AskMove.class, name = "ask-move"),
  @Type(value = Command.AnswerMove.class, name = "answer-move"),
  @Type(value = Command.DoneMove.class, name = "done-move"),
  @Type(value = Command.WithdrawMove.class, name = "withdraw-move"),
  @Type(value = Command.ReportReady.class, name = "report-ready"),
  @Type(value = Command.Reach.class, name = "reach"),
  @Type(value = Command.GiveReason.class, name = "give-reason"),
  @Type(value = Command.AgreeReason.class, name = "agree-reason"),
  @Type(value = Command.DisputeReason.class, name = "dispute-reason"),
  @Type(value = Command.AddNote.class, name = "add-note"),
  @Type(value = Command.DrawDrugs.class, name = "draw-drugs"),
  @Type(value = Command.DiscardDrug.class, name = "discard-drug"),
  @Type(value = Command.CountDrug.class, name = "count-drug"),
  @Type(value = Command.SetUpNext.class, name = "set-up-next"),
})
public sealed interface Command {
  /** Makes the draft of a morning, or replaces a draft that is not yet open. */
  record Plan(MorningPlan plan) implements Command {}

  /** Opens the draft: from now on people report. */
  record OpenMorning() implements Command {}

  /** Closes the morning. Commands are still taken for seven days. */
  record CloseMorning() implements Command {}

  /** Adds a first case to a room that has none. */
  record AddCase(CasePlan plan, sunup.sheets.ComposedSheet sheet) implements Command {}

  /** Replaces what is planned for a case; what the new sheet still asks for keeps its state. */
  record ChangeCase(CasePlan plan, sunup.sheets.ComposedSheet sheet) implements Command {}

  /** Swaps the rooms of two cases: what belongs to the case is void where it was made. */
  record SwapCases(CaseId one, CaseId other) implements Command {}

  /** The room knows that another case is in it now; what lay ready there has been dealt with. */
  record ConfirmSwap(RoomId room) implements Command {}

  /** Cancels a case. */
  record CancelCase(CaseId caseId, @Maybe Private reason) implements Command {}

  /** An agreed later start, a stagger; {@code at} null goes back to the booked time. */
  record AgreeLater(CaseId caseId, @Maybe Long at) implements Command {}

  /** What the room is used for, and until when it is expected to be. */
  record SayRoom(RoomId room, RoomUse use, @Maybe Long until) implements Command {}

  /** A person joins the morning whom its plan did not have: a stand-in, from a time on. */
  record AddPerson(PersonPlan plan) implements Command {}

  /** A person has come; {@code room} where he or she begins, or null. */
  record Arrive(PersonId person, @Maybe RoomId room) implements Command {}

  /** A person not here yet is expected at another time than planned ("phoned, says 07:20"). */
  record ExpectPerson(PersonId person, long at, @Maybe Private said) implements Command {}

  /** A person goes to a room. */
  record Join(PersonId person, RoomId room) implements Command {}

  /**
   * A person leaves the room, or the morning if {@code room} is null; one who has not come is not
   * coming.
   */
  record Leave(PersonId person, @Maybe RoomId room) implements Command {}

  /** One person's rooms and work go to another. */
  record HandOver(PersonId from, PersonId to, RoomId room) implements Command {}

  /** Work on an item has begun. */
  record Begin(ItemRef item, @Maybe PersonId by) implements Command {}

  /** An item is good. */
  record Good(ItemRef item, Evidence evidence, @Maybe PersonId by, @Maybe PersonId witness)
      implements Command {}

  /**
   * A section was gone through; all of it is good but the exceptions.
   *
   * @param next the room's later case that it was gone through for; absent for the first one
   */
  record Sweep(
      RoomId room,
      Section section,
      @Maybe List<ItemRef> except,
      @Maybe PersonId by,
      @Maybe CaseId next)
      implements Command {
    public Sweep {
      except = except == null ? List.of() : List.copyOf(except);
    }

    /** For the room's first case. */
    public Sweep(RoomId room, Section section, List<ItemRef> except, PersonId by) {
      this(room, section, except, by, null);
    }
  }

  /** Something is wrong with an item. */
  record Fault(ItemRef item, @Maybe Private what) implements Command {}

  /** Somebody goes to mend a fault. */
  record TakeFault(ItemRef item, @Maybe PersonId by) implements Command {}

  /** A fault is mended; the item is open again and to be looked at. */
  record Mend(ItemRef item) implements Command {}

  /** An item that was good is not any more. */
  record Reopen(ItemRef item, @Maybe Private why) implements Command {}

  /** An item is left out for this case, with a reason. Never the sheet's core. */
  record LeaveOut(ItemRef item, @Maybe Private reason) implements Command {}

  /** An item that comes by itself (patient, surgeon, result) is expected at this time. */
  record ExpectItem(ItemRef item, long at, @Maybe Private said) implements Command {}

  /** Takes back a mis-touch of one's own screen: the given command's effect on items. */
  record Undo(CommandId command) implements Command {}

  /** A piece of equipment is now with the room. */
  record Claim(UnitId unit, RoomId room) implements Command {}

  /** A piece of equipment is free again. */
  record Release(UnitId unit) implements Command {}

  /** The next free unit of this one's kind goes to the room first; null takes the promise back. */
  record PromiseUnit(UnitId unit, @Maybe RoomId room) implements Command {}

  /** A place opens at this time, earlier or later than planned. */
  record PlaceOpens(PlaceId place, long at) implements Command {}

  /** Somebody takes what holds a room up: what was said, and when to look again. */
  record TakeHoldup(RoomId room, String holdup, @Maybe Private said, @Maybe Long lookAgainAt)
      implements Command {}

  /** "Send someone, not urgent". Never for emergencies. */
  record AskHelp(RoomId room, @Maybe Private what) implements Command {}

  /** Somebody goes. */
  record AnswerHelp(RoomId room, @Maybe PersonId by) implements Command {}

  /** Somebody is asked for a move: one person, or any of a role. */
  record AskMove(Move move, @Maybe Role role, @Maybe PersonId person) implements Command {}

  /** What the one who was asked says; {@code move} is its key. */
  record AnswerMove(String move, MoveAnswer answer) implements Command {}

  /** A move that was asked or accepted is done. */
  record DoneMove(String move) implements Command {}

  /** A move is not asked any more. */
  record WithdrawMove(String move) implements Command {}

  /** The room reports itself ready; what is still open is kept with it. */
  record ReportReady(RoomId room) implements Command {}

  /** A step of the start chain happened. Never refused for what is open. */
  record Reach(CaseId caseId, Step step) implements Command {}

  /** The reported cause of a late start. */
  record GiveReason(CaseId caseId, DelayReason reason, @Maybe Private said) implements Command {}

  /** The other side agrees with the reported cause. */
  record AgreeReason(CaseId caseId) implements Command {}

  /** The other side sees another cause. */
  record DisputeReason(CaseId caseId, DelayReason instead, @Maybe Private said)
      implements Command {}

  /** A note on a room, or on the morning if {@code room} is null. */
  record AddNote(@Maybe RoomId room, @Maybe Private text) implements Command {}

  /**
   * Drugs of the approved list are drawn up for a case and labelled.
   *
   * @param drugs their names; may be empty if a scan says which
   * @param scan a package's code as it was scanned, of one drug
   * @param reason why it is used although it stopped; two people then sign
   */
  record DrawDrugs(
      CaseId caseId,
      @Maybe List<String> drugs,
      @Maybe String scan,
      @Maybe Private reason,
      @Maybe PersonId by,
      @Maybe PersonId witness)
      implements Command {
    public DrawDrugs {
      drugs = drugs == null ? List.of() : List.copyOf(drugs);
    }
  }

  /** A syringe is thrown away; a controlled drug is counted as well. */
  record DiscardDrug(CaseId caseId, int syringe, @Maybe PersonId by) implements Command {}

  /**
   * An entry into the count of a case's controlled drugs.
   *
   * @param drug its name; not needed to strike
   * @param units ampoules, of what is drawn or returned
   * @param micrograms of what is given or wasted
   * @param entry the number of the entry that is struck
   */
  record CountDrug(
      CaseId caseId,
      CountKind kind,
      @Maybe String drug,
      @Maybe Integer units,
      @Maybe BigDecimal micrograms,
      @Maybe Integer entry,
      @Maybe Private why,
      @Maybe PersonId by,
      @Maybe PersonId witness)
      implements Command {}

  /**
   * Once a room has started: the set-up of its next case begins, by the list of a first case of
   * this morning. What outlasts a case and is good comes over; all else is open.
   *
   * @param after the later case that the screen showed in the room, or null if it showed none: that
   *     one's set-up is put away by this, and no other's
   */
  record SetUpNext(RoomId room, CaseId like, @Maybe CaseId after) implements Command {}
}
