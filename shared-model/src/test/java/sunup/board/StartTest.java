package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Morning.CaseDay;

/** Ready, the start chain, the reason of a late start. */
class StartTest {
  private final Day day = Day.open().minute(30);

  private CaseDay caseOne() {
    return day.morning().cases().get(Fixture.C1);
  }

  private List<ItemRef> gating(Step step) {
    return day.morning().gating(Fixture.C1, step, day.now()).stream().map(Placed::ref).toList();
  }

  /** Makes everything of room 1 good that the start chain does not bring itself. */
  private Day allGood() {
    for (Placed placed : day.morning().itemsOf(Fixture.R1)) {
      if (placed.sheet().section() != Section.START) {
        Evidence evidence =
            switch (placed.sheet().evidence().kind()) {
              case NUMBER -> new Evidence.Reading(180, "bar", true);
              case CHOICE -> new Evidence.Choice("fine");
              default -> new Evidence.Touch();
            };
        day.by(
            Fixture.ANAESTHETIST_1,
            new Command.Good(placed.ref(), evidence, Fixture.A1, Fixture.N1));
      }
    }
    return day;
  }

  @Test
  void shouldNeverRefuseAStepForWhatIsOpenButKeepIt() {
    List<ItemRef> open = gating(Step.INDUCTION);
    day.by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.INDUCTION));

    assertThat(day.events())
        .containsExactly(new Event.StepReached(Fixture.C1, Step.INDUCTION, open));
    assertThat(open).hasSize(15).contains(Fixture.in(Fixture.R1, "machine.bag"));
    assertThat(caseOne().steps()).containsEntry(Step.INDUCTION, day.now());
    assertThat(caseOne().flagged()).isEqualTo(open);
  }

  @Test
  void shouldTakeAStepFromEveryRoleThatMayDoAnything() {
    for (Role role : Role.values()) {
      Day one = Day.open();
      one.by(new Actor(role, null, "any"), new Command.Reach(Fixture.C1, Step.WHEELS_IN));
      boolean mayNothing = role == Role.SURGEON || role == Role.MANAGER || role == Role.DISPLAY;
      assertThat(one.last() instanceof Outcome.Accepted).as(role.word()).isEqualTo(!mayNothing);
    }
  }

  @Test
  void shouldTakeAStepOnACancelledCaseAndInADraft() {
    day.decided(Fixture.DESK, new Command.CancelCase(Fixture.C1, null))
        .by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.INDUCTION));
    assertThat(caseOne().steps()).containsKey(Step.INDUCTION);

    Day draft = Day.draft();
    draft.by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.WHEELS_IN));
    assertThat(draft.events()).isNotEmpty();
  }

  @Test
  void shouldLetTheEarliestWordOfAStepStand() {
    day.minute(61).by(Fixture.DESK, new Command.Reach(Fixture.C1, Step.WHEELS_IN));
    day.minute(62).by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.WHEELS_IN));
    assertThat(day.events()).isEmpty();

    day.minute(63)
        .touched(60, Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.WHEELS_IN));

    assertThat(caseOne().steps())
        .containsEntry(Step.WHEELS_IN, Fixture.BEGIN + 60 * Fixture.MINUTE);
  }

  @Test
  void shouldGoTogetherWithTheItemThatMarksIt() {
    ItemRef milestone = Fixture.of(Fixture.C1, "start.wheels-in");
    day.by(Fixture.ANAESTHETIST_1, new Command.Good(milestone, new Evidence.Touch(), null, null));
    assertThat(caseOne().steps()).containsKey(Step.WHEELS_IN);

    Day other = Day.open().minute(30);
    other.by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.WHEELS_IN));
    assertThat(other.state(milestone)).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldWaitForTheGatesOfEarlierStepsThatHaveNotHappened() {
    ItemRef identity = Fixture.of(Fixture.C1, "patient.identity");
    assertThat(gating(Step.INDUCTION)).contains(identity);
    assertThat(gating(Step.SENT_FOR))
        .containsExactly(identity, Fixture.of(Fixture.C1, "team.brief"));

    day.by(Fixture.HOLDING, new Command.Reach(Fixture.C1, Step.SENT_FOR));
    assertThat(gating(Step.INDUCTION)).doesNotContain(identity);
  }

  @Test
  void shouldReportReadyWithWhatIsStillOpen() {
    ItemRef bag = Fixture.in(Fixture.R1, "machine.bag");
    allGood().by(Fixture.ANAESTHETIST_1, new Command.ReportReady(Fixture.R1));
    assertThat(day.events()).containsExactly(new Event.ReadyReported(Fixture.R1, List.of()));
    assertThat(day.morning().rooms().get(Fixture.R1).readyBy()).isEqualTo(Role.ANAESTHETIST);

    day.by(Fixture.ANAESTHETIST_1, new Command.Fault(bag, null))
        .by(Fixture.ANAESTHETIST_1, new Command.ReportReady(Fixture.R1));
    assertThat(day.morning().rooms().get(Fixture.R1).readyOpen()).containsExactly(bag);
  }

  @Test
  void shouldNotGateByWhatIsLeftOutOrOnlyAdvised() {
    ItemRef planB = Fixture.of(Fixture.C1, "airway.planb");
    List<ItemRef> before = new ArrayList<>(gating(Step.INDUCTION));
    assertThat(before).doesNotContain(Fixture.of(Fixture.C1, "special.warming"));

    day.decided(
        Fixture.ANAESTHETIST_1, new Command.LeaveOut(planB, Private.of("not for a spinal")));

    before.remove(planB);
    assertThat(gating(Step.INDUCTION)).isEqualTo(before);
  }

  @Test
  void shouldAskForAFirstCaseWhenARoomWithoutOneReportsReady() {
    day.decided(Fixture.DESK, new Command.CancelCase(Fixture.C1, null))
        .by(Fixture.ANAESTHETIST_1, new Command.ReportReady(Fixture.R1));
    assertThat(day.code()).isEqualTo(RefusalCode.CASE_CANCELLED);
  }

  @Test
  void shouldHaveAReasonAgreedOrDisputedByTheOtherSideOnly() {
    Actor nurse = Fixture.at(Fixture.R1, Role.CIRCULATING, Fixture.N1);
    day.decided(Fixture.DESK, new Command.AgreeReason(Fixture.C1));
    assertThat(day.code()).isEqualTo(RefusalCode.NO_REASON);

    day.by(nurse, new Command.GiveReason(Fixture.C1, DelayReason.SURGEON, null));
    day.decided(nurse, new Command.AgreeReason(Fixture.C1));
    assertThat(day.code()).isEqualTo(RefusalCode.SAME_PERSON);

    day.decided(Fixture.DESK, new Command.DisputeReason(Fixture.C1, DelayReason.STAFF, null));
    assertThat(caseOne().reason().instead()).isEqualTo(DelayReason.STAFF);
    assertThat(caseOne().reason().agreed()).isFalse();

    day.decided(Fixture.DESK, new Command.AgreeReason(Fixture.C1));
    assertThat(caseOne().reason().agreed()).isTrue();
    assertThat(caseOne().reason().instead()).isNull();
  }
}
