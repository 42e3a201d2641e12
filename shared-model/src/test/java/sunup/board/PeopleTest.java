package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Morning.PersonDay;

/** People, and whose word was heard when. */
class PeopleTest {
  private static final ItemRef BAG = Fixture.in(Fixture.R1, "machine.bag");

  private final Day day = Day.open().minute(5);

  private PersonDay person(PersonId id) {
    return day.morning().people().get(id);
  }

  private Long lastWord(RoomId room) {
    return day.morning().rooms().get(room).lastWordAt();
  }

  private static Command good(ItemRef item) {
    return new Command.Good(item, new Evidence.Touch(), null, null);
  }

  @Test
  void shouldArriveOnceAndTellTheRoom() {
    day.by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1));
    assertThat(person(Fixture.A1).arrivedAt()).isEqualTo(day.now());
    assertThat(person(Fixture.A1).room()).isEqualTo(Fixture.R1);
    assertThat(lastWord(Fixture.R1)).isEqualTo(day.now());

    day.minute(9).by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1));
    assertThat(day.events()).isEmpty();
    assertThat(person(Fixture.A1).arrivedAt()).isEqualTo(Fixture.BEGIN + 5 * Fixture.MINUTE);
  }

  @Test
  void shouldTakeAWordOfSomebodyWhoIsSignedOnAndNotPlanned() {
    PersonId float7 = new PersonId("F7");
    day.by(new Actor(Role.CIRCULATING, float7, "station-1"), good(BAG));

    assertThat(day.state(BAG)).isEqualTo(ItemState.GOOD);
    assertThat(day.item(BAG).by()).isNull();
    assertThat(day.journal().get(day.journal().size() - 1).actor().person()).isEqualTo(float7);
  }

  @Test
  void shouldBeExpectedAtAnotherTimeUntilArriving() {
    day.by(Fixture.DESK, new Command.ExpectPerson(Fixture.A1, Fixture.BOOKED, null));
    assertThat(person(Fixture.A1).expectedAt()).isEqualTo(Fixture.BOOKED);

    day.by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1));
    assertThat(person(Fixture.A1).expectedAt()).isNull();

    day.by(Fixture.DESK, new Command.ExpectPerson(Fixture.A1, Fixture.BOOKED, null));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);
  }

  @Test
  void shouldLeaveARoomAndTheMorningAndComeBack() {
    day.by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1))
        .by(Fixture.ANAESTHETIST_1, new Command.Leave(Fixture.A1, Fixture.R1));
    assertThat(person(Fixture.A1).room()).isNull();
    assertThat(person(Fixture.A1).isHere()).isTrue();

    day.by(Fixture.DESK, new Command.Leave(Fixture.A1, null));
    assertThat(person(Fixture.A1).isHere()).isFalse();
    day.by(Fixture.DESK, new Command.Leave(Fixture.A1, null));
    assertThat(day.events()).isEmpty();

    day.by(Fixture.DESK, new Command.Join(Fixture.A1, Fixture.R1));
    assertThat(person(Fixture.A1).isHere()).isTrue();
  }

  private static Command standIn(String id, Role role, RoomId room) {
    long at = Fixture.BEGIN + 20 * Fixture.MINUTE;
    return new Command.AddPerson(new PersonPlan(new PersonId(id), role, room, List.of(), at));
  }

  @Test
  void shouldTakeAStandInFromATimeOnWhoThenIsOneOfTheRoomsPeople() {
    PersonId other = new PersonId("A9");
    Actor signed = new Actor(Role.ANAESTHETIST, other, "pocket-A9");
    day.by(signed, good(BAG));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);

    day.by(Fixture.DESK, standIn("A9", Role.ANAESTHETIST, Fixture.R1));
    assertThat(person(other).plan().plannedAt()).isEqualTo(Fixture.BEGIN + 20 * Fixture.MINUTE);
    assertThat(person(other).isHere()).isFalse();
    day.by(signed, good(BAG));
    assertThat(day.item(BAG).by()).isEqualTo(other);
  }

  @Test
  void shouldSayWhyAStandInCantBeTaken() {
    day.by(Fixture.DESK, standIn("A1", Role.ANAESTHETIST, Fixture.R1));
    assertThat(day.code()).isEqualTo(RefusalCode.BAD_PLAN);
    assertThat(day.words()).contains("Choose another pseudonym");
    day.by(Fixture.DESK, standIn("A9", Role.MANAGER, null));
    assertThat(day.words()).contains("Choose what the person does");
    day.by(Fixture.DESK, standIn("A9", Role.ANAESTHETIST, new RoomId("77")));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);
    day.by(Fixture.ANAESTHETIST_1, standIn("A9", Role.ANAESTHETIST, Fixture.R1));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
  }

  @Test
  void shouldTakeWhoDoesNotComeOffTheMorningUntilHeOrSheComesAfterAll() {
    day.by(Fixture.DESK, new Command.Leave(Fixture.A1, null));
    assertThat(person(Fixture.A1).leftAt()).isEqualTo(day.now());
    assertThat(person(Fixture.A1).arrivedAt()).isNull();

    day.minute(9).by(Fixture.DESK, new Command.Arrive(Fixture.A1, Fixture.R1));
    assertThat(person(Fixture.A1).isHere()).isTrue();
  }

  @Test
  void shouldHandOverTheRoomAndWhatIsInHand() {
    day.by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1))
        .by(Fixture.ANAESTHETIST_1, new Command.Begin(BAG, null))
        .by(Fixture.DESK, new Command.HandOver(Fixture.A1, Fixture.A2, Fixture.R1));

    assertThat(person(Fixture.A1).room()).isNull();
    assertThat(person(Fixture.A2).room()).isEqualTo(Fixture.R1);
    assertThat(person(Fixture.A2).isHere()).isTrue();
    assertThat(day.item(BAG).by()).isEqualTo(Fixture.A2);

    day.by(Fixture.DESK, new Command.HandOver(Fixture.A1, Fixture.A1, Fixture.R1));
    assertThat(day.code()).isEqualTo(RefusalCode.SAME_PERSON);
  }

  @Test
  void shouldHearARoomByWordsOfItsPeopleAboutItsOwnSetUp() {
    day.minute(6).by(Fixture.ANAESTHETIST_1, new Command.Begin(BAG, null));
    assertThat(lastWord(Fixture.R1)).isEqualTo(day.now());
    day.minute(7).by(Fixture.ANAESTHETIST_1, good(BAG));
    assertThat(lastWord(Fixture.R1)).isEqualTo(day.now());
    day.minute(8)
        .by(Fixture.ANAESTHETIST_1, new Command.Sweep(Fixture.R1, Section.AIRWAY, List.of(), null));
    assertThat(lastWord(Fixture.R1)).isEqualTo(day.now());
    day.minute(9).by(Fixture.ANAESTHETIST_1, new Command.Fault(BAG, null));
    assertThat(lastWord(Fixture.R1)).isEqualTo(day.now());
    day.minute(10).by(Fixture.ANAESTHETIST_1, new Command.Mend(BAG));
    assertThat(lastWord(Fixture.R1)).isEqualTo(day.now());
    day.minute(11).by(Fixture.ANAESTHETIST_1, new Command.ReportReady(Fixture.R1));
    assertThat(lastWord(Fixture.R1)).isEqualTo(day.now());
    day.minute(12).by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.WHEELS_IN));
    assertThat(lastWord(Fixture.R1)).isEqualTo(day.now());
    assertThat(person(Fixture.A1).lastWordAt()).isEqualTo(day.now());
    assertThat(lastWord(Fixture.R2)).isNull();
  }

  @Test
  void shouldNotHearARoomByWordsOfHoldingOrDesk() {
    day.by(Fixture.HOLDING, good(Fixture.of(Fixture.C1, "patient.identity")))
        .by(Fixture.ANAESTHETIST_1, good(Fixture.of(Fixture.C1, "surgeon.seen")))
        .by(Fixture.DESK, new Command.Fault(BAG, null))
        .by(Fixture.DESK, new Command.Mend(BAG))
        .by(Fixture.DESK, new Command.ReportReady(Fixture.R1))
        .by(Fixture.DESK, new Command.SayRoom(Fixture.R1, RoomUse.CLEANING, null))
        .by(Fixture.HOLDING, new Command.Reach(Fixture.C1, Step.SENT_FOR))
        .by(Fixture.DESK, new Command.AddNote(Fixture.R1, Private.of("asked by telephone")));

    assertThat(lastWord(Fixture.R1)).isNull();
  }

  @Test
  void shouldHearAtTheTimeOfTheTouchAndNeverGoBack() {
    day.minute(20)
        .touched(12, Fixture.ANAESTHETIST_1, good(BAG))
        .touched(8, Fixture.ANAESTHETIST_1, good(Fixture.in(Fixture.R1, "suction.strong")));

    assertThat(lastWord(Fixture.R1)).isEqualTo(Fixture.BEGIN + 12 * Fixture.MINUTE);
    assertThat(person(Fixture.A1).lastWordAt()).isEqualTo(Fixture.BEGIN + 12 * Fixture.MINUTE);
  }

  @Test
  void shouldHearThePersonWhoDidItAndTheOneWhoToldIt() {
    Actor nurse = Fixture.at(Fixture.R1, Role.CIRCULATING, Fixture.N1);
    day.by(nurse, new Command.Good(BAG, new Evidence.Touch(), Fixture.A1, null));

    assertThat(person(Fixture.A1).lastWordAt()).isEqualTo(day.now());
    assertThat(person(Fixture.N1).lastWordAt()).isEqualTo(day.now());
    assertThat(person(Fixture.A2).lastWordAt()).isNull();
  }
}
