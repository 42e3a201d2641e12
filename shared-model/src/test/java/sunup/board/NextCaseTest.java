package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NextCaseTest {
  private static final ItemRef CYLINDER = ItemRef.of(NextCases.SECOND, "machine.cylinder");
  private static final ItemRef BAG = ItemRef.of(NextCases.SECOND, "machine.bag");
  private static final ItemRef ALARMS = ItemRef.of(NextCases.SECOND, "machine.alarms");
  private static final ItemRef FIRST_CYLINDER = Fixture.in(Fixture.R1, "machine.cylinder");
  private static final Command NEXT = after(null);

  private final Day day = NextCases.started().minute(80);

  private Day by(Command command) {
    return day.by(Fixture.ANAESTHETIST_1, command);
  }

  private NextCase next() {
    return NextCase.newestIn(day.morning(), Fixture.R1);
  }

  @Test
  void shouldBringOverWhatOutlastsACaseAndLeaveAllElseOpen() {
    by(NEXT);

    assertThat(next().id()).isEqualTo(NextCases.SECOND);
    assertThat(next().carried()).containsExactly("machine.cylinder");
    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.GOOD);
    assertThat(day.item(CYLINDER).since()).isEqualTo(day.item(FIRST_CYLINDER).since());
    assertThat(day.item(CYLINDER).evidence()).isEqualTo(NextCases.reading(180));
    assertThat(next().isCarried(day.item(CYLINDER))).isTrue();
    assertThat(day.state(BAG)).isEqualTo(ItemState.OPEN);
    // Of the set-up alone: no patient, no steps, no surgeon.
    assertThat(next().items(day.morning()))
        .extracting(Placed::sheet)
        .allMatch(sheet -> sheet.section().isSetUp());
  }

  @Test
  void shouldLeaveTheFirstCasesRecordAsItWas() {
    Morning before = day.morning();
    by(NEXT)
        .by(Fixture.ANAESTHETIST_1, new Command.Fault(CYLINDER, Private.of("empty")))
        .by(Fixture.ANAESTHETIST_1, sweep(Section.MACHINE, NextCases.SECOND))
        .by(Fixture.ANAESTHETIST_1, new Command.Reopen(BAG, null));

    assertThat(day.morning().cases()).isEqualTo(before.cases());
    assertThat(day.morning().roomItems()).isEqualTo(before.roomItems());
    assertThat(day.morning().itemsOf(Fixture.R1)).isEqualTo(before.itemsOf(Fixture.R1));
    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.FAULT);
    assertThat(day.state(FIRST_CYLINDER)).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldTakeReadingsSweepsLapsesAndUndoAsForAFirstCase() {
    by(NEXT).by(Fixture.ANAESTHETIST_1, sweep(Section.MACHINE, NextCases.SECOND));
    assertThat(day.events())
        .containsExactly(
            new Event.SectionSwept(Fixture.R1, Section.MACHINE, List.of(BAG, ALARMS), Fixture.A1));
    CommandId swept = day.lastId();
    assertThat(day.state(BAG)).isEqualTo(ItemState.GOOD);

    by(new Command.Good(CYLINDER, NextCases.reading(30), null, null));
    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.FAULT);
    assertThat(next().isCarried(day.item(CYLINDER))).isFalse();

    day.minute(94);
    assertThat(day.state(ALARMS)).isEqualTo(ItemState.GOOD);
    day.minute(95);
    assertThat(day.state(ALARMS)).isEqualTo(ItemState.LAPSED);

    by(new Command.Undo(swept));
    assertThat(day.state(BAG)).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldBeginOnlyOnceTheRoomHasStartedAndOnlyOnceForOneTouch() {
    Day early = NextCases.open().minute(20);
    early.by(Fixture.ANAESTHETIST_1, NEXT);
    assertThat(early.code()).isEqualTo(RefusalCode.ROOM_TAKEN);
    assertThat(early.words()).contains("has not started");

    by(NEXT).by(Fixture.ANAESTHETIST_1, NEXT);
    assertThat(day.events()).isEmpty();
    assertThat(day.morning().next()).hasSize(1);

    // Nobody has touched it, but it is another list that is wanted.
    by(new Command.SetUpNext(Fixture.R1, Fixture.C2, NextCases.SECOND));
    assertThat(next().sheet()).isEqualTo(Fixture.BLOCK.hash());
    assertThat(day.state(ItemRef.of(next().id(), "special.ultrasound"))).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldRefuseWhatIsNotThereAndWhoIsNotOfTheRoom() {
    by(new Command.SetUpNext(Fixture.R1, new CaseId("none"), null));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);
    day.by(Fixture.ANAESTHETIST_2, NEXT);
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    by(NEXT).by(Fixture.ANAESTHETIST_1, sweep(Section.MACHINE, Fixture.C1));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);
    day.by(
        Fixture.ANAESTHETIST_2,
        new Command.Sweep(Fixture.R2, Section.MACHINE, null, null, NextCases.SECOND));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);
    assertThat(day.state(BAG)).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldNotPutAwayASetUpThatTheScreenDidNotShow() {
    by(NEXT).by(Fixture.ANAESTHETIST_1, new Command.Fault(CYLINDER, Private.of("empty")));
    for (Command stale : List.of(NEXT, after(new CaseId("1.9")))) {
      by(stale);
      assertThat(day.code()).isEqualTo(RefusalCode.CHANGED_MEANWHILE);
      assertThat(day.words()).contains("1.2 was begun by");
    }
    assertThat(next().id()).isEqualTo(NextCases.SECOND);
  }

  @Test
  void shouldNotSayCarriedOverOfWhatWasLookedAtAnew() {
    // All at one moment by the clock.
    by(NEXT)
        .decided(Fixture.ANAESTHETIST_1, new Command.Reopen(CYLINDER, null))
        .by(Fixture.ANAESTHETIST_1, new Command.Good(CYLINDER, NextCases.reading(150), null, null));
    assertThat(day.item(CYLINDER).evidence()).isEqualTo(NextCases.reading(150));
    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.GOOD);
    assertThat(next().isCarried(day.item(CYLINDER))).isFalse();
  }

  @Test
  void shouldOpenAgainWhatStoodByEquipmentThatLeaves() {
    ItemRef here = ItemRef.of(NextCases.SECOND, "special.ultrasound");
    by(new Command.SetUpNext(Fixture.R1, Fixture.C2, null))
        .by(
            Fixture.ANAESTHETIST_1,
            new Command.Good(here, new Evidence.Scan(Fixture.US1), null, null));
    assertThat(day.state(here)).isEqualTo(ItemState.GOOD);

    day.minute(90).decided(Fixture.DESK, new Command.Claim(Fixture.US1, Fixture.R3));
    assertThat(day.state(here)).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldHandOverItsWorkToo() {
    by(NEXT)
        .by(Fixture.ANAESTHETIST_1, new Command.Begin(BAG, Fixture.A1))
        .by(Fixture.DESK, new Command.HandOver(Fixture.A1, Fixture.A2, Fixture.R1));
    assertThat(day.state(BAG)).isEqualTo(ItemState.IN_HAND);
    assertThat(day.item(BAG).by()).isEqualTo(Fixture.A2);
  }

  @Test
  void shouldGoOnAfterTheFirstCaseWasCancelledOnceItHadStarted() {
    day.decided(Fixture.DESK, new Command.CancelCase(Fixture.C1, null));
    by(NEXT).by(Fixture.ANAESTHETIST_1, sweep(Section.MACHINE, NextCases.SECOND));
    assertThat(day.state(BAG)).isEqualTo(ItemState.GOOD);
    by(after(NextCases.SECOND));
    assertThat(next().id()).isEqualTo(new CaseId("1.3"));

    Day never = NextCases.open().minute(20);
    never.decided(Fixture.DESK, new Command.CancelCase(Fixture.C1, null));
    never.by(Fixture.ANAESTHETIST_1, NEXT);
    assertThat(never.code()).isEqualTo(RefusalCode.CASE_CANCELLED);
  }

  @Test
  void shouldStopAtAsManyNextCasesAsARoomCanHave() {
    CaseId shown = null;
    for (int i = 0; i < NextCaseRules.MOST_IN_A_ROOM; i++) {
      by(new Command.SetUpNext(Fixture.R1, i % 2 == 0 ? Fixture.C1 : Fixture.C2, shown));
      shown = next().id();
    }
    assertThat(shown).isEqualTo(new CaseId("1.13"));
    by(new Command.SetUpNext(Fixture.R1, Fixture.C1, shown));
    assertThat(day.code()).isEqualTo(RefusalCode.OUT_OF_RANGE);
    assertThat(day.words()).contains("Set this one up on paper");
    assertThat(next().id()).isEqualTo(shown);
  }

  @Test
  void shouldNameTheNextCaseOfARoomWithTheLongestName() {
    assertThat(NextCaseRules.free(day.morning(), new RoomId("R".repeat(40))).value())
        .isEqualTo("R".repeat(35) + ".2");
  }

  @Test
  void shouldGoOnFromTheCaseBeforeAndNotFromTheFirst() {
    by(NEXT).by(Fixture.ANAESTHETIST_1, new Command.Fault(CYLINDER, Private.of("empty")));
    day.minute(200).by(Fixture.ANAESTHETIST_1, after(NextCases.SECOND));

    assertThat(next().id()).isEqualTo(new CaseId("1.3"));
    assertThat(next().carried()).isEmpty();
    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.FAULT);
  }

  private static Command after(CaseId shown) {
    return new Command.SetUpNext(Fixture.R1, Fixture.C1, shown);
  }

  private static Command sweep(Section section, CaseId next) {
    return new Command.Sweep(Fixture.R1, section, null, null, next);
  }
}
