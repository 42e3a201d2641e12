package sunup.board;

import java.util.List;
import sunup.board.CaseDrugs.Syringe;
import sunup.board.Morning.CaseDay;
import sunup.drugs.ControlledCount;

/** What events about drugs make of the state. */
final class DrugFacts {
  private DrugFacts() {}

  static void drawn(Edit edit, Event.DrugsDrawn e) {
    CaseDay day = edit.caseDay(e.caseId());
    if (day == null) {
      return;
    }
    RoomId room = day.plan().room();
    List<Syringe> more =
        e.drawn().stream()
            .map(
                one ->
                    new Syringe(
                        one, room, e.by(), e.witness(), e.scanned(), e.reason(), false, null))
            .toList();
    edit.drugs(e.caseId(), drugs -> drugs.with(more));
    edit.room(room, r -> Days.withWord(r, edit.at()));
  }

  static void discarded(Edit edit, Event.DrugDiscarded e) {
    edit.drugs(
        e.caseId(),
        drugs ->
            e.syringe() < 0 || e.syringe() >= drugs.syringes().size()
                ? drugs
                : drugs.with(e.syringe(), s -> s.discarded(edit.at())));
  }

  static void counted(Edit edit, Event.DrugCounted e) {
    Actor by = edit.recorded.actor();
    boolean bySecond = e.entry().witness() != null && by != null && by.second() != null;
    edit.drugs(
        e.caseId(),
        drugs ->
            drugs.count().take(e.entry()) instanceof ControlledCount.Taken taken
                ? drugs.counted(taken.count(), bySecond)
                : drugs);
  }
}
