package sunup.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.Reason;
import sunup.board.Outcome.Refused;

/** Ready reported, the start chain, and the reported cause of a late start. */
final class StartRules {
  private StartRules() {}

  static Outcome ready(Ask ask, Command.ReportReady c) {
    Refused refused =
        Ask.first(
            ask.unknown(c.room()),
            Rights.checkRoom(ask, c.room()),
            Rights.checkSupervised(ask, c.room()));
    if (refused != null) {
      return refused;
    }
    CaseDay day = ask.morning.caseIn(c.room());
    if (day == null || day.cancelled()) {
      return Ask.refuse(
          RefusalCode.CASE_CANCELLED, "There is no first case to be ready for: add one first.");
    }
    List<ItemRef> open = new ArrayList<>();
    // Where the start is wheels in, the set-up that induction needs is still part of "ready".
    Step start = ask.morning.settings().startEvent();
    Step until = start.compareTo(Step.INDUCTION) < 0 ? Step.INDUCTION : start;
    for (Placed placed : ask.morning.gating(day.plan().id(), until, ask.now)) {
      // The start chain's own items come after "ready".
      if (placed.sheet().section() != Section.START) {
        open.add(placed.ref());
      }
    }
    return ask.accept(new Event.ReadyReported(c.room(), List.copyOf(open)));
  }

  /** A step happened: never refused for what is open, only kept with it. */
  static Outcome reach(Ask ask, Command.Reach c) {
    Refused refused = ask.unknown(c.caseId());
    if (refused != null) {
      return refused;
    }
    CaseDay day = ask.morning.cases().get(c.caseId());
    Long before = day.steps().get(c.step());
    if (before != null && before <= ask.at) {
      return ask.accept();
    }
    List<Event> events = new ArrayList<>();
    events.add(reached(ask, day, c.step()));
    for (Placed placed : ask.morning.itemsOf(day.plan().room())) {
      boolean marks =
          placed.sheet().marks() == c.step() && c.caseId().equals(placed.ref().caseId());
      if (marks && !isSettled(placed.item().state())) {
        events.add(
            new Event.ItemGood(
                placed.ref(),
                new Evidence.Touch(),
                ask.order.actor().person(),
                null,
                List.of("by-step")));
      }
    }
    return ask.accept(events);
  }

  private static boolean isSettled(ItemState state) {
    return state == ItemState.GOOD || state == ItemState.LEFT_OUT;
  }

  static Event reached(Ask ask, CaseDay day, Step step) {
    return new Event.StepReached(
        day.plan().id(), step, Gates.refs(ask.morning.gating(day.plan().id(), step, ask.at)));
  }

  static Outcome giveReason(Ask ask, Command.GiveReason c) {
    Refused refused = ask.unknown(c.caseId());
    return refused != null
        ? refused
        : ask.accept(new Event.ReasonGiven(c.caseId(), c.reason(), c.said()));
  }

  static Outcome agree(Ask ask, Command.AgreeReason c) {
    Refused refused = otherSide(ask, c.caseId());
    if (refused != null) {
      return refused;
    }
    return ask.morning.cases().get(c.caseId()).reason().agreed()
        ? ask.accept()
        : ask.accept(new Event.ReasonAgreed(c.caseId()));
  }

  static Outcome dispute(Ask ask, Command.DisputeReason c) {
    Refused refused = otherSide(ask, c.caseId());
    return refused != null
        ? refused
        : ask.accept(new Event.ReasonDisputed(c.caseId(), c.instead(), c.said()));
  }

  /** Agreeing and disputing are the other side's: another person, or at least another role. */
  private static Refused otherSide(Ask ask, CaseId caseId) {
    Refused unknown = ask.unknown(caseId);
    if (unknown != null) {
      return unknown;
    }
    Reason reason = ask.morning.cases().get(caseId).reason();
    if (reason == null) {
      return Ask.refuse(RefusalCode.NO_REASON, null);
    }
    PersonId signer = ask.order.actor().person();
    boolean bothSigned = signer != null && reason.person() != null;
    boolean same =
        bothSigned ? signer.equals(reason.person()) : Objects.equals(reason.by(), ask.role());
    return same ? Ask.refuse(RefusalCode.SAME_PERSON, "the other side agrees or disputes") : null;
  }
}
