package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.Move;
import sunup.board.MoveAnswer;
import sunup.board.PersonId;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.Forecaster;
import sunup.moves.Idea;
import sunup.moves.MoveSearch;
import sunup.wire.Part.PersonPart;

/** For whom rooms wait, and who has nothing to wait for. */
class PeopleShownTest {
  private static final long TARGET = Suite.at("07:30");
  private static final PersonId FREE = new PersonId("A1");
  private static final Move SEND = new Move.SendTo(FREE, new RoomId("2"));

  /** Room 1 late by ten minutes, of which this share waits for its surgeon. */
  private static Foretold waits(Suite suite, String clock, double share) {
    long start = TARGET + 600_000;
    RoomOut room =
        new RoomOut(
            "1",
            0.1,
            start,
            start,
            start,
            start,
            start,
            start,
            600_000,
            0,
            64,
            64,
            List.of(
                new Share("1", "work", "drugs.drawn", null, null, 1 - share, TARGET),
                new Share("1", "person", "drugs.drawn", "S1", null, share, TARGET)),
            0,
            List.of());
    Forecast figures =
        new Forecast(1, "", 1, 64, Suite.at(clock), List.of(room), List.of(), List.of());
    return new Foretold(figures, suite.morning().seq(), false);
  }

  private static List<String> waitFor(Shown shown) {
    return ((PersonPart) shown.part("person/S1")).waitedFor();
  }

  @Test
  void shouldNotFlickerInWhomARoomWaitsForWhenItsShareWobbles() {
    Suite suite = new Suite(1, "06:00").does("06:58", 1, Section.IV);
    Shown shown = Shown.at(suite, "07:00", waits(suite, "07:00", 0.21));
    assertThat(waitFor(shown)).containsExactly("1");
    for (String clock : List.of("07:01", "07:03", "07:05")) {
      shown = Shown.after(shown.judged(), suite, clock, waits(suite, clock, 0.14));
      assertThat(waitFor(shown)).as("within the dead band, " + clock).containsExactly("1");
    }
    shown = Shown.after(shown.judged(), suite, "07:06", waits(suite, "07:06", 0.05));
    assertThat(waitFor(shown)).as("not for a moment").containsExactly("1");
    shown = Shown.after(shown.judged(), suite, "07:07", waits(suite, "07:07", 0.05));
    assertThat(waitFor(shown)).as("for a minute").isEmpty();
    shown = Shown.after(shown.judged(), suite, "07:08", waits(suite, "07:08", 0.19));
    assertThat(waitFor(shown)).isEmpty();
  }

  @Test
  void shouldSayAtOnceForWhomARoomWaitsWhenSomethingHappenedThere() {
    Suite suite = new Suite(1, "06:00").does("06:58", 1, Section.IV);
    Shown shown = Shown.at(suite, "07:00", waits(suite, "07:00", 0.05));
    assertThat(waitFor(shown)).isEmpty();
    suite.does("07:01", 1, Section.SUCTION);
    shown = Shown.after(shown.judged(), suite, "07:01", waits(suite, "07:01", 0.5));
    assertThat(waitFor(shown)).containsExactly("1");
  }

  /** Room 1 is cancelled, its anaesthetist is here; nobody has begun in room 2. */
  private static Suite cancelled() {
    Suite suite = new Suite(2, "06:00");
    suite.desk("06:40", new Command.Arrive(FREE, new RoomId("1")));
    suite.desk("06:41", new Command.CancelCase(new CaseId("C1"), null), suite.morning().seq());
    return suite.nurse("07:05", 2, new Command.Arrive(new PersonId("N2"), new RoomId("2")));
  }

  private static ForecastInput input(Suite suite) {
    return Outlook.input(suite.morning(), Suite.at("07:06"), 256);
  }

  private static List<PersonIn> free(Suite suite) {
    return Outlook.free(suite.morning(), Suite.at("07:06"));
  }

  @Test
  void shouldThinkOfWhoeverIsFreeSinceACaseWasCancelled() {
    Suite suite = cancelled();
    assertThat(free(suite)).extracting(PersonIn::id).containsExactly("A1");
    ForecastInput in = input(suite);
    assertThat(in.people()).extracting(PersonIn::id).doesNotContain("A1");

    MoveSearch search = new MoveSearch(in, free(suite), Forecaster.run(in), Set.of());
    while (search.advance()) {
      // Goes on to the end.
    }
    assertThat(search.result().shown()).extracting(Idea::move).contains(SEND);
    assertThat(search.result().shown().get(0).savedMinutes()).isGreaterThan(2);
  }

  @Test
  void shouldCountOnWhoeverIsFreeOnceTheMoveIsAcceptedAndInThatRoomOnly() {
    Suite suite = cancelled();
    suite.desk("07:06", new Command.AskMove(SEND, null, FREE));
    assertThat(input(suite).people()).extracting(PersonIn::id).doesNotContain("A1");
    suite.desk("07:06", new Command.AnswerMove(SEND.key(), MoveAnswer.ACCEPT));
    PersonIn sent =
        input(suite).people().stream().filter(p -> p.id().equals("A1")).findFirst().orElseThrow();
    assertThat(sent.room()).isNull();
    assertThat(sent.covers()).containsExactly("2");
  }

  @Test
  void shouldNotCallFreeWhoHasNotComeOrHasAnotherRoom() {
    Suite suite = new Suite(2, "06:00");
    suite.desk("06:41", new Command.CancelCase(new CaseId("C1"), null), suite.morning().seq());
    assertThat(free(suite)).isEmpty();
    suite.desk("06:45", new Command.Arrive(FREE, new RoomId("2")));
    assertThat(free(suite)).isEmpty();
  }
}
