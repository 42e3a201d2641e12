package sunup.review.facts;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.CaseId;
import sunup.board.Item;
import sunup.board.ItemRef;
import sunup.board.Morning;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.RoomDay;
import sunup.board.PersonId;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.board.Step;
import sunup.forecast.AsRun;
import sunup.forecast.AsRun.RoomRun;
import sunup.forecast.BadInput;
import sunup.outlook.Outlook;
import sunup.review.facts.AsRunFact.Piece;
import sunup.review.facts.Replayed.Told;

/** The as-run chains of a morning that is over, with what each piece rests on. */
final class Explain {
  private final Replayed played;
  private final Morning end;
  private final RolesOf roles;
  private final Map<String, RoomRun> runs = new HashMap<>();
  private String why;

  Explain(Replayed played) {
    this.played = played;
    end = played.end();
    roles = RolesOf.morning(end);
    try {
      long now = Math.max(end.lastRecordedAt(), end.closedAt());
      for (RoomRun run :
          AsRun.of(Outlook.input(asItWas(end), now, 1), new ToldPast(played)).rooms()) {
        runs.put(run.id(), run);
      }
    } catch (BadInput e) {
      why = e.getMessage();
    }
  }

  /** Who has gone home since had a part in it; what a room is used for since had none. */
  private static Morning asItWas(Morning m) {
    Map<PersonId, PersonDay> people = new LinkedHashMap<>();
    m.people()
        .forEach(
            (id, p) ->
                people.put(
                    id,
                    new PersonDay(
                        p.plan(),
                        p.arrivedAt(),
                        p.expectedAt(),
                        p.room(),
                        null,
                        p.lastWordAt(),
                        p.last())));
    Map<RoomId, RoomDay> rooms = new LinkedHashMap<>();
    m.rooms()
        .forEach(
            (id, r) ->
                rooms.put(
                    id,
                    new RoomDay(
                        r.id(),
                        r.caseId(),
                        RoomUse.FREE,
                        null,
                        null,
                        r.last(),
                        r.lastWordAt(),
                        r.readyAt(),
                        r.readyBy(),
                        r.readyOpen(),
                        r.taken(),
                        r.help(),
                        r.entered())));
    return new Morning(
        m.id(),
        m.phase(),
        m.seq(),
        m.settings(),
        m.beginsAt(),
        m.openedAt(),
        m.closedAt(),
        m.lastRecordedAt(),
        rooms,
        m.cases(),
        people,
        m.units(),
        m.places(),
        m.sheets(),
        m.roomItems(),
        m.caseItems(),
        m.notes(),
        // What was asked is no part of what happened, and drugs explain no minute.
        Map.of(),
        Map.of(),
        m.swaps(),
        m.learned(),
        Map.of());
  }

  /** The chain of a case that has started in its room. */
  AsRunFact of(CaseId caseId) {
    RoomId room = end.cases().get(caseId).plan().room();
    RoomRun run = runs.get(room.value());
    if (run == null) {
      return new AsRunFact(List.of(), why);
    }
    Step event = end.settings().startEvent();
    Told start = played.toldStep(caseId, event);
    // A start that nobody told is no better known than one that was told late.
    boolean untold = !end.cases().get(caseId).steps().containsKey(event);
    boolean startLate = untold || (start != null && start.late());
    List<Piece> pieces =
        run.pieces().stream()
            .map(p -> piece(p, room, caseId, startLate && p.to() == run.start()))
            .toList();
    return new AsRunFact(pieces, null);
  }

  private Piece piece(AsRun.Piece p, RoomId room, CaseId caseId, boolean startLate) {
    Item item = item(room, caseId, p.item());
    Told told = played.toldGood(item);
    boolean late = startLate || (told != null && told.late());
    boolean together = item != null && item.together();
    if (p.kind().equals("arrival") && p.thing() != null) {
      Told came = played.toldCame(new PersonId(p.thing()));
      late = startLate || (came != null && came.late());
      together = false;
    }
    Step step = item == null || end.sheetItem(item.ref()) == null ? null : marks(item);
    if (step != null) {
      Told reached = played.toldStep(caseId, step);
      late |= reached != null && reached.late();
    }
    return new Piece(
        p.kind(),
        p.item(),
        roles.thing(p.kind(), p.thing()),
        p.where(),
        p.from(),
        p.to(),
        p.lateMs(),
        p.implied(),
        late,
        together);
  }

  private Step marks(Item item) {
    return end.sheetItem(item.ref()).marks();
  }

  private Item item(RoomId room, CaseId caseId, String key) {
    if (key == null) {
      return null;
    }
    Item ofCase = end.item(ItemRef.of(caseId, key));
    return ofCase != null ? ofCase : end.item(ItemRef.of(room, key));
  }
}
