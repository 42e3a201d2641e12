package sunup.board;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.Reason;
import sunup.board.Morning.Said;

/** What events of the start make of the state. */
final class StartFacts {
  private StartFacts() {}

  static void ready(Edit edit, Event.ReadyReported e) {
    edit.room(e.room(), r -> Days.withReady(r, edit.at(), edit.role(), e.open(), edit.touch));
    Words.ofRoom(edit, e.room());
  }

  static void reached(Edit edit, Event.StepReached e) {
    CaseDay day = edit.caseDay(e.caseId());
    if (day == null) {
      return;
    }
    Map<Step, Long> steps = new EnumMap<>(Step.class);
    steps.putAll(day.steps());
    steps.merge(e.step(), edit.at(), Math::min);
    Map<Step, Said> by = new EnumMap<>(Step.class);
    by.putAll(day.saidBy());
    by.put(e.step(), new Said(edit.recorded.command(), edit.touch.screen(), e.open()));
    put(edit, day, steps, by);
    if (e.step() == Step.SENT_FOR) {
      Words.ofPeople(edit, null);
    } else {
      Words.ofRoom(edit, day.plan().room());
    }
  }

  /** A step was told by mistake: what the command said of steps is taken back. */
  static void takenBack(Edit edit, CaseDay day, CommandId undone) {
    Map<Step, Long> steps = new EnumMap<>(Step.class);
    Map<Step, Said> by = new EnumMap<>(Step.class);
    day.saidBy()
        .forEach(
            (step, said) -> {
              if (!undone.equals(said.command())) {
                steps.put(step, day.steps().get(step));
                by.put(step, said);
              }
            });
    if (steps.size() != day.steps().size()) {
      put(edit, day, steps, by);
    }
  }

  private static void put(Edit edit, CaseDay day, Map<Step, Long> steps, Map<Step, Said> by) {
    Set<ItemRef> flagged = new LinkedHashSet<>();
    by.values().forEach(said -> flagged.addAll(said.open()));
    edit.put(
        Days.withSteps(
            day,
            Collections.unmodifiableMap(steps),
            Collections.unmodifiableMap(by),
            List.copyOf(flagged),
            edit.touch));
  }

  static void reasonGiven(Edit edit, Event.ReasonGiven e) {
    Reason reason =
        new Reason(e.reason(), e.said(), edit.role(), edit.signer(), edit.at(), false, null);
    edit.caseDay(e.caseId(), c -> Days.withReason(c, reason, edit.touch));
  }

  static void reasonAgreed(Edit edit, Event.ReasonAgreed e) {
    edit.caseDay(
        e.caseId(),
        c ->
            c.reason() == null
                ? c
                : Days.withReason(c, settled(c.reason(), true, null), edit.touch));
  }

  static void reasonDisputed(Edit edit, Event.ReasonDisputed e) {
    edit.caseDay(
        e.caseId(),
        c ->
            c.reason() == null
                ? c
                : Days.withReason(c, settled(c.reason(), false, e.instead()), edit.touch));
  }

  private static Reason settled(Reason r, boolean agreed, DelayReason instead) {
    return new Reason(r.reason(), r.said(), r.by(), r.person(), r.at(), agreed, instead);
  }
}
