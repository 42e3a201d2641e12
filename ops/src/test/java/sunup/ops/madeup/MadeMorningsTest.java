package sunup.ops.madeup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.MorningPlan;
import sunup.board.Recorded;
import sunup.codec.BadJson;
import sunup.ops.rehearsal.Story;
import sunup.review.facts.FactsBuilder;
import sunup.review.facts.FirstCaseFact;

class MadeMorningsTest {
  private static final LocalDate MONDAY = LocalDate.of(2026, 2, 2);

  @Test
  void shouldMakeClosedMorningsThatHaveFacts() throws Exception {
    MadeMornings mornings = new MadeMornings(DemoPlans.hidden());
    List<Recorded> events =
        mornings.play(DemoPlans.of(MONDAY)).stream().flatMap(g -> g.events().stream()).toList();
    List<FirstCaseFact> facts = FactsBuilder.build(events, List.of());
    assertThat(facts).hasSize(12).allMatch(FirstCaseFact::hasStarted);
    assertThat(facts).extracting(FirstCaseFact::service).contains("orthopaedics");
    assertThat(mornings.play(DemoPlans.of(MONDAY)).stream().flatMap(g -> g.events().stream()))
        .as("the same again")
        .containsExactlyElementsOf(events);
  }

  @Test
  void shouldHideTheTruthsWhereTheyAreAndNowhereElse() throws Exception {
    MadeMornings mornings = new MadeMornings(DemoPlans.hidden());
    int slow = 0;
    int late = 0;
    for (int week = 0; week < 6; week++) {
      MorningPlan monday = DemoPlans.of(LocalDate.of(2026, 4, 6).plusWeeks(week));
      Story after = mornings.story(monday, week);
      assertThat(after.places()).as("the pharmacy is slow in winter").isEmpty();
      assertThat(after.sooner()).as("changed in March").hasSize(12);
      late += after.nights().size();
      assertThat(mornings.story(DemoPlans.of(monday.id().date().plusDays(1)), week).nights())
          .isEmpty();
      Story before = mornings.story(DemoPlans.of(MONDAY), week);
      slow += before.places().size();
      assertThat(before.sooner()).isEmpty();
      assertThat(before.arrivals()).allMatch(a -> a.item().equals("surgeon.seen"));
    }
    assertThat(late).isBetween(25, 62);
    assertThat(slow).isBetween(2, 6);
  }

  @Test
  void shouldSayWhatIsWrongInAScenario() throws Exception {
    Scenario wrong =
        Scenario.read(
            """
            {"from": "2026-03-02", "to": "2026-03-06", "seed": 1, "truths": [
              {"name": "x", "weekdays": ["moonday"], "chance": 1.5, "place": "pharmacy",
                "item": "room.table", "minutes": 0}]}
            """);
    assertThat(wrong.mistakesWithTime(DemoPlans.of(MONDAY)))
        .anyMatch(m -> m.startsWith("truths[0].weekdays: 'moonday' is unknown; there are monday"))
        .anyMatch(m -> m.startsWith("truths[0].chance: must be"))
        .anyMatch(m -> m.startsWith("truths[0].minutes: must be"))
        .anyMatch(m -> m.contains("exactly one of the five"));
    assertThatThrownBy(() -> Scenario.read("{\"seed\": 1, \"fron\": 1}"))
        .isInstanceOf(BadJson.class)
        .hasMessageContaining("fron");
  }
}
