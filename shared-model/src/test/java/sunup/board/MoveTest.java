package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Morning.MoveDay;
import sunup.board.Morning.MoveState;

class MoveTest {
  private static final Actor TECHNICIAN = new Actor(Role.TECHNICIAN, Fixture.T1, "pocket-T1");
  private static final Actor SUPERVISOR = new Actor(Role.SUPERVISOR, Fixture.V1, "pocket-V1");
  private static final Move SEND = new Move.SendTo(Fixture.T1, Fixture.R2);
  private static final String KEY = SEND.key();

  private static Day asked() {
    return Day.open()
        .minute(1)
        .by(Fixture.DESK, new Command.Arrive(Fixture.T1, null))
        .by(Fixture.DESK, new Command.AskMove(SEND, null, Fixture.T1));
  }

  private static MoveState state(Day day, String key) {
    MoveDay move = day.morning().moves().get(key);
    return move == null ? null : move.state();
  }

  private static Command answer(MoveAnswer answer) {
    return new Command.AnswerMove(KEY, answer);
  }

  @Test
  void shouldStandAsAskedUntilTheOneWhoMustWalkAccepts() {
    Day day = asked();
    assertThat(state(day, KEY)).isEqualTo(MoveState.ASKED);

    day.by(TECHNICIAN, answer(MoveAnswer.ACCEPT));
    assertThat(state(day, KEY)).isEqualTo(MoveState.ACCEPTED);
    assertThat(day.morning().moves().get(KEY).answeredBy()).isEqualTo(Role.TECHNICIAN);

    day.by(TECHNICIAN, new Command.DoneMove(KEY));
    assertThat(state(day, KEY)).isEqualTo(MoveState.DONE);
  }

  @Test
  void shouldBeOpenForThoseWhomItIsAskedOfUntilSomebodyAnswersOrLeaves() {
    Day day = asked();
    assertThat(OpenAsk.in(day.morning()))
        .singleElement()
        .satisfies(ask -> assertThat(ask.of()).containsExactly(Fixture.T1));
    String key = OpenAsk.in(day.morning()).get(0).key();

    day.by(TECHNICIAN, answer(MoveAnswer.CANNOT));
    assertThat(OpenAsk.in(day.morning())).isEmpty();
    day.minute(2).by(Fixture.DESK, new Command.AskMove(SEND, Role.TECHNICIAN, null));
    assertThat(OpenAsk.in(day.morning()).get(0).key()).isNotEqualTo(key);
    assertThat(OpenAsk.in(day.morning()).get(0).of()).contains(Fixture.T1);

    day.by(Fixture.DESK, new Command.Leave(Fixture.T1, null));
    assertThat(OpenAsk.in(day.morning()).get(0).of()).doesNotContain(Fixture.T1);
  }

  @Test
  void shouldCallWhoeverRoamsOrCoversTheRoomAndNotItsOwnPeople() {
    Day day = Day.open().by(Fixture.ANAESTHETIST_2, new Command.AskHelp(Fixture.R2, null));

    assertThat(OpenAsk.in(day.morning()))
        .singleElement()
        .satisfies(
            ask -> {
              assertThat(ask.of()).contains(Fixture.T1, Fixture.V1);
              assertThat(ask.of()).doesNotContain(Fixture.ANAESTHETIST_2.person());
            });
    day.by(TECHNICIAN, new Command.AnswerHelp(Fixture.R2, Fixture.T1));
    assertThat(OpenAsk.in(day.morning())).isEmpty();
  }

  @Test
  void shouldMakeNothingOfTheSameQuestionOrAnswerTwice() {
    Day day = asked().by(Fixture.DESK, new Command.AskMove(SEND, null, Fixture.T1));
    assertThat(day.events()).isEmpty();

    day.by(TECHNICIAN, answer(MoveAnswer.ACCEPT)).by(TECHNICIAN, answer(MoveAnswer.ACCEPT));
    assertThat(day.events()).isEmpty();
  }

  @Test
  void shouldLetItBeAskedAgainAfterCannotButNotAfterNotSafe() {
    Day day = asked().by(TECHNICIAN, answer(MoveAnswer.CANNOT));
    assertThat(state(day, KEY)).isEqualTo(MoveState.DECLINED);
    day.by(Fixture.DESK, new Command.AskMove(SEND, null, Fixture.T1));
    assertThat(state(day, KEY)).isEqualTo(MoveState.ASKED);

    day.by(TECHNICIAN, answer(MoveAnswer.NOT_SAFE));
    assertThat(state(day, KEY)).isEqualTo(MoveState.NOT_SAFE);
    day.by(Fixture.DESK, new Command.AskMove(SEND, null, Fixture.T1));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_SAFE);
    assertThat(day.words()).contains("not safe");
    day.by(TECHNICIAN, answer(MoveAnswer.ACCEPT));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_SAFE);
  }

  @Test
  void shouldTakeBackAnAcceptedMoveThatIsCalledNotSafe() {
    Day day = asked().by(TECHNICIAN, answer(MoveAnswer.ACCEPT));
    day.by(Fixture.ANAESTHETIST_2, answer(MoveAnswer.NOT_SAFE));
    assertThat(state(day, KEY)).isEqualTo(MoveState.NOT_SAFE);
  }

  @Test
  void shouldRefuseAnAnswerToWhatIsNotAskedAnyMore() {
    Day day = asked().by(Fixture.DESK, new Command.WithdrawMove(KEY));
    day.by(TECHNICIAN, answer(MoveAnswer.ACCEPT));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);

    day.by(TECHNICIAN, new Command.AnswerMove("send.T1.3", MoveAnswer.ACCEPT));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);
  }

  @Test
  void shouldTakeAnAnswerOfTheOneAskedTheRoomsPeopleAndTheDeskOnly() {
    Day day = asked().by(Fixture.ANAESTHETIST_1, answer(MoveAnswer.ACCEPT));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    day.by(Fixture.HOLDING, answer(MoveAnswer.ACCEPT));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);

    // The station of the room that it is for, though nobody signed there.
    day.by(Fixture.at(Fixture.R2, Role.CIRCULATING, null), answer(MoveAnswer.ACCEPT));
    assertThat(state(day, KEY)).isEqualTo(MoveState.ACCEPTED);
  }

  @Test
  void shouldNotLetARoomPromiseWhatIsNotItsOwnButLetItCallThatNotSafe() {
    Move open =
        new Move.OpenEarlier(Fixture.PHARMACY, Fixture.BEGIN + 5 * Fixture.MINUTE, Fixture.R1);
    Day day = Day.open().by(Fixture.DESK, new Command.AskMove(open, Role.PHARMACY, null));
    day.by(Fixture.ANAESTHETIST_1, new Command.AnswerMove(open.key(), MoveAnswer.ACCEPT));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    day.by(Fixture.ANAESTHETIST_1, new Command.DoneMove(open.key()));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);

    day.by(Fixture.ANAESTHETIST_1, new Command.AnswerMove(open.key(), MoveAnswer.NOT_SAFE));
    assertThat(state(day, open.key())).isEqualTo(MoveState.NOT_SAFE);
  }

  @Test
  void shouldLetNobodyAskButDeskAndSupervisor() {
    Day day = Day.open().by(Fixture.DESK, new Command.Arrive(Fixture.T1, null));
    day.by(Fixture.ANAESTHETIST_2, new Command.AskMove(SEND, null, Fixture.T1));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    day.by(SUPERVISOR, new Command.AskMove(SEND, null, Fixture.T1));
    assertThat(state(day, KEY)).isEqualTo(MoveState.ASKED);
  }

  @Test
  void shouldPutATechnicianWhoAcceptsOnTheFaultOfTheRoom() {
    ItemRef suction = Fixture.in(Fixture.R2, "suction.strong");
    Day day = asked().by(Fixture.ANAESTHETIST_2, new Command.Fault(suction, null));
    assertThat(day.item(suction).mender()).isNull();

    day.by(TECHNICIAN, answer(MoveAnswer.ACCEPT));
    assertThat(day.item(suction).mender()).isEqualTo(Fixture.T1);
  }

  @Test
  void shouldPromiseTheUnitOpenThePlaceAndAgreeTheTimeOnceAccepted() {
    long early = Fixture.BEGIN + 5 * Fixture.MINUTE;
    long later = Fixture.BOOKED + 15 * Fixture.MINUTE;
    Move unit = new Move.Unit("ultrasound", Fixture.R2);
    Move open = new Move.OpenEarlier(Fixture.PHARMACY, early, Fixture.R1);
    Move stagger = new Move.Later(Fixture.R3, Fixture.C3, later);
    Day day = Day.open().minute(1);
    for (Move move : List.of(unit, open, stagger)) {
      day.by(Fixture.DESK, new Command.AskMove(move, Role.SUPERVISOR, null));
    }
    assertThat(day.morning().units().get(Fixture.US1).promised()).isNull();
    assertThat(day.morning().places().get(Fixture.PHARMACY).opensAt()).isGreaterThan(early);
    assertThat(day.morning().cases().get(Fixture.C3).agreedAt()).isNull();

    for (Move move : List.of(unit, open, stagger)) {
      day.by(SUPERVISOR, new Command.AnswerMove(move.key(), MoveAnswer.ACCEPT));
    }
    assertThat(day.morning().units().get(Fixture.US1).promised()).isEqualTo(Fixture.R2);
    assertThat(day.morning().places().get(Fixture.PHARMACY).opensAt()).isEqualTo(early);
    assertThat(day.morning().cases().get(Fixture.C3).agreedAt()).isEqualTo(later);
  }

  @Test
  void shouldNeverAskARoomsOnlyCarerAwayOnceThePatientIsIn() {
    Move away = new Move.SendTo(Fixture.A1, Fixture.R2);
    Day day =
        Day.open()
            .minute(1)
            .by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1))
            .by(Fixture.DESK, new Command.AskMove(away, null, Fixture.A1));
    assertThat(state(day, away.key())).isEqualTo(MoveState.ASKED);

    // Asked before, and the patient came meanwhile.
    day.by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.WHEELS_IN))
        .by(Fixture.ANAESTHETIST_1, new Command.AnswerMove(away.key(), MoveAnswer.ACCEPT));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);
    assertThat(day.words()).contains("patient");
  }

  @Test
  void shouldAskWhoServesSeveralRoomsAsPlannedAndRefuseWhoHasNotComeOrHasGone() {
    Day day = Day.open().by(Fixture.DESK, new Command.AskMove(SEND, null, Fixture.T1));
    assertThat(state(day, KEY)).isEqualTo(MoveState.ASKED);

    Move own = new Move.SendTo(Fixture.A1, Fixture.R2);
    day.by(Fixture.DESK, new Command.AskMove(own, null, Fixture.A1));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);

    day.by(Fixture.DESK, new Command.Leave(Fixture.T1, null))
        .by(TECHNICIAN, new Command.AnswerMove(KEY, MoveAnswer.ACCEPT));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);
  }

  @Test
  void shouldSwapNothingWhenTwoRoomsTalkAboutIt() {
    Move talk = new Move.Talk(Fixture.R1, Fixture.R3);
    Day day = Day.open().by(Fixture.DESK, new Command.AskMove(talk, Role.SUPERVISOR, null));
    day.by(SUPERVISOR, new Command.AnswerMove(talk.key(), MoveAnswer.ACCEPT));
    day.by(SUPERVISOR, new Command.DoneMove(talk.key()));

    assertThat(day.morning().caseIn(Fixture.R1).plan().id()).isEqualTo(Fixture.C1);
    assertThat(day.morning().caseIn(Fixture.R3).plan().id()).isEqualTo(Fixture.C3);
  }
}
