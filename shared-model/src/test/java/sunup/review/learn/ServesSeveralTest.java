package sunup.review.learn;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.PersonId;
import sunup.board.Placed;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.review.facts.PlayedMorning;
import sunup.review.learn.Lessons.Took;

/** Who works in two rooms began nothing in one while still at work in the other. */
class ServesSeveralTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final PersonId ANNA = new PersonId("Anna1");
  private static final long MINUTE = 60_000;

  private final PlayedMorning played = new PlayedMorning(2, DAY);

  /** Work with nothing before it, no place, no waiting and no extra. */
  private Placed plain(int room) {
    List<Placed> plain =
        played.morning().itemsOf(new RoomId("" + room)).stream()
            .filter(i -> i.sheet().section().isSetUp() && Learned.isLearned(i.sheet()))
            .filter(i -> i.sheet().after().isEmpty() && i.sheet().place() == null)
            .toList();
    return plain.get(0);
  }

  private List<Took> took() {
    played.station("06:44", 1, PlayedMorning.good(plain(1), ANNA, 1));
    played.station("06:50", 2, PlayedMorning.good(plain(2), ANNA, 2));
    for (String room : List.of("1", "2")) {
      played.station("08:00", 1, new Command.Reach(new CaseId("C" + room), Step.INDUCTION));
    }
    return LessonsReader.read(played.desk("09:00", new Command.CloseMorning()).journal()).took();
  }

  @Test
  void shouldBeginWithTheLastFinishInTheOtherRoom() {
    played.station("06:35", 1, new Command.Arrive(ANNA, new RoomId("1")));
    assertThat(took())
        .containsExactly(
            new Took(plain(1).sheet().work(), 9 * MINUTE, true),
            new Took(plain(2).sheet().work(), 6 * MINUTE, true));
  }

  @Test
  void shouldBeginWithThatFinishThoughNobodyToldTheArrival() {
    assertThat(took()).containsExactly(new Took(plain(2).sheet().work(), 6 * MINUTE, true));
  }
}
