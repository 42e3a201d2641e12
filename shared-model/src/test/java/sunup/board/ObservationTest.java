package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Observations are accepted whatever happened meanwhile; at most they are kept without effect. */
class ObservationTest {
  private static final ItemRef SUCTION = Fixture.in(Fixture.R1, "suction.strong");
  private static final ItemRef DRAWN = Fixture.of(Fixture.C1, "drugs.drawn");
  private static final Private WHY = Private.of("fell on the floor");

  private final Day day = Day.open();

  private static Command good(ItemRef item) {
    return new Command.Good(item, new Evidence.Touch(), null, null);
  }

  private void keptBecauseOf(Kept why, ItemRef item) {
    assertThat(day.events()).containsExactly(new Event.WordKept(item, why.code()));
  }

  @Test
  void shouldKeepASecondPersonAsWitnessWhenTheItemIsGoodAlready() {
    Actor nurse = Fixture.at(Fixture.R1, Role.CIRCULATING, Fixture.N1);
    day.minute(5).by(Fixture.ANAESTHETIST_1, good(SUCTION));
    Item first = day.item(SUCTION);

    day.minute(9).by(nurse, good(SUCTION));

    assertThat(day.events())
        .containsExactly(new Event.ItemWitnessed(SUCTION, new Evidence.Touch(), Fixture.N1));
    assertThat(day.item(SUCTION).witness()).isEqualTo(Fixture.N1);
    assertThat(day.item(SUCTION).by()).isEqualTo(Fixture.A1);
    assertThat(day.item(SUCTION).since()).isEqualTo(first.since());
  }

  @Test
  void shouldNotCountTheSamePersonAsWitness() {
    day.minute(5)
        .by(Fixture.ANAESTHETIST_1, good(SUCTION))
        .minute(6)
        .by(Fixture.ANAESTHETIST_1, good(SUCTION));

    assertThat(day.item(SUCTION).witness()).isNull();
  }

  @Test
  void shouldKeepAWordWithoutEffectWhenTheItemWasLeftOut() {
    day.minute(5).decided(Fixture.ANAESTHETIST_1, new Command.LeaveOut(SUCTION, WHY));

    day.minute(6).by(Fixture.ANAESTHETIST_1, good(SUCTION));

    keptBecauseOf(Kept.LEFT_OUT, SUCTION);
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.LEFT_OUT);
  }

  @Test
  void shouldKeepAWordWithoutEffectWhenItIsOlderThanAReopening() {
    day.minute(3)
        .by(Fixture.ANAESTHETIST_1, good(SUCTION))
        .minute(10)
        .decided(Fixture.ANAESTHETIST_1, new Command.Reopen(SUCTION, WHY));

    day.minute(12).touched(7, Fixture.ANAESTHETIST_1, good(SUCTION));

    keptBecauseOf(Kept.OLDER, SUCTION);
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.OPEN);
    day.minute(13).by(Fixture.ANAESTHETIST_1, good(SUCTION));
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldKeepAWordWithoutEffectWhenItIsOlderThanAFault() {
    day.minute(10).by(Fixture.ANAESTHETIST_1, new Command.Fault(SUCTION, WHY));

    day.minute(12).touched(7, Fixture.ANAESTHETIST_1, good(SUCTION));

    keptBecauseOf(Kept.OLDER, SUCTION);
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.FAULT);
  }

  @Test
  void shouldKeepAnOldGoodWithoutEffectWhenWorkWentOnAfterTheReopening() {
    day.minute(3)
        .by(Fixture.ANAESTHETIST_1, good(SUCTION))
        .minute(10)
        .decided(Fixture.ANAESTHETIST_1, new Command.Reopen(SUCTION, WHY))
        .minute(11)
        .by(Fixture.ANAESTHETIST_1, new Command.Begin(SUCTION, null));

    day.minute(12).touched(7, Fixture.ANAESTHETIST_1, good(SUCTION));

    keptBecauseOf(Kept.OLDER, SUCTION);
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.IN_HAND);
  }

  @Test
  void shouldTakeAFaultEvenWhenTheItemWasCalledGoodLater() {
    day.minute(10).by(Fixture.ANAESTHETIST_1, good(SUCTION));

    day.minute(12).touched(7, Fixture.ANAESTHETIST_1, new Command.Fault(SUCTION, WHY));

    assertThat(day.state(SUCTION)).isEqualTo(ItemState.FAULT);
    assertThat(day.item(SUCTION).since()).isEqualTo(Fixture.BEGIN + 7 * Fixture.MINUTE);
  }

  @Test
  void shouldKeepAWordWithoutEffectWhenItsCaseIsCancelled() {
    day.minute(5).decided(Fixture.DESK, new Command.CancelCase(Fixture.C1, null));

    day.minute(6).by(Fixture.ANAESTHETIST_1, good(DRAWN));

    keptBecauseOf(Kept.CASE_CANCELLED, DRAWN);
  }

  @Test
  void shouldGoWithItsCaseWhenTheCaseMoved() {
    ItemRef seen = Fixture.of(Fixture.C1, "surgeon.seen");
    day.minute(10).decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));

    day.minute(12).touched(7, Fixture.HOLDING, good(seen));

    assertThat(day.state(seen)).isEqualTo(ItemState.GOOD);
    assertThat(day.morning().roomOf(seen)).isEqualTo(Fixture.R2);
  }

  @Test
  void shouldNotCountWhatWasPreparedBeforeASwapWhenItIsToldAfter() {
    day.minute(5)
        .by(Fixture.ANAESTHETIST_1, good(DRAWN))
        .minute(10)
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));

    day.minute(12).touched(7, Fixture.at(Fixture.R2, Role.ANAESTHETIST, Fixture.A2), good(DRAWN));

    keptBecauseOf(Kept.OLDER, DRAWN);
  }

  @Test
  void shouldBeginOnlyWhatIsOpen() {
    day.minute(1).by(Fixture.ANAESTHETIST_1, new Command.Begin(SUCTION, null));
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.IN_HAND);

    day.minute(2).by(Fixture.ANAESTHETIST_1, new Command.Begin(SUCTION, null));
    keptBecauseOf(Kept.IN_HAND, SUCTION);
    assertThat(day.item(SUCTION).begunAt()).isEqualTo(Fixture.BEGIN + Fixture.MINUTE);

    day.minute(3).by(Fixture.ANAESTHETIST_1, new Command.Fault(SUCTION, WHY));
    day.minute(4).by(Fixture.ANAESTHETIST_1, new Command.Begin(SUCTION, null));
    keptBecauseOf(Kept.FAULT, SUCTION);
    assertThat(day.state(SUCTION)).isEqualTo(ItemState.FAULT);
  }

  @Test
  void shouldOpenAMendedItemToBeLookedAtAndForgetItsMender() {
    day.minute(1)
        .by(Fixture.ANAESTHETIST_1, new Command.Fault(SUCTION, WHY))
        .minute(2)
        .by(Fixture.ANAESTHETIST_1, new Command.TakeFault(SUCTION, Fixture.T1));
    assertThat(day.item(SUCTION).mender()).isEqualTo(Fixture.T1);

    day.minute(3).by(Fixture.ANAESTHETIST_1, new Command.Mend(SUCTION));

    assertThat(day.state(SUCTION)).isEqualTo(ItemState.OPEN);
    assertThat(day.item(SUCTION).mender()).isNull();
    day.minute(4).by(Fixture.ANAESTHETIST_1, new Command.Mend(SUCTION));
    keptBecauseOf(Kept.NO_FAULT, SUCTION);
  }

  @Test
  void shouldKeepTheFirstFaultsTimeAndMenderWhenToldAgain() {
    day.minute(1)
        .by(Fixture.ANAESTHETIST_1, new Command.Fault(SUCTION, WHY))
        .by(Fixture.ANAESTHETIST_1, new Command.TakeFault(SUCTION, Fixture.T1));

    day.minute(5).by(Fixture.ANAESTHETIST_1, new Command.Fault(SUCTION, Private.of("the hose")));

    assertThat(day.item(SUCTION).since()).isEqualTo(Fixture.BEGIN + Fixture.MINUTE);
    assertThat(day.item(SUCTION).mender()).isEqualTo(Fixture.T1);
    assertThat(day.item(SUCTION).what()).isEqualTo(Private.of("the hose"));
  }

  @Test
  void shouldClampWhenItHappenedBetweenOpeningAndNow() {
    day.minute(20).touched(-30, Fixture.ANAESTHETIST_1, good(SUCTION));
    assertThat(day.item(SUCTION).since()).isEqualTo(Fixture.BEGIN);

    ItemRef bag = Fixture.in(Fixture.R1, "machine.bag");
    day.touched(300, Fixture.ANAESTHETIST_1, good(bag));
    assertThat(day.item(bag).since()).isEqualTo(day.now());
  }

  @Test
  void shouldNeverRecordBeforeTheEventBeforeItWhenTheClockGoesBack() {
    day.minute(20).by(Fixture.ANAESTHETIST_1, good(SUCTION));
    day.minute(10).by(Fixture.ANAESTHETIST_1, good(Fixture.in(Fixture.R1, "machine.bag")));

    assertThat(day.journal())
        .extracting(Recorded::recordedAt)
        .isSorted()
        .endsWith(Fixture.BEGIN + 20 * Fixture.MINUTE);
  }

  @Test
  void shouldMarkALateEntry() {
    day.minute(20).touched(19, Fixture.ANAESTHETIST_1, good(SUCTION));
    assertThat(((Event.ItemGood) day.events().get(0)).flags()).isEmpty();

    day.touched(5, Fixture.ANAESTHETIST_1, good(Fixture.in(Fixture.R1, "machine.bag")));
    assertThat(((Event.ItemGood) day.events().get(0)).flags()).containsExactly("late-entry");
  }

  @Test
  void shouldSayWhatIsUnknown() {
    day.by(Fixture.ANAESTHETIST_1, good(Fixture.in(Fixture.R1, "machine.teapot")));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);
    assertThat(day.words()).contains("room:1/machine.teapot");

    day.by(
        Fixture.ANAESTHETIST_1,
        new Command.Good(SUCTION, new Evidence.Touch(), new PersonId("Q9"), null));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);
    assertThat(day.words()).contains("person Q9");
  }
}
