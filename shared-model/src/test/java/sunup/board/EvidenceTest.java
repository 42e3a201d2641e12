package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class EvidenceTest {
  private static final ItemRef CYLINDER = Fixture.in(Fixture.R1, "machine.cylinder");
  private static final ItemRef ABSORBENT = Fixture.in(Fixture.R1, "machine.absorbent");
  private static final ItemRef CONTROLLED = Fixture.of(Fixture.C1, "drugs.controlled");
  private static final ItemRef ULTRASOUND = Fixture.of(Fixture.C2, "special.ultrasound");

  private final Day day = Day.open().minute(5);

  private Day reads(double value, String unit, boolean undone) {
    return day.by(
        Fixture.ANAESTHETIST_1,
        new Command.Good(CYLINDER, new Evidence.Reading(value, unit, undone), null, null));
  }

  @Test
  void shouldTakeANumberInItsBand() {
    reads(180, "bar", true);

    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.GOOD);
    assertThat(day.item(CYLINDER).evidence()).isEqualTo(new Evidence.Reading(180, "bar", true));
  }

  @Test
  void shouldMakeAReadingOutsideItsBandAFault() {
    reads(20, "bar", true);

    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.FAULT);
    assertThat(day.item(CYLINDER).evidence()).isEqualTo(new Evidence.Reading(20, "bar", true));
  }

  @Test
  void shouldMakeAGoodItemAFaultWhenALaterReadingIsOutsideItsBand() {
    reads(180, "bar", true);
    day.minute(7);
    reads(20, "bar", true);

    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.FAULT);
  }

  @Test
  void shouldRefuseANumberThatCannotBeMeantAndSayTheRange() {
    for (double value :
        new double[] {1800, -1, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
      reads(value, "bar", true);
      assertThat(day.code()).isEqualTo(RefusalCode.OUT_OF_RANGE);
      assertThat(day.words()).contains("from 0 to 250 bar");
    }
    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldRefuseANumberInAUnitOfSomethingElse() {
    for (String unit : new String[] {"L/min", "PSI"}) {
      reads(180, unit, true);
      assertThat(day.code()).isEqualTo(RefusalCode.EVIDENCE_MISSING);
      assertThat(day.words()).contains("in bar, not in " + unit);
    }
  }

  /** 13,700 kPa = 137 bar = 1,987 psi (NIST SP 811, B.8); good from 50 bar, read to 250. */
  @Test
  void shouldKeepAReadingOfAnyGaugeInTheUnitOfItsSheet() {
    reads(13_700, "kPa", true);
    assertThat(day.item(CYLINDER).evidence()).isEqualTo(new Evidence.Reading(137, "bar", true));
    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.GOOD);
    day.minute(6);
    reads(1987, "psi", true);
    assertThat(((Evidence.Reading) day.item(CYLINDER).evidence()).value())
        .isCloseTo(137, within(0.01));
  }

  @Test
  void shouldTakeTheEndOfABandForGoodInEveryUnit() {
    reads(5000, "kPa", true);
    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldNeverTakeTheNumberOfOneGaugeForGoodInTheUnitOfAnother() {
    double[] number = {13_700, 137, 1987};
    String[] unit = {"kPa", "bar", "psi"};
    for (int read = 0; read < number.length; read++) {
      for (int said = 0; said < unit.length; said++) {
        if (read != said) {
          Day morning = Day.open().minute(5);
          Evidence.Reading reading = new Evidence.Reading(number[read], unit[said], true);
          morning.by(Fixture.ANAESTHETIST_1, new Command.Good(CYLINDER, reading, null, null));
          assertThat(morning.state(CYLINDER)).as(reading.toString()).isNotEqualTo(ItemState.GOOD);
        }
      }
    }
  }

  @Test
  void shouldSayTheRangeInTheUnitThatWasRead() {
    reads(137_000, "kPa", true);
    assertThat(day.words()).contains("from 0 to 25000 kPa");
    reads(13_700, "psi", true);
    assertThat(day.words()).contains("from 0 to 3625 psi");
  }

  @Test
  void shouldAskForWhatMustBePutBack() {
    reads(180, "bar", false);
    assertThat(day.code()).isEqualTo(RefusalCode.EVIDENCE_MISSING);
    assertThat(day.words()).contains("close the cylinder again");
  }

  @Test
  void shouldNotTakeATouchForANumber() {
    day.by(Fixture.ANAESTHETIST_1, new Command.Good(CYLINDER, new Evidence.Touch(), null, null));
    assertThat(day.code()).isEqualTo(RefusalCode.EVIDENCE_MISSING);
    assertThat(day.words()).contains("number in bar");
  }

  @Test
  void shouldTakeOneOfTheWordsAndMakeTheBadOneAFault() {
    choose("perhaps");
    assertThat(day.code()).isEqualTo(RefusalCode.EVIDENCE_MISSING);
    assertThat(day.words()).contains("fine, changed, spent");

    choose("fine");
    assertThat(day.state(ABSORBENT)).isEqualTo(ItemState.GOOD);

    day.minute(8);
    choose("spent");
    assertThat(day.state(ABSORBENT)).isEqualTo(ItemState.FAULT);
    assertThat(day.item(ABSORBENT).evidence()).isEqualTo(new Evidence.Choice("spent"));
  }

  private void choose(String word) {
    day.by(
        Fixture.ANAESTHETIST_1, new Command.Good(ABSORBENT, new Evidence.Choice(word), null, null));
  }

  @Test
  void shouldNeedTwoDifferentPeopleWhenTheSheetAsksForAWitness() {
    sign(Fixture.A1, null);
    assertThat(day.code()).isEqualTo(RefusalCode.EVIDENCE_MISSING);
    assertThat(day.words()).contains("two people");

    sign(Fixture.A1, Fixture.A1);
    assertThat(day.code()).isEqualTo(RefusalCode.SAME_PERSON);

    sign(null, Fixture.A1); // signed on as A1
    assertThat(day.code()).isEqualTo(RefusalCode.SAME_PERSON);

    sign(Fixture.A1, Fixture.N1);
    assertThat(day.state(CONTROLLED)).isEqualTo(ItemState.GOOD);
    assertThat(day.item(CONTROLLED).witness()).isEqualTo(Fixture.N1);
  }

  private void sign(PersonId by, PersonId witness) {
    day.by(Fixture.ANAESTHETIST_1, new Command.Good(CONTROLLED, new Evidence.Touch(), by, witness));
  }

  @Test
  void shouldMoveTheScannedUnitToTheRoom() {
    day.decided(Fixture.DESK, new Command.Claim(Fixture.US1, Fixture.R3));

    scan(Fixture.US1);

    assertThat(day.events().get(0)).isEqualTo(new Event.UnitClaimed(Fixture.US1, Fixture.R2));
    assertThat(day.state(ULTRASOUND)).isEqualTo(ItemState.GOOD);
    assertThat(day.morning().units().get(Fixture.US1).with()).isEqualTo(Fixture.R2);
  }

  @Test
  void shouldRefuseAScanOfAnUnknownTagOrAnotherKind() {
    scan(new UnitId("US9"));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);

    scan(Fixture.MIC);
    assertThat(day.code()).isEqualTo(RefusalCode.EVIDENCE_MISSING);
    assertThat(day.morning().units().get(Fixture.MIC).with()).isNull();
  }

  private void scan(UnitId unit) {
    day.by(
        Fixture.ANAESTHETIST_2, new Command.Good(ULTRASOUND, new Evidence.Scan(unit), null, null));
  }
}
