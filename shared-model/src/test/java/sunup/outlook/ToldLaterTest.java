package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.Evidence;
import sunup.board.PersonId;
import sunup.board.Step;
import sunup.forecast.AsRun;
import sunup.forecast.AsRun.Piece;
import sunup.forecast.BadInput;

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
}
