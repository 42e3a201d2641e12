package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Decisions need what the screen showed to be current; items left out, reopened, undone. */
class DecisionTest {
  private static final ItemRef SUCTION = Fixture.in(Fixture.R1, "suction.strong");
  private static final Private WHY = Private.of("not for this case");

  private final Day day = Day.open().minute(5);

  private static Command good(ItemRef item) {
    return new Command.Good(item, new Evidence.Touch(), null, null);
  }

  @Test
  void shouldHoldTheseCommandsForDecisionsAndTheseForObservations() {
    Set<CommandKind> decisions = EnumSet.noneOf(CommandKind.class);
    Set<CommandKind> observations = EnumSet.noneOf(CommandKind.class);
    for (CommandKind kind : CommandKind.values()) {
      if (kind.manner() == Manner.DECISION) {
        decisions.add(kind);
      } else if (kind.manner() == Manner.OBSERVATION) {
        observations.add(kind);
      }
    }

    assertThat(decisions)
        .containsExactlyInAnyOrder(
            CommandKind.CHANGE_CASE,
            CommandKind.SWAP_CASES,
            CommandKind.CONFIRM_SWAP,
            CommandKind.CANCEL_CASE,
            CommandKind.AGREE_LATER,
            CommandKind.REOPEN,
            CommandKind.LEAVE_OUT,
            CommandKind.CLAIM,
            CommandKind.RELEASE,
            CommandKind.PROMISE_UNIT,
            CommandKind.AGREE_REASON,
            CommandKind.DISPUTE_REASON);
    assertThat(observations)
        .containsExactlyInAnyOrder(
            CommandKind.DRAW_DRUGS,
            CommandKind.DISCARD_DRUG,
            CommandKind.COUNT_DRUG,
            CommandKind.ARRIVE,
            CommandKind.JOIN,
            CommandKind.LEAVE,
            CommandKind.HAND_OVER,
            CommandKind.BEGIN,
            CommandKind.GOOD,
            CommandKind.SWEEP,
            CommandKind.FAULT,
            CommandKind.MEND,
            CommandKind.REPORT_READY,
            CommandKind.REACH);
  }

  @Test
  void shouldRefuseADecisionOnAnOldViewAndSayWhoChangedItAndWhen() {
    long seen = day.item(SUCTION).revision();
    day.by(Fixture.ANAESTHETIST_1, good(SUCTION));

    day.minute(9)
        .order(Fixture.ANAESTHETIST_1, new Command.LeaveOut(SUCTION, WHY), seen, day.now());

    assertThat(day.code()).isEqualTo(RefusalCode.CHANGED_MEANWHILE);
    assertThat(day.words()).contains("by anaesthetist at 06:35");
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldTakeADecisionThatSawALaterRevisionThanTheThingsOwn() {
    day.decided(Fixture.ANAESTHETIST_1, new Command.LeaveOut(SUCTION, WHY));
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.LEFT_OUT);
  }

  @Test
  void shouldAskForWhatWasSeenWhenADecisionDoesNotSay() {
    day.by(Fixture.ANAESTHETIST_1, new Command.LeaveOut(SUCTION, WHY));
    assertThat(day.code()).isEqualTo(RefusalCode.BAD_COMMAND);
    assertThat(day.words()).contains("'seen'");
  }

  @Test
  void shouldCompareBothCasesWhenTheyAreSwapped() {
    long seen = day.morning().seq();
    day.decided(Fixture.DESK, new Command.AgreeLater(Fixture.C2, Fixture.BOOKED + 1));

    day.order(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2), seen, day.now());

    assertThat(day.code()).isEqualTo(RefusalCode.CHANGED_MEANWHILE);
    assertThat(day.words()).contains("by desk");
  }

  @Test
  void shouldNeverLeaveOutTheSitesCore() {
    ItemRef bag = Fixture.in(Fixture.R1, "machine.bag");
    day.decided(Fixture.ANAESTHETIST_1, new Command.LeaveOut(bag, WHY));
    assertThat(day.code()).isEqualTo(RefusalCode.CORE);
    assertThat(day.words()).startsWith("machine bag is of the site's core");
  }

  @Test
  void shouldAskForAReasonWhenSomethingIsLeftOut() {
    day.decided(Fixture.ANAESTHETIST_1, new Command.LeaveOut(SUCTION, null));
    assertThat(day.code()).isEqualTo(RefusalCode.EVIDENCE_MISSING);
    assertThat(day.words()).contains("reason");
  }

  @Test
  void shouldOpenAgainWhatWasGoodOrLeftOut() {
    day.by(Fixture.ANAESTHETIST_1, good(SUCTION))
        .decided(Fixture.ANAESTHETIST_1, new Command.Reopen(SUCTION, WHY));
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.OPEN);
    assertThat(day.item(SUCTION).evidence()).isNull();

    day.decided(Fixture.ANAESTHETIST_1, new Command.LeaveOut(SUCTION, WHY))
        .decided(Fixture.ANAESTHETIST_1, new Command.Reopen(SUCTION, null));
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.OPEN);

    day.decided(Fixture.ANAESTHETIST_1, new Command.Reopen(SUCTION, null));
    assertThat(day.events()).isEmpty();

    day.by(Fixture.ANAESTHETIST_1, new Command.Fault(SUCTION, WHY))
        .decided(Fixture.ANAESTHETIST_1, new Command.Reopen(SUCTION, null));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);
  }

  @Test
  void shouldTakeBackAMisTouchOnTheSameScreen() {
    day.by(Fixture.ANAESTHETIST_1, new Command.Begin(SUCTION, null)).minute(6);
    Item before = day.item(SUCTION);
    day.by(Fixture.ANAESTHETIST_1, good(SUCTION));

    day.by(Fixture.ANAESTHETIST_1, new Command.Undo(day.lastId()));

    Item after = day.item(SUCTION);
    assertThat(after.state()).isEqualTo(ItemState.IN_HAND);
    assertThat(after.since()).isEqualTo(before.since());
    assertThat(after.begunAt()).isEqualTo(before.begunAt());
    assertThat(after.revision()).isEqualTo(day.morning().seq());
  }

  @Test
  void shouldTakeBackAWholeSweep() {
    day.by(Fixture.ANAESTHETIST_1, new Command.Sweep(Fixture.R1, Section.AIRWAY, null, null));
    CommandId sweep = day.lastId();

    day.by(Fixture.ANAESTHETIST_1, new Command.Undo(sweep));

    assertThat(day.state(Fixture.of(Fixture.C1, "airway.tube"))).isEqualTo(ItemState.OPEN);
    assertThat(day.state(Fixture.of(Fixture.C1, "airway.planb"))).isEqualTo(ItemState.OPEN);
    day.by(Fixture.ANAESTHETIST_1, new Command.Undo(sweep));
    assertThat(day.code()).isEqualTo(RefusalCode.NOTHING_TO_UNDO);
  }

  @Test
  void shouldTakeBackOnlyWhatNobodyTouchedSince() {
    ItemRef tube = Fixture.of(Fixture.C1, "airway.tube");
    ItemRef planB = Fixture.of(Fixture.C1, "airway.planb");
    day.by(Fixture.ANAESTHETIST_1, new Command.Sweep(Fixture.R1, Section.AIRWAY, null, null));
    CommandId sweep = day.lastId();
    day.by(Fixture.ANAESTHETIST_1, new Command.Fault(tube, WHY));

    day.by(Fixture.ANAESTHETIST_1, new Command.Undo(sweep));

    assertThat(day.state(tube)).isEqualTo(ItemState.FAULT);
    assertThat(day.state(planB)).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldNotTakeBackWhatAnotherScreenSaid() {
    day.by(Fixture.ANAESTHETIST_1, good(SUCTION));
    CommandId touch = day.lastId();

    day.by(Fixture.DESK, new Command.Undo(touch));

    assertThat(day.code()).isEqualTo(RefusalCode.NOTHING_TO_UNDO);
    assertThat(day.words()).contains("another screen");
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldTakeBackAStepThatWasTouchedByMistake() {
    day.by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.WHEELS_IN));
    ItemRef milestone = Fixture.of(Fixture.C1, "start.wheels-in");
    assertThat(day.state(milestone)).isEqualTo(ItemState.GOOD);

    day.by(Fixture.ANAESTHETIST_1, new Command.Undo(day.lastId()));

    assertThat(day.morning().cases().get(Fixture.C1).steps()).isEmpty();
    assertThat(day.morning().cases().get(Fixture.C1).flagged()).isEmpty();
    assertThat(day.state(milestone)).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldExpectWhatComesByItselfUntilItComes() {
    ItemRef seen = Fixture.of(Fixture.C1, "surgeon.seen");
    day.by(
        Fixture.DESK,
        new Command.ExpectItem(seen, Fixture.BOOKED, Private.of("phoned, in traffic")));
    assertThat(day.item(seen).expectedAt()).isEqualTo(Fixture.BOOKED);
    assertThat(day.state(seen)).isEqualTo(ItemState.OPEN);

    day.by(Fixture.HOLDING, good(seen));
    assertThat(day.item(seen).expectedAt()).isNull();

    day.by(Fixture.DESK, new Command.ExpectItem(seen, 0, null));
    assertThat(day.code()).isEqualTo(RefusalCode.OUT_OF_RANGE);
  }
}
