package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import sunup.board.Morning.UnitDay;

/** Equipment, places, what rooms are used for; holdups, help, notes. */
class ThingTest {
  private static final ItemRef HERE = Fixture.of(Fixture.C2, "special.ultrasound");
  private static final ItemRef BLOCK = Fixture.of(Fixture.C2, "special.block");

  private final Day day = Day.open().minute(5);

  private UnitDay unit(UnitId id) {
    return day.morning().units().get(id);
  }

  private Day scanned() {
    return day.by(
        Fixture.ANAESTHETIST_2, new Command.Good(HERE, new Evidence.Scan(Fixture.US1), null, null));
  }

  @Test
  void shouldFreeAUnitFromItsFormerRoomWhenItIsClaimed() {
    day.decided(Fixture.DESK, new Command.Claim(Fixture.US1, Fixture.R1))
        .decided(Fixture.DESK, new Command.Claim(Fixture.US1, Fixture.R3));
    assertThat(unit(Fixture.US1).with()).isEqualTo(Fixture.R3);

    day.decided(Fixture.DESK, new Command.Claim(Fixture.US1, Fixture.R3));
    assertThat(day.events()).isEmpty();

    day.decided(Fixture.DESK, new Command.Release(Fixture.US1));
    assertThat(unit(Fixture.US1).with()).isNull();
    day.decided(Fixture.DESK, new Command.Release(Fixture.US1));
    assertThat(day.events()).isEmpty();
  }

  @Test
  void shouldKeepAPromiseWithAnyUnitOfTheKind() {
    day.decided(Fixture.DESK, new Command.PromiseUnit(Fixture.US1, Fixture.R3));
    assertThat(unit(Fixture.US1).promised()).isEqualTo(Fixture.R3);

    day.decided(Fixture.DESK, new Command.Claim(Fixture.MIC, Fixture.R3));
    assertThat(unit(Fixture.US1).promised()).isEqualTo(Fixture.R3);
    day.decided(Fixture.DESK, new Command.Claim(Fixture.US2, Fixture.R3));
    assertThat(unit(Fixture.US1).promised()).isNull();
  }

  @Test
  void shouldTakeAPromiseBack() {
    day.decided(Fixture.DESK, new Command.PromiseUnit(Fixture.US1, Fixture.R3))
        .decided(Fixture.DESK, new Command.PromiseUnit(Fixture.US1, null));
    assertThat(unit(Fixture.US1).promised()).isNull();
  }

  @Test
  void shouldOpenTheItemAgainWhenItsUnitIsTakenAwayBeforeTheWork() {
    scanned().minute(8).decided(Fixture.DESK, new Command.Claim(Fixture.US1, Fixture.R3));

    assertThat(day.events())
        .containsExactly(
            new Event.UnitClaimed(Fixture.US1, Fixture.R3), new Event.ItemReopened(HERE, null));
    assertThat(day.state(HERE)).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldLeaveTheItemGoodWhenItsUnitGoesAfterTheWork() {
    scanned()
        .minute(20)
        .by(Fixture.ANAESTHETIST_2, new Command.Good(BLOCK, new Evidence.Touch(), null, null))
        .decided(Fixture.DESK, new Command.Release(Fixture.US1));

    assertThat(day.events()).containsExactly(new Event.UnitReleased(Fixture.US1));
    assertThat(day.state(HERE)).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldOpenAPlaceAtAnotherTime() {
    long earlier = Fixture.BEGIN + 8 * Fixture.MINUTE;
    day.by(Fixture.DESK, new Command.PlaceOpens(Fixture.PHARMACY, earlier));
    assertThat(day.morning().places().get(Fixture.PHARMACY).opensAt()).isEqualTo(earlier);

    day.by(Fixture.DESK, new Command.PlaceOpens(Fixture.PHARMACY, 12));
    assertThat(day.code()).isEqualTo(RefusalCode.OUT_OF_RANGE);
    day.by(Fixture.DESK, new Command.PlaceOpens(new PlaceId("moon"), earlier));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);
  }

  @Test
  void shouldSayWhatARoomIsUsedFor() {
    day.by(Fixture.DESK, new Command.SayRoom(Fixture.R1, RoomUse.EMERGENCY, Fixture.BOOKED));
    assertThat(day.morning().rooms().get(Fixture.R1).use()).isEqualTo(RoomUse.EMERGENCY);
    assertThat(day.morning().rooms().get(Fixture.R1).useUntil()).isEqualTo(Fixture.BOOKED);
  }

  @Test
  void shouldKeepWhoHasTakenAHoldupAndWhenToLookAgain() {
    long again = Fixture.BEGIN + 25 * Fixture.MINUTE;
    day.by(
        Fixture.DESK,
        new Command.TakeHoldup(Fixture.R1, "item:consent", Private.of("paged"), again));

    Morning.Taken taken = day.morning().rooms().get(Fixture.R1).taken();
    assertThat(taken.by()).isEqualTo(Role.DESK);
    assertThat(taken.lookAgainAt()).isEqualTo(again);
  }

  @Test
  void shouldAskForHelpUntilTheHelperIsInTheRoom() {
    day.by(Fixture.ANAESTHETIST_1, new Command.AnswerHelp(Fixture.R1, Fixture.T1));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);

    day.by(Fixture.ANAESTHETIST_1, new Command.AskHelp(Fixture.R1, Private.of("second hands")));
    day.by(Fixture.DESK, new Command.AnswerHelp(Fixture.R1, null));
    assertThat(day.code()).isEqualTo(RefusalCode.EVIDENCE_MISSING);

    day.by(Fixture.DESK, new Command.Arrive(Fixture.T1, null))
        .by(Fixture.DESK, new Command.AnswerHelp(Fixture.R1, Fixture.T1));
    assertThat(day.morning().rooms().get(Fixture.R1).help().answeredBy()).isEqualTo(Fixture.T1);

    day.by(Fixture.DESK, new Command.Join(Fixture.T1, Fixture.R1));
    assertThat(day.morning().rooms().get(Fixture.R1).help()).isNull();
  }

  @Test
  void shouldKeepTheNewestNotesOnly() {
    for (int i = 0; i < Morning.MAX_NOTES + 2; i++) {
      day.by(Fixture.DESK, new Command.AddNote(null, Private.of("note " + i)));
    }
    assertThat(day.morning().notes()).hasSize(Morning.MAX_NOTES);
    assertThat(day.morning().notes().get(0).text()).isEqualTo(Private.of("note 2"));
  }
}
