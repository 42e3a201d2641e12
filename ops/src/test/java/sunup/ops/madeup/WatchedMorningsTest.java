package sunup.ops.madeup;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sunup.board.Event;
import sunup.board.LearnedTimes;
import sunup.board.Recorded;
import sunup.ops.madeup.WatchedMornings.Watched;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.FactsBuilder;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.ForecastReplay;
import sunup.review.facts.Replayed;
import sunup.review.learn.Closing;
import sunup.review.learn.Lessons;
import sunup.review.learn.LessonsReader;

class WatchedMorningsTest {
  private static final LocalDate DAY = LocalDate.of(2026, 2, 3);
  private static final int TRIALS = 64;

  private static Scenario desk(double chance) throws Exception {
    Scenario hidden = DemoPlans.hidden();
    return new Scenario(
        hidden.from(),
        hidden.to(),
        hidden.seed(),
        hidden.truths(),
        List.of(),
        new Scenario.DeskWork(chance, 0.5));
  }

  @Test
  void shouldKeepWhatABoardSaysAtEachMomentByWhatWasRecordedThenAndNothingElse() throws Exception {
    Watched watched = new WatchedMornings(desk(0), TRIALS).play(DemoPlans.of(DAY), null);
    assertThat(watched.notes()).hasSize(12 * BoardSaid.MOMENTS.size());
    assertThat(watched.notes()).allMatch(n -> n.origin() == ForecastNote.Origin.LOGGED);
    List<ForecastNote> again = ForecastReplay.notes(watched.events(), TRIALS, Set.of());
    assertThat(watched.notes())
        .usingRecursiveFieldByFieldElementComparatorIgnoringFields("origin", "standing")
        .containsExactlyInAnyOrderElementsOf(again);
    assertThat(watched.acts()).isZero();
  }

  @Test
  void shouldLetTheDeskActOnWhatTheBoardSaysAndBeSoonerForIt() throws Exception {
    long acted = 0;
    long idle = 0;
    long busy = 0;
    for (int day = 0; day < 4; day++) {
      Watched alone =
          new WatchedMornings(desk(0), TRIALS).play(DemoPlans.of(DAY.plusDays(day)), null);
      Watched worked =
          new WatchedMornings(desk(1), TRIALS).play(DemoPlans.of(DAY.plusDays(day)), null);
      List<FirstCaseFact> facts = FactsBuilder.build(worked.events(), worked.notes());
      assertThat(facts).hasSize(12);
      acted += facts.stream().filter(f -> f.said().get(0).deskActed()).count();
      assertThat(worked.events().stream().filter(e -> e.event() instanceof Event.HoldupTaken))
          .hasSize(worked.acts());
      busy += facts.stream().mapToLong(FirstCaseFact::lateMs).sum();
      idle +=
          FactsBuilder.build(alone.events(), alone.notes()).stream()
              .mapToLong(FirstCaseFact::lateMs)
              .sum();
    }
    assertThat(acted).isPositive();
    assertThat(busy).isLessThan(idle);
  }

  /** A line waits for the one ultrasound machine; that is no work, and nobody is at it. */
  @Test
  void shouldTeachNoWaitingForEquipmentNorForSomebodyWhoIsInAnotherRoom() throws Exception {
    MadeMornings mornings = new MadeMornings(new Scenario(DAY, DAY, 3, List.of(), null, null));
    List<Lessons> lessons = new ArrayList<>();
    for (int day = 0; day < 28; day++) {
      if (Weekdays.isOne(DAY.plusDays(day))) {
        List<Recorded> events = new ArrayList<>();
        mornings.play(DemoPlans.of(DAY.plusDays(day))).forEach(g -> events.addAll(g.events()));
        lessons.add(LessonsReader.read(events));
      }
    }
    Closing closing = Closing.of(DAY, DemoPlans.of(DAY).sheets(), lessons, null);
    for (String key : List.of("start.lines", "special.ultrasound", "patient.assessment")) {
      Closing.Row row =
          closing.items().stream().filter(r -> r.key().equals(key)).findFirst().orElseThrow();
      assertThat(row.measured()).as(key).isGreaterThan(15);
      assertThat(row.now().usual() / row.sheet().usual()).as(key).isBetween(0.6, 1.4);
    }
  }

  @Test
  void shouldOpenByWhatEarlierMorningsTaughtAsARunningBoardDoes() throws Exception {
    WatchedMornings mornings = new WatchedMornings(desk(0), TRIALS);
    Taught taught = new Taught();
    for (int day = 0; day < 3; day++) {
      LocalDate date = DAY.plusDays(day);
      LearnedTimes by = taught.next();
      Watched watched = mornings.play(DemoPlans.of(date), by);
      assertThat(Replayed.of(watched.events()).end().learned()).isEqualTo(by);
      taught.add(date, watched.events());
      assertThat(taught.next().upTo()).isEqualTo(date);
      assertThat(taught.next().mornings()).isEqualTo(day + 1);
    }
    assertThat(taught.next().items()).isNotEmpty();
  }
}
