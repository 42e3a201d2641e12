package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Command;
import sunup.board.Move;
import sunup.board.MoveAnswer;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.forecast.ForecastInput;
import sunup.moves.Idea;
import sunup.moves.Ideas;
import sunup.wire.Audience;
import sunup.wire.Part;
import sunup.wire.Part.IdeaPart;
import sunup.wire.Part.IdeasPart;
import sunup.wire.Part.MovePart;
import sunup.wire.RoomGain;

class MovesShownTest {
  private static final Move SEND = new Move.SendTo(new PersonId("T1"), new RoomId("2"));
  private static final Move.Talk TALK = new Move.Talk(new RoomId("1"), new RoomId("3"));

  private static ForecastInput input(Suite suite) {
    return Outlook.input(suite.morning(), Suite.at("06:45"), 64);
  }

  private static long asked(ForecastInput in, int room) {
    return in.rooms().get(room - 1).items().stream().filter(ForecastInput.ItemIn::asked).count();
  }

  private static Suite askedAt0640() {
    return new Suite(3, "06:00").desk("06:40", new Command.AskMove(SEND, null, new PersonId("T1")));
  }

  private static List<Part> parts(Suite suite, Ideas ideas) {
    Foretold figures = Foretold.NONE.with(ideas);
    Judged judged = Outlook.judge(Judged.NOTHING, suite.morning(), figures, Suite.at("06:45"));
    return Outlook.parts(suite.morning(), figures, judged, Suite.at("06:45"));
  }

  private static Ideas ideas() {
    Idea idea =
        new Idea(
            SEND,
            null,
            new PersonId("T1"),
            6.04,
            0.23,
            List.of(new Idea.Gain("2", 7.51), new Idea.Gain("1", -1.47)));
    return new Ideas(Suite.at("06:44"), 9, 9, 2, 2_000, List.of(idea), List.of(TALK));
  }

  private static <P extends Part> List<P> of(Class<P> kind, List<Part> parts) {
    return parts.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  @Test
  void shouldCountAMoveInTheForecastOnceItIsAcceptedAndNotBefore() {
    Suite suite = askedAt0640();
    assertThat(asked(input(suite), 2)).isZero();

    suite.desk("06:41", new Command.AnswerMove(SEND.key(), MoveAnswer.ACCEPT));
    assertThat(asked(input(suite), 2)).isPositive();
    assertThat(asked(input(suite), 1)).isZero();

    suite.desk("06:42", new Command.AnswerMove(SEND.key(), MoveAnswer.CANNOT));
    assertThat(asked(input(suite), 2)).isZero();
  }

  @Test
  void shouldShowTheDeskWhatMayHelpWithMinutesAndErrorAndWhatItCosts() {
    List<Part> parts = parts(new Suite(3, "06:00"), ideas());

    IdeaPart idea = of(IdeaPart.class, parts).get(0);
    assertThat(idea.words()).isEqualTo("technician T1 to room 2");
    assertThat(idea.savedMinutes()).isEqualTo(6.0);
    assertThat(idea.errorMinutes()).isEqualTo(0.2);
    assertThat(idea.rooms()).containsExactly(new RoomGain("2", 7.5), new RoomGain("1", -1.5));
    assertThat(of(IdeasPart.class, parts)).hasSize(1);
    assertThat(parts).noneMatch(p -> p instanceof IdeaPart && p.audience() != Audience.DESK);
  }

  @Test
  void shouldClaimNoMinutesForWhatIsToBeTalkedAbout() {
    IdeaPart talk = of(IdeaPart.class, parts(new Suite(3, "06:00"), ideas())).get(1);
    assertThat(talk.words()).isEqualTo("talk about swapping 1 and 3");
    assertThat(talk.savedMinutes()).isNull();
    assertThat(talk.role()).isEqualTo(Role.SUPERVISOR);
  }

  @Test
  void shouldMoveAnIdeaToWhatIsAskedAtOnceThoughTheSearchIsOlder() {
    List<Part> parts = parts(askedAt0640(), ideas());

    assertThat(of(IdeaPart.class, parts)).extracting(IdeaPart::move).containsExactly(TALK);
    MovePart move = of(MovePart.class, parts).get(0);
    assertThat(move.who()).isEqualTo("technician T1");
    assertThat(move.audience()).isEqualTo(Audience.POCKET);
  }

  @Test
  void shouldKeepWhatWasCalledNotSafeOffTheWholeMorning() {
    Suite suite =
        askedAt0640().desk("06:41", new Command.AnswerMove(SEND.key(), MoveAnswer.NOT_SAFE));
    assertThat(Outlook.movesOff(suite.morning(), Suite.at("11:00"))).contains(SEND.key());
  }

  @Test
  void shouldThinkAgainOfWhatSomebodyCouldNotDoTwentyMinutesLater() {
    Suite suite =
        askedAt0640().desk("06:41", new Command.AnswerMove(SEND.key(), MoveAnswer.CANNOT));
    assertThat(Outlook.movesOff(suite.morning(), Suite.at("07:00"))).contains(SEND.key());
    assertThat(Outlook.movesOff(suite.morning(), Suite.at("07:01"))).isEmpty();
  }
}
