package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Command;
import sunup.board.Evidence;
import sunup.board.PersonId;
import sunup.board.Private;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.codec.Json;
import sunup.sheets.ComposedSheet;
import sunup.wire.Part.SignPart;

/** The desk sees early what is not as planned, whatever else holds the room up more. */
class SignsTest {
  private static final String NOT_HERE = "patient in holding: not yet";
  private static final String NO_WORD = "no word from anaesthetist";

  @Test
  void shouldSayWhichPatientsAreMissedInOneLineFromTheMomentTheyUsuallyCome() {
    Suite suite = suite().holding("06:05", here(1));
    assertThat(sign(suite, "06:14", NOT_HERE)).isNull();
    SignPart sign = sign(suite, "06:16", NOT_HERE);
    assertThat(sign.rooms()).containsExactly("2", "3");
    assertThat(sign.actBy()).isEqualTo(Suite.at("06:30"));
  }

  @Test
  void shouldMissNoPatientsWhereNobodyReportsThatTheyCome() {
    assertThat(sign(suite(), "06:50", NOT_HERE)).isNull();
  }

  @Test
  void shouldSayThatSomebodyIsAnnouncedForTooLateAsSoonAsItIsKnown() {
    Suite suite = suite().holding("06:05", here(1));
    suite.desk(
        "06:10",
        new Command.ExpectItem(
            Suite.ofCase(2, "surgeon.seen"), Suite.at("07:40"), Private.of("late")),
        0);
    assertThat(sign(suite, "06:11", "surgeon seen in the building: expected 07:40").rooms())
        .containsExactly("2");
  }

  @Test
  void shouldMissPeopleOfTheRoomsOnceTheyAreLaterThanNineInTen() {
    Suite suite = suite();
    suite.station("06:30", 1, new Command.Arrive(new PersonId("A1"), new RoomId("1")));
    assertThat(sign(suite, "06:39", NO_WORD)).isNull();
    assertThat(sign(suite, "06:41", NO_WORD).rooms()).containsExactly("2", "3");
  }

  @Test
  void shouldShowAnyFaultUntilSomebodyTakesIt() {
    Suite suite = suite();
    suite.holding(
        "06:20",
        new Command.Fault(Suite.ofCase(2, "patient.papers"), Private.of("result missing")));
    String words = "identity, fasting, allergy, results, tests: fault, nobody on it";
    SignPart sign = sign(suite, "06:21", words);
    assertThat(sign.rooms()).containsExactly("2");
    assertThat(sign.actBy()).isEqualTo(Suite.at("06:22"));
    suite.desk(
        "06:22", new Command.TakeFault(Suite.ofCase(2, "patient.papers"), new PersonId("H1")));
    assertThat(sign(suite, "06:23", words)).isNull();
  }

  @Test
  void shouldSayThatAPlaceOpensTooLateForARoom() {
    String words = "controlled drugs fetched, counted, signed by two: pharmacy opens 07:25";
    assertThat(sign(new Suite(3, "07:25"), "06:20", words).rooms()).contains("1", "2");
    assertThat(signs(new Suite(3, "06:40"), "06:20"))
        .extracting(SignPart::words)
        .noneMatch(w -> w.contains("pharmacy"));
  }

  @Test
  void shouldReckonWithCleaningAfterARoomIsUsed() {
    Suite suite = suite();
    suite.desk(
        "06:10", new Command.SayRoom(new RoomId("2"), RoomUse.OCCUPIED, Suite.at("06:40")), 0);
    String words = "room in use until 06:40, then cleaning";
    assertThat(sign(suite, "06:15", words).rooms()).containsExactly("2");
    long used =
        Outlook.input(suite.morning(), Suite.at("06:15"), 64).rooms().get(1).occupiedFor().usual();
    assertThat(used).isEqualTo(45 * FirstSettings.MINUTE);
  }

  @Test
  void shouldNotCallAWayLongThatNobodyHasBegunBecauseTheSheetPutsNothingBeforeIt() {
    assertThat(signs(Suite.changed(SignsTest::nothingBeforeTheWay), "06:20"))
        .extracting(SignPart::words)
        .noneMatch(words -> words.contains("longer than usual"));
  }

  private static ComposedSheet nothingBeforeTheWay(ComposedSheet sheet) {
    JsonNode tree = Json.mapper().valueToTree(sheet);
    for (JsonNode item : tree.get("items")) {
      if (item.get("key").asText().equals("start.transport")) {
        ((ObjectNode) item).putArray("after");
      }
    }
    return Json.mapper().convertValue(tree, ComposedSheet.class);
  }

  @Test
  void shouldNotNameASurgeonOnTheWallWhoIsNotDueYet() {
    Suite suite = suite().holding("06:05", here(1));
    for (int room = 1; room <= 3; room++) {
      Shown shown = Shown.at(suite, "06:50");
      if (shown.need(room) != null) {
        assertThat(shown.need(room).words()).doesNotContain("surgeon not seen");
      }
    }
  }

  private static Suite suite() {
    return new Suite(3, "06:30");
  }

  private static Command here(int room) {
    return new Command.Good(Suite.ofCase(room, "patient.arrived"), touch(), null, null);
  }

  private static Evidence touch() {
    return new Evidence.Touch();
  }

  private static SignPart sign(Suite suite, String clock, String words) {
    return signs(suite, clock).stream()
        .filter(s -> s.words().equals(words))
        .findFirst()
        .orElse(null);
  }

  private static List<SignPart> signs(Suite suite, String clock) {
    return Shown.at(suite, clock).parts().stream()
        .filter(SignPart.class::isInstance)
        .map(SignPart.class::cast)
        .toList();
  }
}
