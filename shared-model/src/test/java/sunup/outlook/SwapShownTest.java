package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.Morning.CaseDay;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.SwapDay;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;
import sunup.wire.Audience;
import sunup.wire.Part.SwapPart;
import sunup.wire.SwapLeft;

/** A swap is for the rooms' people and the desk, and nothing of it is on the wall. */
class SwapShownTest {
  private static SwapPart swap(Suite suite, int room) {
    Shown shown = Shown.at(suite, "06:50", Foretold.NONE);
    return (SwapPart) shown.part("swap/" + room);
  }

  private static void swap(Suite suite, String clock, int one, int other) {
    Command swap = new Command.SwapCases(new CaseId("C" + one), new CaseId("C" + other));
    suite.desk(clock, swap, suite.morning().seq());
  }

  /** Case 1 by a list that asks for nothing of the airway any more. */
  private static Command withoutAirway(Suite suite) {
    CaseDay day = suite.morning().cases().get(new CaseId("C1"));
    ComposedSheet was = suite.morning().sheetOf(day);
    List<SheetItem> items =
        was.items().stream().filter(item -> item.section() != Section.AIRWAY).toList();
    ComposedSheet sheet = new ComposedSheet("changed", was.from(), items);
    return new Command.ChangeCase(day.plan().by(sheet.hash()), sheet);
  }

  @Test
  void shouldSayInBothRoomsWhatWasLeftThereUntilItIsConfirmed() {
    Suite suite = new Suite(2, "06:00").does("06:40", 1, Section.AIRWAY);
    suite.desk(
        "06:45", new Command.SwapCases(new CaseId("C1"), new CaseId("C2")), suite.morning().seq());

    SwapPart one = swap(suite, 1);
    assertThat(one.with()).isEqualTo("2");
    assertThat(one.at()).isEqualTo(Suite.at("06:45"));
    assertThat(one.left()).contains(new SwapLeft("airway.tubes", Section.AIRWAY, "2"));
    assertThat(one.confirmedAt()).isNull();
    assertThat(swap(suite, 2).left()).isEmpty();
    assertThat(one.audience()).isEqualTo(Audience.STAFF);

    suite.nurseDecides("06:48", 1, new Command.ConfirmSwap(new RoomId("1")));
    assertThat(swap(suite, 1).confirmedAt()).isEqualTo(Suite.at("06:48"));
    assertThat(swap(suite, 1).confirmedBy()).isEqualTo(Role.CIRCULATING);
    assertThat(swap(suite, 2).confirmedAt()).isNull();
  }

  @Test
  void shouldSendWhatIsLeftToTheRoomOfItsOwnCaseWhenSwappedAgainUnconfirmed() {
    Suite suite = new Suite(3, "06:00").does("06:40", 1, Section.AIRWAY);
    swap(suite, "06:42", 1, 2);
    suite.does("06:44", 1, Section.AIRWAY);
    swap(suite, "06:46", 2, 3);

    assertThat(swap(suite, 1).with()).isEqualTo("3");
    assertThat(swap(suite, 1).left())
        .contains(
            new SwapLeft("airway.tubes", Section.AIRWAY, "2"),
            new SwapLeft("airway.tubes", Section.AIRWAY, "3"));

    swap(suite, "06:47", 1, 3);
    assertThat(swap(suite, 1).left())
        .extracting(SwapLeft::to)
        .as("case 1 has come back, case 2 is where it was")
        .containsOnly("1", "3");
  }

  @Test
  void shouldStillSayWhatIsLeftWhenTheListOfItsCaseIsChangedOrCancelled() {
    Suite suite = new Suite(2, "06:00").does("06:40", 1, Section.AIRWAY);
    swap(suite, "06:42", 1, 2);
    List<SwapLeft> before = swap(suite, 1).left();
    suite.desk("06:43", withoutAirway(suite), suite.morning().seq());
    assertThat(before).isNotEmpty();
    assertThat(swap(suite, 1).left()).isEqualTo(before);

    suite.desk("06:44", new Command.CancelCase(new CaseId("C1"), null), suite.morning().seq());
    assertThat(swap(suite, 1).left())
        .hasSameSizeAs(before)
        .extracting(SwapLeft::to)
        .containsOnlyNulls();
  }

  /** Case 1 in another room, as a changed list says it. */
  private static Command inRoom(Suite suite, int room) {
    CaseDay day = suite.morning().cases().get(new CaseId("C1"));
    CasePlan moved = day.plan().in(new RoomId("" + room));
    return new Command.ChangeCase(moved, suite.morning().sheetOf(day));
  }

  @Test
  void shouldSayInBothRoomsWhatAMoveLeftAndWhatItLacks() {
    Suite suite = new Suite(2, "06:00").does("06:40", 1, Section.AIRWAY);
    suite.does("06:41", 2, Section.AIRWAY);
    suite.desk("06:42", new Command.CancelCase(new CaseId("C2"), null), suite.morning().seq());
    suite.desk("06:45", inRoom(suite, 2), suite.morning().seq());

    SwapPart left = swap(suite, 1);
    assertThat(left.way()).isEqualTo(SwapDay.Way.WENT);
    assertThat(left.left()).contains(new SwapLeft("airway.tubes", Section.AIRWAY, "2"));
    assertThat(left.lacks()).as("no case is here").isEmpty();

    SwapPart came = swap(suite, 2);
    assertThat(came.way()).isEqualTo(SwapDay.Way.CAME);
    assertThat(came.left())
        .as("made ready for the cancelled one")
        .contains(new SwapLeft("airway.tubes", Section.AIRWAY, null));
    assertThat(came.lacks()).contains("airway.tubes");

    suite.nurseDecides("06:48", 2, new Command.ConfirmSwap(new RoomId("2")));
    assertThat(swap(suite, 2).lacks()).isEmpty();
    assertThat(swap(suite, 1).confirmedAt()).isNull();
  }

  @Test
  void shouldNotTakeWhatIsNewlyAskedForAsMadeReadyElsewhere() {
    Suite suite = new Suite(2, "06:00");
    CaseDay whole = suite.morning().cases().get(new CaseId("C1"));
    ComposedSheet sheet = suite.morning().sheetOf(whole);
    suite.desk("06:30", withoutAirway(suite), suite.morning().seq());
    suite.does("06:40", 1, Section.MONITORS);
    suite.desk("06:42", new Command.CancelCase(new CaseId("C2"), null), suite.morning().seq());
    CasePlan moved = whole.plan().in(new RoomId("2")).by(sheet.hash());
    suite.desk("06:45", new Command.ChangeCase(moved, sheet), suite.morning().seq());

    assertThat(swap(suite, 2).lacks()).isNotEmpty().noneMatch(key -> key.startsWith("airway."));
  }
}
