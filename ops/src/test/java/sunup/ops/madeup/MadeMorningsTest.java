package sunup.ops.madeup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.MorningPlan;
import sunup.board.Recorded;
import sunup.codec.BadJson;
import sunup.intake.CaseList;
import sunup.intake.Planner;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;
import sunup.ops.rehearsal.Story;
import sunup.review.facts.FactsBuilder;
import sunup.review.facts.FirstCaseFact;
import sunup.sheets.Sheets;

class MadeMorningsTest {
  private static final LocalDate MONDAY = LocalDate.of(2026, 2, 2);

  private static String text(String name) throws IOException {
    try (InputStream in = MadeMorningsTest.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static MorningPlan plan(LocalDate date) throws IOException {
    SiteFile site = SiteReader.read("site.json", text("/demo/site.json")).site();
    byte[] cases = text("/demo/cases.csv").getBytes(StandardCharsets.UTF_8);
    return Planner.plan(site, CaseList.read(cases, site, date, Sheets.standard()).cases(), date)
        .plan();
  }

  private static Scenario hidden() throws IOException, BadJson {
    return Scenario.read(text("/year/hidden.json"));
  }

  @Test
  void shouldMakeClosedMorningsThatHaveFacts() throws Exception {
    MadeMornings mornings = new MadeMornings(hidden());
    List<Recorded> events =
        mornings.play(plan(MONDAY)).stream().flatMap(g -> g.events().stream()).toList();
    List<FirstCaseFact> facts = FactsBuilder.build(events, List.of());
    assertThat(facts).hasSize(12).allMatch(FirstCaseFact::hasStarted);
    assertThat(facts).extracting(FirstCaseFact::service).contains("orthopaedics");
    assertThat(mornings.play(plan(MONDAY)).stream().flatMap(g -> g.events().stream()))
        .as("the same again")
        .containsExactlyElementsOf(events);
  }

  @Test
  void shouldHideTheTruthsWhereTheyAreAndNowhereElse() throws Exception {
    MadeMornings mornings = new MadeMornings(hidden());
    int slow = 0;
    int late = 0;
    for (int week = 0; week < 6; week++) {
      MorningPlan monday = plan(LocalDate.of(2026, 4, 6).plusWeeks(week));
      Story after = mornings.story(monday, week);
      assertThat(after.places()).as("the pharmacy is slow in winter").isEmpty();
      assertThat(after.slow()).as("changed in March").isEmpty();
      late += after.people().size();
      assertThat(mornings.story(plan(monday.id().date().plusDays(1)), week).people()).isEmpty();
      Story before = mornings.story(plan(MONDAY), week);
      slow += before.places().size();
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
    assertThat(wrong.mistakesWithTime(plan(MONDAY)))
        .anyMatch(m -> m.startsWith("truths[0].weekdays: 'moonday' is unknown; there are monday"))
        .anyMatch(m -> m.startsWith("truths[0].chance: must be"))
        .anyMatch(m -> m.startsWith("truths[0].minutes: must be"))
        .anyMatch(m -> m.contains("exactly one of the four"));
    assertThatThrownBy(() -> Scenario.read("{\"seed\": 1, \"fron\": 1}"))
        .isInstanceOf(BadJson.class)
        .hasMessageContaining("fron");
  }
}
