package sunup.ops.rehearsal;

import java.util.List;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.ItemRef;
import sunup.board.MorningPlan;
import sunup.board.PlaceId;
import sunup.board.Private;
import sunup.board.RoomId;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** What the desk hears and puts on the board, by the story. */
final class DeskNotes {
  static final String SCREEN = "rehearsal-desk";

  private DeskNotes() {}

  static void add(MorningPlan plan, Story story, List<Report> reports) {
    for (Story.Agreed a : story.agreed()) {
      CasePlan c = caseIn(plan, a.room());
      long to = Story.at(plan, a.to());
      reports.add(
          desk(plan, a.when(), new Command.AgreeLater(c.id(), to), "case/" + c.id().value()));
    }
    for (Story.Opens o : story.places()) {
      PlaceId place = new PlaceId(o.place());
      long at = Story.at(plan, o.at());
      reports.add(desk(plan, o.heard(), new Command.PlaceOpens(place, at), "place/" + place));
    }
    for (Story.Arrives a : story.arrivals()) {
      if (a.phoned() != null) {
        ItemRef ref = refOf(plan, caseIn(plan, a.room()), a.item());
        long at = Story.at(plan, a.at());
        Command said = new Command.ExpectItem(ref, at, Private.of(a.said()));
        reports.add(desk(plan, a.phoned(), said, null));
      }
    }
  }

  private static Report desk(MorningPlan plan, String when, Command command, String shown) {
    long at = Story.at(plan, when);
    return new Report(at, "desk", SCREEN, null, command, shown);
  }

  private static CasePlan caseIn(MorningPlan plan, RoomId room) {
    return plan.cases().stream().filter(c -> c.room().equals(room)).findFirst().orElseThrow();
  }

  private static ItemRef refOf(MorningPlan plan, CasePlan c, String key) {
    for (ComposedSheet sheet : plan.sheets()) {
      SheetItem item = sheet.hash().equals(c.sheet()) ? sheet.byKey().get(key) : null;
      if (item != null && item.belongs() == SheetItem.Belongs.ROOM) {
        return ItemRef.of(c.room(), key);
      }
    }
    return ItemRef.of(c.id(), key);
  }
}
