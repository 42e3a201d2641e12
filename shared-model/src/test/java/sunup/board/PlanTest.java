package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Morning.Phase;

class PlanTest {
  private static final MorningPlan PLAN = Fixture.plan();

  private static MorningPlan with(List<RoomId> rooms, List<CasePlan> cases) {
    return new MorningPlan(
        PLAN.id(),
        PLAN.settings(),
        rooms,
        cases,
        PLAN.people(),
        PLAN.units(),
        PLAN.places(),
        PLAN.sheets(),
        PLAN.beginsAt());
  }

  private static Day planned(MorningPlan plan) {
    return new Day().at(Fixture.BEGIN).by(Fixture.DESK, new Command.Plan(plan));
  }

  private static void refused(MorningPlan plan, String words) {
    Day day = planned(plan);
    assertThat(day.code()).isEqualTo(RefusalCode.BAD_PLAN);
    assertThat(day.words()).contains(words);
  }

  @Test
  void shouldSayWhatIsWrongWithAPlan() {
    refused(
        with(List.of(Fixture.R1, Fixture.R1, Fixture.R2, Fixture.R3), PLAN.cases()),
        "Room 1 is named twice");
    refused(with(List.of(), List.of()), "1 to 60 rooms, not 0");
    refused(
        with(
            PLAN.rooms(),
            List.of(
                Fixture.casePlan(Fixture.C1, Fixture.R1, Fixture.PLAIN),
                Fixture.casePlan(Fixture.C2, Fixture.R1, Fixture.PLAIN))),
        "Room 1 has two first cases: C1 and C2");
    refused(
        with(PLAN.rooms(), List.of(Fixture.casePlan(Fixture.C1, new RoomId("9"), Fixture.PLAIN))),
        "Case C1 names room 9");
    refused(
        with(
            PLAN.rooms(),
            List.of(Fixture.casePlan(Fixture.C1, Fixture.R1, Fixture.sheet("other", List.of())))),
        "Case C1 names a sheet that is not in the plan");
    refused(
        with(
            PLAN.rooms(),
            List.of(
                Fixture.casePlan(Fixture.C1, Fixture.R1, Fixture.PLAIN),
                Fixture.casePlan(Fixture.C1, Fixture.R2, Fixture.PLAIN))),
        "Case C1 is named twice");
  }

  @Test
  void shouldTakeSixtyRoomsAndRefuseOneMore() {
    List<RoomId> rooms = new ArrayList<>();
    for (int i = 1; i <= 60; i++) {
      rooms.add(new RoomId("" + i));
    }
    assertThat(planned(with(rooms, PLAN.cases())).events()).hasSize(1);

    rooms.add(new RoomId("61"));
    refused(with(rooms, PLAN.cases()), "1 to 60 rooms, not 61");
  }

  @Test
  void shouldReplaceADraftButNotAnOpenMorning() {
    Day day = Day.draft().by(Fixture.DESK, new Command.Plan(with(PLAN.rooms(), List.of())));
    assertThat(day.morning().cases()).isEmpty();
    assertThat(day.morning().allItems()).isEmpty();

    day.by(Fixture.DESK, new Command.OpenMorning()).by(Fixture.DESK, new Command.Plan(PLAN));
    assertThat(day.code()).isEqualTo(RefusalCode.ALREADY_OPEN);
  }

  @Test
  void shouldTakeTheEveningsMendsInADraftAndSendReportsToItsOpening() {
    Day day = Day.draft();
    day.decided(Fixture.DESK, new Command.AgreeLater(Fixture.C1, Fixture.BOOKED + 60_000));
    assertThat(day.events()).hasSize(1);

    day.by(Fixture.ANAESTHETIST_1, new Command.Begin(Fixture.in(Fixture.R1, "machine.bag"), null));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_OPEN);
  }

  @Test
  void shouldAskForACaseListBeforeAnythingElse() {
    Day day = new Day().by(Fixture.DESK, new Command.OpenMorning());
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_PLANNED);
  }

  @Test
  void shouldTakeCommandsForSevenDaysAfterClosing() {
    Day day = Day.open().minute(240).by(Fixture.DESK, new Command.CloseMorning());
    assertThat(day.morning().phase()).isEqualTo(Phase.CLOSED);
    Command note = new Command.AddNote(null, Private.of("late word"));

    long closed = day.now();
    day.at(closed + 7 * 24 * 60 * Fixture.MINUTE).by(Fixture.DESK, note);
    assertThat(day.events()).hasSize(1);

    day.at(closed + 7 * 24 * 60 * Fixture.MINUTE + 1).by(Fixture.DESK, note);
    assertThat(day.code()).isEqualTo(RefusalCode.MORNING_CLOSED);
    day.by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.INCISION));
    assertThat(day.code()).isEqualTo(RefusalCode.MORNING_CLOSED);
  }

  @Test
  void shouldOpenAgainWhatWasClosedByMistake() {
    Day day = Day.open().minute(10).by(Fixture.DESK, new Command.CloseMorning());
    day.minute(11).by(Fixture.DESK, new Command.OpenMorning());

    assertThat(day.morning().phase()).isEqualTo(Phase.OPEN);
    assertThat(day.morning().openedAt()).isEqualTo(Fixture.BEGIN);
    assertThat(day.morning().closedAt()).isNull();
  }

  @Test
  void shouldSayWhatIsMissingFromACommand() {
    Day day = Day.open().by(Fixture.DESK, new Command.SwapCases(Fixture.C1, null));
    assertThat(day.code()).isEqualTo(RefusalCode.BAD_COMMAND);
    assertThat(day.words()).contains("'other' is missing");

    day.by(
        Fixture.ANAESTHETIST_1,
        new Command.Good(
            Fixture.in(Fixture.R1, "machine.cylinder"),
            new Evidence.Reading(1, null, true),
            null,
            null));
    assertThat(day.words()).contains("'unit' is missing");

    day.by(Fixture.DESK, new Command.AddNote(null, new Private("x".repeat(2_001))));
    assertThat(day.words()).contains("longer than 2000");
  }
}
