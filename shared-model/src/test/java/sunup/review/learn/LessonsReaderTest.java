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
import sunup.board.Section;
import sunup.board.Step;
import sunup.review.facts.PlayedMorning;
import sunup.review.learn.Lessons.Style;
import sunup.review.learn.Lessons.Took;

/** What a closed morning teaches of how people report, and of work that nobody said was begun. */
class LessonsReaderTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final long MINUTE = 60_000;
  private static final RoomId ROOM = new RoomId("1");
  private static final PersonId ANNA = new PersonId("Anna1");

  @Test
  void shouldTellHowARoomReports() {
    assertThat(style(60_000)).isEqualTo(Style.EACH_ITEM);
    assertThat(style(100)).isEqualTo(Style.AT_END);
    // Touch after touch, a number here and there, for minutes: all of it was done before.
    assertThat(style(14_000)).isEqualTo(Style.AT_END);
    PlayedMorning p = new PlayedMorning(1, DAY);
    int section = 0;
    for (Section s : Section.values()) {
      long at = p.at("06:40") + 3 * MINUTE * section++;
      for (Placed placed : p.morning().itemsOf(ROOM)) {
        if (s.isSetUp() && placed.sheet().section() == s) {
          Command good = PlayedMorning.good(placed, new PersonId("Anna1"), 1);
          p.give(at, at, PlayedMorning.station(1), good, null);
        }
      }
    }
    assertThat(LessonsReader.read(started(p).journal()).styles())
        .containsExactly(Style.EACH_SECTION);
  }

  private static Style style(long apart) {
    PlayedMorning p = new PlayedMorning(1, DAY);
    long at = p.at("06:40");
    for (Placed placed : p.morning().itemsOf(ROOM)) {
      if (placed.sheet().section().isSetUp()) {
        Command good = PlayedMorning.good(placed, new PersonId("Anna1"), 1);
        p.give(at, at, PlayedMorning.station(1), good, null);
        at += apart;
      }
    }
    return LessonsReader.read(started(p).journal()).styles().get(0);
  }

  private static PlayedMorning started(PlayedMorning p) {
    p.station("08:00", 1, new Command.Reach(new CaseId("C1"), Step.INDUCTION));
    return p.desk("09:00", new Command.CloseMorning());
  }

  private static List<Took> teaches(String key, boolean touched) {
    PlayedMorning p = new PlayedMorning(1, DAY);
    Placed item =
        p.morning().itemsOf(ROOM).stream()
            .filter(i -> i.sheet().key().equals(key))
            .findFirst()
            .orElseThrow();
    assertThat(item.sheet().who()).hasSizeGreaterThan(1);
    p.station("06:20", 1, new Command.Arrive(ANNA, ROOM));
    if (touched) {
      p.station("06:40", 1, new Command.Begin(item.ref(), ANNA));
    }
    p.station("06:44", 1, PlayedMorning.good(item, ANNA, 1));
    return LessonsReader.read(started(p).journal()).took();
  }

  @Test
  void shouldLearnNoWaitForTheOthersOfAStepThatTakesSeveral() {
    assertThat(teaches("instruments.count", false)).isEmpty();
    assertThat(teaches("instruments.count", true)).extracting(Took::ms).containsExactly(4 * MINUTE);
    assertThat(teaches("start.on-table", false)).isEmpty();
  }

  @Test
  void shouldTakeForOneWhatOnePersonEnteredTouchAfterTouch() {
    PlayedMorning p = new PlayedMorning(1, DAY);
    p.station("06:20", 1, new Command.Arrive(ANNA, ROOM));
    long at = p.at("06:40");
    int entered = 0;
    for (Placed placed : p.morning().itemsOf(ROOM)) {
      if (placed.sheet().section() == Section.MACHINE) {
        Command good = PlayedMorning.good(placed, ANNA, 1);
        p.give(at, at, PlayedMorning.station(1), good, null);
        at += 15_000;
        entered++;
      }
    }
    Lessons lessons = LessonsReader.read(started(p).journal());
    assertThat(lessons.took()).isEmpty();
    assertThat(lessons.sums()).hasSize(1);
    assertThat(lessons.sums().get(0).keys()).hasSize(entered).hasSizeGreaterThan(2);
  }
}
