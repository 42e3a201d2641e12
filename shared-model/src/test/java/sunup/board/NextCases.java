package sunup.board;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import sunup.codec.Json;
import sunup.sheets.ComposedSheet;

/** The fixture's morning with a cylinder that, once read, is good for the room's next case too. */
final class NextCases {
  static final CaseId SECOND = new CaseId("1.2");

  private NextCases() {}

  /** Opened at half past six. */
  static Day open() {
    return new Day()
        .at(Fixture.BEGIN - 60 * Fixture.MINUTE)
        .by(Fixture.DESK, new Command.Plan(plan()))
        .at(Fixture.BEGIN)
        .by(Fixture.DESK, new Command.OpenMorning());
  }

  /** Bag looked at, cylinder read at 06:40; the first case in room 1 is induced at 07:30. */
  static Day started() {
    return open()
        .minute(9)
        .by(Fixture.ANAESTHETIST_1, good("machine.bag", new Evidence.Touch()))
        .minute(10)
        .by(Fixture.ANAESTHETIST_1, good("machine.cylinder", reading(180)))
        .minute(60)
        .by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.INDUCTION));
  }

  static Evidence reading(double bar) {
    return new Evidence.Reading(bar, "bar", true);
  }

  private static Command good(String key, Evidence evidence) {
    return new Command.Good(Fixture.in(Fixture.R1, key), evidence, null, null);
  }

  private static MorningPlan plan() {
    MorningPlan p = Fixture.plan();
    List<ComposedSheet> sheets = p.sheets().stream().map(NextCases::outlasting).toList();
    return new MorningPlan(
        p.id(),
        p.settings(),
        p.rooms(),
        p.cases(),
        p.people(),
        p.units(),
        p.places(),
        sheets,
        p.beginsAt());
  }

  private static ComposedSheet outlasting(ComposedSheet sheet) {
    ObjectNode tree = Json.mapper().valueToTree(sheet);
    tree.get("items")
        .forEach(
            item -> {
              if (item.get("key").asText().equals("machine.cylinder")) {
                ((ObjectNode) item.get("life")).put("nextCase", true);
              }
            });
    return Json.mapper().convertValue(tree, ComposedSheet.class);
  }
}
