package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The fixture's alarms lapse after 15 minutes, drawn drugs after 60, the last check after 5. */
class LapseTest {
  private static final ItemRef ALARMS = Fixture.in(Fixture.R1, "machine.alarms");
  private static final ItemRef CHECK = Fixture.of(Fixture.C1, "start.check");
  private static final Command WHEELS_IN = new Command.Reach(Fixture.C1, Step.WHEELS_IN);

  private final Day day = Day.open();

  private Day good(double minute, ItemRef item) {
    return day.minute(minute)
        .by(Fixture.ANAESTHETIST_1, new Command.Good(item, new Evidence.Touch(), null, null));
  }

  @Test
  void shouldLapseWhenItsLifeIsOverAndSayBeforeWhen() {
    good(10, ALARMS);
    Item item = day.item(ALARMS);

    assertThat(day.morning().lapsesAt(item)).isEqualTo(Fixture.BEGIN + 25 * Fixture.MINUTE);
    assertThat(day.minute(24.99).state(ALARMS)).isEqualTo(ItemState.GOOD);
    assertThat(day.minute(25).state(ALARMS)).isEqualTo(ItemState.LAPSED);
    assertThat(item.state()).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldCountLifeFromWhenItHappenedAndNotFromWhenItWasEntered() {
    day.minute(20)
        .touched(
            10, Fixture.ANAESTHETIST_1, new Command.Good(ALARMS, new Evidence.Touch(), null, null));

    assertThat(day.minute(25).state(ALARMS)).isEqualTo(ItemState.LAPSED);
  }

  @Test
  void shouldNotLapseMerelyByTheClockWhenThePatientIsInTheRoom() {
    good(10, ALARMS);
    day.minute(20).by(Fixture.ANAESTHETIST_1, WHEELS_IN);

    assertThat(day.minute(40).state(ALARMS)).isEqualTo(ItemState.GOOD);
    assertThat(day.morning().lapsesAt(day.item(ALARMS))).isNull();
  }

  @Test
  void shouldStayLapsedWhenItHadLapsedBeforeThePatientCame() {
    good(10, ALARMS);
    day.minute(30).by(Fixture.ANAESTHETIST_1, WHEELS_IN);

    assertThat(day.minute(31).state(ALARMS)).isEqualTo(ItemState.LAPSED);
  }

  @Test
  void shouldLetTheCheckAtThePatientLapseUntilItsStep() {
    day.minute(20).by(Fixture.ANAESTHETIST_1, WHEELS_IN);
    good(22, CHECK);
    assertThat(day.minute(27).state(CHECK)).isEqualTo(ItemState.LAPSED);

    good(28, CHECK);
    day.minute(30).by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.INDUCTION));
    assertThat(day.minute(60).state(CHECK)).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldNotMatterOnceTheStepThatItGatesHasHappened() {
    good(10, ALARMS);
    day.minute(24).by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.INDUCTION));

    assertThat(day.minute(60).state(ALARMS)).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldBeMadeGoodAnewAfterItLapsedAndNotBeWitnessed() {
    good(10, ALARMS);
    good(30, ALARMS);

    assertThat(day.events().get(0)).isInstanceOf(Event.ItemGood.class);
    assertThat(day.item(ALARMS).since()).isEqualTo(Fixture.BEGIN + 30 * Fixture.MINUTE);
  }

  @Test
  void shouldGateAgainWhenItLapsed() {
    good(10, ALARMS);
    assertThat(gating(20)).doesNotContain(ALARMS);
    assertThat(gating(26)).contains(ALARMS);
  }

  private java.util.List<ItemRef> gating(double minute) {
    long at = Fixture.BEGIN + Math.round(minute * Fixture.MINUTE);
    return day.morning().gating(Fixture.C1, Step.INDUCTION, at).stream().map(Placed::ref).toList();
  }
}
