package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.Evidence;
import sunup.board.PersonId;
import sunup.board.Step;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.forecast.AsRun;
import sunup.forecast.AsRun.Piece;
import sunup.forecast.BadInput;
import sunup.sheets.SheetItem;
import sunup.wire.Part.RoomPart;
import sunup.wire.Standing;

/** Where the minutes of a start went when its steps were told in another order than they came. */
class ToldLaterTest {
  private static final CaseId CASE = new CaseId("C1");

  /** All is good early, the patient is sent for at 07:20, and is 25 minutes on the way. */
  private static Suite slowTransport(String transportTold) {
    Suite suite =
        new Suite(1, "06:30")
            .everythingGood("06:50", 1)
            .desk("07:20", new Command.Reach(CASE, Step.SENT_FOR));
    boolean before = transportTold != null && transportTold.compareTo("07:45") < 0;
    if (before) {
      transported(suite, transportTold);
    }
    suite.desk("07:45", new Command.Reach(CASE, Step.WHEELS_IN));
    if (transportTold != null && !before) {
      transported(suite, transportTold);
    }
    return suite.desk("07:53", new Command.Reach(CASE, Step.INDUCTION));
  }

  private static void transported(Suite suite, String clock) {
    suite.nurse(
        clock,
        1,
        new Command.Good(
            Suite.ofCase(1, "start.transport"), new Evidence.Touch(), new PersonId("N1"), null));
  }

  private static long lateMs(Suite suite, String kind, String item) throws BadInput {
    return pieces(suite).stream()
        .filter(p -> p.kind().equals(kind) && item.equals(p.item()))
        .mapToLong(Piece::lateMs)
        .sum();
  }

  private static List<Piece> pieces(Suite suite) throws BadInput {
    return AsRun.of(Outlook.input(suite.morning(), Suite.at("08:30"), 1)).rooms().get(0).pieces();
  }

  @Test
  void shouldPutTheMinutesOfASlowTransportToItWheneverItWasToldThatItIsOver() throws BadInput {
    long inOrder = lateMs(slowTransport("07:44"), "work", "start.transport");
    assertThat(inOrder).as("25 minutes instead of 6").isGreaterThan(10 * FirstSettings.MINUTE);
    for (String told : new String[] {"07:46", "07:52", null}) {
      Suite suite = slowTransport(told);
      assertThat(lateMs(suite, "work", "start.transport"))
          .as("told at " + told)
          .isGreaterThanOrEqualTo(inOrder);
      assertThat(lateMs(suite, "not-begun", "start.wheels-in")).isZero();
      assertThat(pieces(suite).stream().mapToLong(Piece::lateMs).sum())
          .isEqualTo(Suite.at("07:53") - Suite.at("07:30"));
    }
  }

  private static RoomPart room(Suite suite, String clock) {
    Judged judged = Outlook.judge(Judged.NOTHING, suite.morning(), Foretold.NONE, Suite.at(clock));
    return Outlook.parts(suite.morning(), Foretold.NONE, judged, Suite.at(clock)).stream()
        .filter(RoomPart.class::isInstance)
        .map(RoomPart.class::cast)
        .findFirst()
        .orElseThrow();
  }

  /** Sent for at 07:20 and in at 07:45; then a later step than the start, and never the start. */
  private static Suite startNeverTold(Step later, String told) {
    return new Suite(1, "06:30")
        .everythingGood("06:50", 1)
        .desk("07:20", new Command.Reach(CASE, Step.SENT_FOR))
        .desk("07:45", new Command.Reach(CASE, Step.WHEELS_IN))
        .desk(told, new Command.Reach(CASE, later));
  }

  @Test
  void shouldTakeAStartThatNobodyToldForNoLaterThanTheNextStepAndSaySo() throws BadInput {
    Suite suite = startNeverTold(Step.INCISION, "08:10");
    RoomPart shown = room(suite, "08:30");
    assertThat(shown.standing()).isEqualTo(Standing.STARTED);
    assertThat(shown.startedAt()).isEqualTo(Suite.at("08:10"));
    assertThat(shown.startInferred()).isTrue();
    assertThat(shown.lateMinutes()).isEqualTo(40);
    assertThat(shown.word()).isEqualTo("by 08:10");
    assertThat(pieces(suite).stream().mapToLong(Piece::lateMs).sum())
        .isEqualTo(Suite.at("08:10") - Suite.at("07:30"));
    RoomPart told = room(suite.desk("08:12", new Command.Reach(CASE, Step.INDUCTION)), "08:30");
    assertThat(told.startInferred()).as("told after all").isNull();
    assertThat(told.startedAt()).isEqualTo(Suite.at("08:12"));
  }

  @Test
  void shouldGoByTheEarliestOfTheLaterStepsInWhateverOrderTheyWereTold() throws BadInput {
    Suite suite =
        startNeverTold(Step.INCISION, "08:02").desk("08:20", new Command.Reach(CASE, Step.RELEASE));
    assertThat(room(suite, "08:30").startedAt()).isEqualTo(Suite.at("08:02"));
    assertThat(pieces(suite).stream().mapToLong(Piece::lateMs).sum())
        .isEqualTo(Suite.at("08:02") - Suite.at("07:30"));
    // Induced at 07:46 and wheeled in at 07:52 by what was told: the way was over by the earlier.
    Suite turned =
        new Suite(1, "06:30")
            .everythingGood("06:50", 1)
            .desk("07:20", new Command.Reach(CASE, Step.SENT_FOR))
            .desk("07:46", new Command.Reach(CASE, Step.INDUCTION))
            .desk("07:52", new Command.Reach(CASE, Step.WHEELS_IN));
    assertThat(goodAt(turned, "start.transport")).isEqualTo(Suite.at("07:46"));
    assertThat(goodAt(turned, "start.wheels-in")).isEqualTo(Suite.at("07:46"));
  }

  private static long goodAt(Suite suite, String key) {
    return Outlook.input(suite.morning(), Suite.at("08:30"), 1).rooms().get(0).items().stream()
        .filter(i -> i.key().equals(key))
        .findFirst()
        .orElseThrow()
        .progress()
        .since();
  }

  private static SheetItem ungated(SheetItem item) {
    try {
      return Json.read(Json.write(item).replace("\"gates\":\"induction\",", ""), SheetItem.class);
    } catch (BadJson e) {
      throw new IllegalStateException(e);
    }
  }

  /** The circuit, then the flow, then the ventilator, and only the last gates the induction. */
  @Test
  void shouldHaveBeenGoodByAStepWhetherItGatesTheStepOrGoesBeforeWhatDoes() {
    List<String> ungated = List.of("machine.circuit", "machine.flow");
    List<String> told = List.of("machine.ventilator", "machine.flow", "machine.circuit");
    Suite suite =
        Suite.changed(sheet -> Suite.each(sheet, i -> ungated.contains(i.key()) ? ungated(i) : i));
    suite
        .good("06:50", 1, key -> !told.contains(key))
        .desk("07:20", new Command.Reach(CASE, Step.SENT_FOR))
        .desk("07:30", new Command.Reach(CASE, Step.WHEELS_IN))
        .desk("07:53", new Command.Reach(CASE, Step.INDUCTION));
    int minute = 55;
    for (String key : told) {
      suite.good("07:" + minute++, 1, key::equals);
    }
    for (String key : told) {
      assertThat(goodAt(suite, key)).as(key).isEqualTo(Suite.at("07:53"));
    }
    assertThat(goodAt(suite, "machine.self-test")).isEqualTo(Suite.at("06:50"));
  }
}
