package sunup.board;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import sunup.board.Morning.Phase;
import sunup.board.Outcome.Refused;

/**
 * One morning as a state machine. Both functions are pure and total: no clock, no input or output,
 * no exception for any state, order or event. BOARD.md beside this module says the rules in words.
 */
public final class Board {
  private static final Map<Class<?>, BiFunction<Ask, Command, Outcome>> RULES = rules();
  private static final Map<Class<?>, BiConsumer<Edit, Event>> FACTS = facts();

  private Board() {}

  /** What an order makes happen on this morning, or why it is refused. */
  public static Outcome decide(Morning morning, Order order) {
    String problem = Wellformed.problem(order);
    if (problem != null) {
      return Ask.refuse(RefusalCode.BAD_COMMAND, problem);
    }
    Ask ask = new Ask(morning, order);
    CommandKind kind = CommandKind.of(order.command());
    Refused refused =
        Ask.first(Rights.check(ask, kind), phase(ask, kind), Meanwhile.check(ask, kind));
    return refused != null ? refused : RULES.get(kind.type()).apply(ask, order.command());
  }

  /**
   * The morning after one more event.
   *
   * @param seq the event's journal sequence
   */
  public static Morning apply(Morning morning, long seq, Recorded recorded) {
    Edit edit = new Edit(morning, seq, recorded);
    FACTS.get(recorded.event().getClass()).accept(edit, recorded.event());
    return edit.done();
  }

  private static Refused phase(Ask ask, CommandKind kind) {
    Morning morning = ask.morning;
    if (morning.phase() == Phase.NONE) {
      return kind == CommandKind.PLAN ? null : Ask.refuse(RefusalCode.NOT_PLANNED, null);
    }
    if (morning.closedAt() != null
        && ask.now > morning.closedAt() + PlanRules.TAKES_AFTER_CLOSING_MS) {
      return Ask.refuse(RefusalCode.MORNING_CLOSED, null);
    }
    return morning.phase() == Phase.DRAFT
            && !kind.isInDraft()
            && !Eve.takes(morning, ask.order.command())
        ? Ask.refuse(RefusalCode.NOT_OPEN, null)
        : null;
  }

  private static <C extends Command> void on(
      Map<Class<?>, BiFunction<Ask, Command, Outcome>> rules,
      Class<C> type,
      BiFunction<Ask, C, Outcome> rule) {
    rules.put(type, (ask, command) -> rule.apply(ask, type.cast(command)));
  }

  private static <E extends Event> void when(
      Map<Class<?>, BiConsumer<Edit, Event>> facts, Class<E> type, BiConsumer<Edit, E> fact) {
    facts.put(type, (edit, event) -> fact.accept(edit, type.cast(event)));
  }

  private static Map<Class<?>, BiFunction<Ask, Command, Outcome>> rules() {
    Map<Class<?>, BiFunction<Ask, Command, Outcome>> m = new LinkedHashMap<>();
    on(m, Command.Plan.class, PlanRules::plan);
    on(m, Command.OpenMorning.class, PlanRules::open);
    on(m, Command.CloseMorning.class, PlanRules::close);
    on(m, Command.AddCase.class, CaseRules::add);
    on(m, Command.ChangeCase.class, CaseRules::change);
    on(m, Command.SwapCases.class, CaseRules::swap);
    on(m, Command.ConfirmSwap.class, CaseRules::confirmSwap);
    on(m, Command.CancelCase.class, CaseRules::cancel);
    on(m, Command.AgreeLater.class, CaseRules::agreeLater);
    on(m, Command.SayRoom.class, ThingRules::sayRoom);
    on(m, Command.Arrive.class, PeopleRules::arrive);
    on(m, Command.AddPerson.class, PeopleRules::add);
    on(m, Command.ExpectPerson.class, PeopleRules::expect);
    on(m, Command.Join.class, PeopleRules::join);
    on(m, Command.Leave.class, PeopleRules::leave);
    on(m, Command.HandOver.class, PeopleRules::handOver);
    on(m, Command.Begin.class, ItemRules::begin);
    on(m, Command.Good.class, ItemRules::good);
    on(m, Command.Sweep.class, ItemRules::sweep);
    on(m, Command.Fault.class, ItemRules::fault);
    on(m, Command.TakeFault.class, ItemDecisions::takeFault);
    on(m, Command.Mend.class, ItemRules::mend);
    on(m, Command.Reopen.class, ItemDecisions::reopen);
    on(m, Command.LeaveOut.class, ItemDecisions::leaveOut);
    on(m, Command.ExpectItem.class, ItemDecisions::expect);
    on(m, Command.Undo.class, ItemDecisions::undo);
    on(m, Command.Claim.class, ThingRules::claim);
    on(m, Command.Release.class, ThingRules::release);
    on(m, Command.PromiseUnit.class, ThingRules::promise);
    on(m, Command.PlaceOpens.class, ThingRules::placeOpens);
    on(m, Command.TakeHoldup.class, TalkRules::takeHoldup);
    on(m, Command.AskHelp.class, TalkRules::askHelp);
    on(m, Command.AnswerHelp.class, TalkRules::answerHelp);
    on(m, Command.AskMove.class, MoveRules::ask);
    on(m, Command.AnswerMove.class, MoveRules::answer);
    on(m, Command.DoneMove.class, MoveRules::done);
    on(m, Command.WithdrawMove.class, MoveRules::withdraw);
    on(m, Command.ReportReady.class, StartRules::ready);
    on(m, Command.Reach.class, StartRules::reach);
    on(m, Command.GiveReason.class, StartRules::giveReason);
    on(m, Command.AgreeReason.class, StartRules::agree);
    on(m, Command.DisputeReason.class, StartRules::dispute);
    on(m, Command.AddNote.class, TalkRules::note);
    on(m, Command.DrawDrugs.class, DrugRules::draw);
    on(m, Command.DiscardDrug.class, DrugRules::discard);
    on(m, Command.CountDrug.class, DrugRules::count);
    on(m, Command.SetUpNext.class, NextCaseRules::begin);
    return m;
  }

  private static Map<Class<?>, BiConsumer<Edit, Event>> facts() {
    Map<Class<?>, BiConsumer<Edit, Event>> m = new LinkedHashMap<>();
    when(m, Event.MorningPlanned.class, CaseFacts::planned);
    when(m, Event.MorningOpened.class, CaseFacts::opened);
    when(m, Event.DurationsLearned.class, (edit, e) -> CaseFacts.learned(edit, e.learned()));
    when(m, Event.LessonsFrozen.class, (edit, e) -> CaseFacts.learned(edit, e.learned()));
    when(m, Event.MorningClosed.class, CaseFacts::closed);
    when(m, Event.CaseAdded.class, CaseFacts::added);
    when(m, Event.CaseChanged.class, CaseFacts::changed);
    when(m, Event.CasesSwapped.class, CaseFacts::swapped);
    when(m, Event.SwapConfirmed.class, CaseFacts::swapConfirmed);
    when(m, Event.CaseCancelled.class, CaseFacts::cancelled);
    when(m, Event.LaterAgreed.class, CaseFacts::laterAgreed);
    when(m, Event.RoomUsed.class, ThingFacts::roomUsed);
    when(m, Event.PersonAdded.class, PeopleFacts::added);
    when(m, Event.PersonArrived.class, PeopleFacts::arrived);
    when(m, Event.PersonExpected.class, PeopleFacts::expected);
    when(m, Event.PersonJoined.class, PeopleFacts::joined);
    when(m, Event.PersonLeft.class, PeopleFacts::left);
    when(m, Event.HandedOver.class, PeopleFacts::handedOver);
    when(m, Event.ItemBegun.class, ItemFacts::begun);
    when(m, Event.ItemGood.class, ItemFacts::good);
    when(m, Event.ItemWitnessed.class, ItemFacts::witnessed);
    when(m, Event.SectionSwept.class, ItemFacts::swept);
    when(m, Event.ItemFaulted.class, ItemFacts::faulted);
    when(m, Event.FaultTaken.class, ItemFacts::faultTaken);
    when(m, Event.ItemMended.class, ItemFacts::mended);
    when(m, Event.ItemReopened.class, ItemFacts::reopened);
    when(m, Event.ItemLeftOut.class, ItemFacts::leftOut);
    when(m, Event.ItemExpected.class, ItemFacts::expected);
    when(m, Event.WordKept.class, ItemFacts::kept);
    when(m, Event.TouchUndone.class, ItemFacts::undone);
    when(m, Event.UnitClaimed.class, ThingFacts::claimed);
    when(m, Event.UnitReleased.class, ThingFacts::released);
    when(m, Event.UnitPromised.class, ThingFacts::promised);
    when(m, Event.PlaceOpening.class, ThingFacts::placeOpens);
    when(m, Event.HoldupTaken.class, TalkFacts::holdupTaken);
    when(m, Event.HelpAsked.class, TalkFacts::helpAsked);
    when(m, Event.HelpAnswered.class, TalkFacts::helpAnswered);
    when(m, Event.MoveAsked.class, MoveFacts::asked);
    when(m, Event.MoveAccepted.class, MoveFacts::accepted);
    when(m, Event.MoveDeclined.class, MoveFacts::declined);
    when(m, Event.MoveDone.class, MoveFacts::done);
    when(m, Event.MoveWithdrawn.class, MoveFacts::withdrawn);
    when(m, Event.ReadyReported.class, StartFacts::ready);
    when(m, Event.StepReached.class, StartFacts::reached);
    when(m, Event.ReasonGiven.class, StartFacts::reasonGiven);
    when(m, Event.ReasonAgreed.class, StartFacts::reasonAgreed);
    when(m, Event.ReasonDisputed.class, StartFacts::reasonDisputed);
    when(m, Event.Noted.class, TalkFacts::noted);
    when(m, Event.DrugsDrawn.class, DrugFacts::drawn);
    when(m, Event.DrugDiscarded.class, DrugFacts::discarded);
    when(m, Event.DrugCounted.class, DrugFacts::counted);
    when(m, Event.NextCaseBegun.class, NextCaseFacts::begun);
    return m;
  }
}
