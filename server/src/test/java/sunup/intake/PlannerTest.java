package sunup.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sunup.board.CasePlan;
import sunup.board.MorningPlan;
import sunup.board.PersonId;
import sunup.board.PersonPlan;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.codec.Json;

/** From case list and site to a plan. */
class PlannerTest {
  private static final String TWO =
      """
      room,start,technique,options,surgeon,procedure
      1,07:30,general,,s-1,hip
      2,07:45,spinal,block,s-1,
      4,08:00,general,,,
      """;

  private static MorningPlan plan(String csv) {
    Planner.Planned planned = Planner.plan(Lists.SITE, Lists.cases(csv), Lists.DAY);
    assertThat(planned.problems()).isEmpty();
    return planned.plan();
  }

  private static long at(String time) {
    return LocalTimes.read(time, Lists.DAY, Lists.SITE.settings().zoneId()).at();
  }

  private static Map<PersonId, PersonPlan> people(MorningPlan plan) {
    return plan.people().stream().collect(Collectors.toMap(PersonPlan::id, p -> p));
  }

  @Test
  void shouldPlanCasesPeopleEquipmentAndPlaces() {
    MorningPlan plan = plan(TWO);
    assertThat(plan.id()).hasToString("main/2026-11-25");
    assertThat(plan.rooms()).hasSize(12);
    assertThat(plan.beginsAt()).isEqualTo(at("06:30"));
    assertThat(plan.cases())
        .extracting(c -> c.id() + " " + c.room() + " " + c.surgeon())
        .containsExactly("c1 1 s-1", "c2 2 s-1", "c4 4 surgeon-4");
    assertThat(plan.sheets()).hasSize(2);
    assertThat(plan.sheets())
        .extracting(s -> s.hash())
        .containsAll(plan.cases().stream().map(CasePlan::sheet).toList());
    PersonPlan anaesthetist = people(plan).get(new PersonId("anaesthetist-2"));
    assertThat(anaesthetist.room()).isEqualTo(new RoomId("2"));
    assertThat(anaesthetist.plannedAt()).isEqualTo(at("06:45"));
    assertThat(plan.places())
        .extracting(p -> p.id() + " " + p.opensAt())
        .containsExactly("pharmacy " + at("07:00"), "holding " + at("06:00"));
  }

  @Test
  void shouldLetASurgeonOfTwoRoomsServeBoth() {
    PersonPlan surgeon = people(plan(TWO)).get(new PersonId("s-1"));
    assertThat(surgeon.role()).isEqualTo(Role.SURGEON);
    assertThat(surgeon.room()).isNull();
    assertThat(surgeon.covers()).containsExactly(new RoomId("1"), new RoomId("2"));
    assertThat(surgeon.plannedAt()).isEqualTo(at("07:00"));
  }

  @Test
  void shouldPlanThePeopleOfARoomWithoutACase() {
    Map<PersonId, PersonPlan> people = people(plan(TWO));
    assertThat(people).containsKey(new PersonId("anaesthetist-9"));
    assertThat(people).doesNotContainKey(new PersonId("surgeon-9"));
  }

  @Test
  void shouldSayAtTheCasesLineWhatTheSiteDoesNotHave() {
    String text =
        SiteFile.standardText()
            .replace("\"kind\": \"ultrasound\"", "\"kind\": \"warmer\"")
            .replace("{\"role\": \"scrub\", \"minutesBefore\": 55},", "")
            .replace("\"id\": \"pharmacy\"", "\"id\": \"drugstore\"");
    SiteFile site = SiteReader.read("site.json", text).site();
    List<ListedCase> cases = Lists.cases("room,start,technique,options\n3,07:30,ga,block\n");
    Planner.Planned planned = Planner.plan(site, cases, Lists.DAY);
    assertThat(planned.plan()).isNull();
    assertThat(planned.problems()).allMatch(p -> p.line() == 2);
    assertThat(Lists.words(planned.problems()))
        .satisfiesExactly(
            p -> assertThat(p).contains("would need equipment of kind ultrasound"),
            p -> assertThat(p).contains("would need place pharmacy"),
            p -> assertThat(p).contains("would need somebody as scrub"));
  }

  @Test
  void shouldRefuseASurgeonWhoIsSomebodyElse() {
    List<ListedCase> cases = Lists.cases("room,start,technique,surgeon\n3,07:30,ga,technician-1\n");
    assertThat(Lists.words(Planner.plan(Lists.SITE, cases, Lists.DAY).problems()))
        .contains(
            "case list, line 2, surgeon: 'technician-1' is another person in site.json; use"
                + " another");
  }

  @Test
  void shouldPlanByTheClocksOfTheDayTheyChange() {
    LocalDate spring = LocalDate.of(2026, 3, 29);
    CaseListResult list = Lists.read("room,start,technique\n1,07:30,ga\n", spring);
    MorningPlan plan = Planner.plan(Lists.SITE, list.cases(), spring).plan();
    assertThat(plan.cases().get(0).bookedAt() - plan.beginsAt()).isEqualTo(3_600_000);
  }

  @Test
  void shouldKeepAPlanThroughJson() throws Exception {
    MorningPlan plan = plan(TWO);
    assertThat(Json.read(Json.bytes(plan), MorningPlan.class)).isEqualTo(plan);
  }
}
