package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.wire.Audience;
import sunup.wire.Part.SwapPart;
import sunup.wire.SwapLeft;

/** A swap is for the rooms' people and the desk, and nothing of it is on the wall. */
class SwapShownTest {
  private static SwapPart swap(Suite suite, int room) {
    Shown shown = Shown.at(suite, "06:50", Foretold.NONE);
    return (SwapPart) shown.part("swap/" + room);
  }

  @Test
  void shouldSayInBothRoomsWhatWasLeftThereUntilItIsConfirmed() {
    Suite suite = new Suite(2, "06:00").does("06:40", 1, Section.AIRWAY);
    suite.desk(
        "06:45", new Command.SwapCases(new CaseId("C1"), new CaseId("C2")), suite.morning().seq());

    SwapPart one = swap(suite, 1);
    assertThat(one.with()).isEqualTo("2");
    assertThat(one.at()).isEqualTo(Suite.at("06:45"));
    assertThat(one.left()).contains(new SwapLeft("airway.tubes", Section.AIRWAY));
    assertThat(one.confirmedAt()).isNull();
    assertThat(swap(suite, 2).left()).isEmpty();
    assertThat(one.audience()).isEqualTo(Audience.STAFF);

    suite.nurse("06:48", 1, new Command.ConfirmSwap(new RoomId("1")));
    assertThat(swap(suite, 1).confirmedAt()).isEqualTo(Suite.at("06:48"));
    assertThat(swap(suite, 1).confirmedBy()).isEqualTo(Role.CIRCULATING);
    assertThat(swap(suite, 2).confirmedAt()).isNull();
  }
}
