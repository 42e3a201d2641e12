package sunup.board;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Every kind of command: how it stands to what happened meanwhile, and whether a draft takes it.
 * Who may give it is in {@link Rights}.
 */
public enum CommandKind {
  PLAN(Command.Plan.class, Manner.ENTRY, true),
  OPEN_MORNING(Command.OpenMorning.class, Manner.ENTRY, true),
  CLOSE_MORNING(Command.CloseMorning.class, Manner.ENTRY, false),
  ADD_CASE(Command.AddCase.class, Manner.ENTRY, true),
  CHANGE_CASE(Command.ChangeCase.class, Manner.DECISION, true),
  SWAP_CASES(Command.SwapCases.class, Manner.DECISION, true),
  CONFIRM_SWAP(Command.ConfirmSwap.class, Manner.DECISION, false),
  CANCEL_CASE(Command.CancelCase.class, Manner.DECISION, true),
  AGREE_LATER(Command.AgreeLater.class, Manner.DECISION, true),
  SAY_ROOM(Command.SayRoom.class, Manner.ENTRY, true),
  ADD_PERSON(Command.AddPerson.class, Manner.ENTRY, true),
  ARRIVE(Command.Arrive.class, Manner.OBSERVATION, false),
  EXPECT_PERSON(Command.ExpectPerson.class, Manner.ENTRY, true),
  JOIN(Command.Join.class, Manner.OBSERVATION, false),
  LEAVE(Command.Leave.class, Manner.OBSERVATION, false),
  HAND_OVER(Command.HandOver.class, Manner.OBSERVATION, false),
  BEGIN(Command.Begin.class, Manner.OBSERVATION, false),
  GOOD(Command.Good.class, Manner.OBSERVATION, false),
  SWEEP(Command.Sweep.class, Manner.OBSERVATION, false),
  FAULT(Command.Fault.class, Manner.OBSERVATION, false),
  TAKE_FAULT(Command.TakeFault.class, Manner.ENTRY, false),
  MEND(Command.Mend.class, Manner.OBSERVATION, false),
  REOPEN(Command.Reopen.class, Manner.DECISION, false),
  LEAVE_OUT(Command.LeaveOut.class, Manner.DECISION, false),
  EXPECT_ITEM(Command.ExpectItem.class, Manner.ENTRY, true),
  UNDO(Command.Undo.class, Manner.ENTRY, true),
  CLAIM(Command.Claim.class, Manner.DECISION, false),
  RELEASE(Command.Release.class, Manner.DECISION, false),
  PROMISE_UNIT(Command.PromiseUnit.class, Manner.DECISION, true),
  PLACE_OPENS(Command.PlaceOpens.class, Manner.ENTRY, true),
  TAKE_HOLDUP(Command.TakeHoldup.class, Manner.ENTRY, true),
  ASK_HELP(Command.AskHelp.class, Manner.ENTRY, false),
  ANSWER_HELP(Command.AnswerHelp.class, Manner.ENTRY, false),
  ASK_MOVE(Command.AskMove.class, Manner.ENTRY, false),
  ANSWER_MOVE(Command.AnswerMove.class, Manner.ENTRY, false),
  DONE_MOVE(Command.DoneMove.class, Manner.ENTRY, false),
  WITHDRAW_MOVE(Command.WithdrawMove.class, Manner.ENTRY, false),
  REPORT_READY(Command.ReportReady.class, Manner.OBSERVATION, false),
  REACH(Command.Reach.class, Manner.OBSERVATION, true),
  GIVE_REASON(Command.GiveReason.class, Manner.ENTRY, false),
  AGREE_REASON(Command.AgreeReason.class, Manner.DECISION, false),
  DISPUTE_REASON(Command.DisputeReason.class, Manner.DECISION, false),
  ADD_NOTE(Command.AddNote.class, Manner.ENTRY, true),
  DRAW_DRUGS(Command.DrawDrugs.class, Manner.OBSERVATION, false),
  DISCARD_DRUG(Command.DiscardDrug.class, Manner.OBSERVATION, false),
  COUNT_DRUG(Command.CountDrug.class, Manner.OBSERVATION, false),
  SET_UP_NEXT(Command.SetUpNext.class, Manner.ENTRY, false);

  private static final Map<Class<?>, CommandKind> BY_TYPE = new LinkedHashMap<>();

  static {
    for (CommandKind kind : values()) {
      BY_TYPE.put(kind.type, kind);
    }
  }

  private final Class<? extends Command> type;
  private final Manner manner;
  private final boolean inDraft;

  CommandKind(Class<? extends Command> type, Manner manner, boolean inDraft) {
    this.type = type;
    this.manner = manner;
    this.inDraft = inDraft;
  }

  public static CommandKind of(Command command) {
    return BY_TYPE.get(command.getClass());
  }

  /** The kind of this word, as a command's type is written. */
  public static Optional<CommandKind> named(String word) {
    return BY_TYPE.values().stream().filter(kind -> kind.word().equals(word)).findFirst();
  }

  /** As a command's type is written: {@code count-drug}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public Class<? extends Command> type() {
    return type;
  }

  public Manner manner() {
    return manner;
  }

  /**
   * True if a draft takes it: what can be mended the evening before. Of some items it takes more,
   * see {@link Eve}.
   */
  public boolean isInDraft() {
    return inDraft;
  }
}
