package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Command;
import sunup.board.Morning;
import sunup.board.PersonId;
import sunup.board.Private;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.wire.Standing;

/** What is said of rooms from figures that the test makes, and what of it is kept. */
class StandingTest {
  private static final long TARGET = Suite.at("07:30");

  /** Rooms that all report, so that only figures matter. */
  private static Suite heard(int rooms) {
    Suite suite = new Suite(rooms, "06:00");
    for (int room = 1; room <= rooms; room++) {
      suite.does("06:58", room, Section.IV);
    }
    return suite;
  }

  private static RoomOut out(int room, double onTime, double late, double mean) {
    long start = TARGET + Math.round(late * 60_000);
    return new RoomOut(
        "" + room,
        onTime,
        start,
        start,
        start,
        start,
        start,
        start,
        mean * 60_000,
        0,
        64,
        64,
        List.of(),
        0,
        List.of());
  }

  /** Rooms 1 to n, late by so many minutes. */
  private static Foretold late(Suite suite, String clock, double... late) {
    List<RoomOut> rooms = new ArrayList<>();
    for (int i = 0; i < late.length; i++) {
      rooms.add(out(i + 1, late[i] > 0 ? 0.1 : 0.9, late[i], late[i]));
    }
    return of(suite, clock, rooms);
  }

  private static RoomOut with(RoomOut room, String kind, String item) {
    return new RoomOut(
        room.id(),
        room.onTime(),
        room.start10(),
        room.start50(),
        room.start90(),
        room.could10(),
        room.could50(),
        room.could90(),
        room.meanLateMs(),
        0,
        64,
        64,
        List.of(new Share(room.id(), kind, item, null, null, 1, TARGET)),
        0,
        List.of());
  }

  @Test
  void shouldNotCallAQuietRoomLateForWhatIsRarelyNeededButForAFaultThatSomebodyMends() {
    Suite suite = heard(1);
    Foretold figures =
        of(suite, "07:20", List.of(with(out(1, 0.1, 20, 20), "mend", "monitors.basic")));
    assertThat(Shown.at(suite, "07:20", figures).room(1).standing()).isEqualTo(Standing.UNHEARD);
    suite.desk("07:00", new Command.Fault(Suite.ofRoom(1, "monitors.basic"), Private.of("dark")));
    suite.desk(
        "07:01", new Command.TakeFault(Suite.ofRoom(1, "monitors.basic"), new PersonId("T1")));
    assertThat(Shown.at(suite, "07:20", figures).room(1).standing()).isEqualTo(Standing.LATE);
  }

  @Test
  void shouldCountNoRoomOnTimeAndShowNoFigureOfItBeforeAnybodyWasHeardFromIt() {
    Suite suite = new Suite(2, "06:00");
    suite.does("06:25", 2, Section.IV);
    for (String clock : List.of("06:26", "06:35")) {
      for (double late : new double[] {0, 12}) {
        Shown shown = Shown.at(suite, clock, late(suite, clock, late, 0));
        assertThat(shown.room(1).standing()).as(clock).isEqualTo(Standing.UNHEARD);
        assertThat(shown.room(1).ask()).as(clock).isFalse();
        assertThat(shown.column(1).start50()).as(clock).isNull();
        assertThat(shown.column(1).lateMinutes()).as(clock).isZero();
        assertThat(shown.chance(1).onTime()).as(clock).isNull();
        assertThat(shown.suite().onTime()).as(clock).isEqualTo(1);
        assertThat(shown.suite().quiet()).as(clock).isEqualTo(1);
      }
    }
    suite.does("06:36", 1, Section.IV);
    Shown heard = Shown.at(suite, "06:37", late(suite, "06:37", 0, 0));
    assertThat(heard.room(1).standing()).isEqualTo(Standing.AHEAD);
    assertThat(heard.suite().onTime()).isEqualTo(2);
  }

  private static Foretold of(Suite suite, String clock, List<RoomOut> rooms) {
    Forecast figures = new Forecast(1, "", 1, 64, Suite.at(clock), rooms, List.of(), List.of());
    return new Foretold(figures, suite.morning().seq(), false);
  }

  @Test
  void shouldShowANewFigureAtOnceWhenTheRoomsOwnTouchIsInTheFiguresAndNotBefore() {
    Suite suite = heard(2);
    Foretold old = late(suite, "07:00", 10, 10);
    Shown first = Shown.at(suite, "07:00", old);
    suite.does("07:01", 1, Section.SUCTION);
    Shown touched = Shown.after(first.judged(), suite, "07:01", old);
    assertThat(touched.room(1).lateMinutes()).isEqualTo(10);
    Shown told = Shown.after(touched.judged(), suite, "07:01", late(suite, "07:01", 20, 10));
    assertThat(told.room(1).lateMinutes()).isEqualTo(20);
  }

  @Test
  void shouldNotLetAnotherRoomsTouchMoveAFigureAtOnce() {
    Suite suite = heard(2);
    Shown first = Shown.at(suite, "07:00", late(suite, "07:00", 10, 10));
    suite.does("07:01", 2, Section.SUCTION);
    Shown told = Shown.after(first.judged(), suite, "07:01", late(suite, "07:01", 20, 2));
    assertThat(told.room(2).lateMinutes()).isEqualTo(2);
    assertThat(told.room(1).lateMinutes()).isEqualTo(10);
    Shown later = Shown.after(told.judged(), suite, "07:02", late(suite, "07:02", 20, 2));
    assertThat(later.room(1).lateMinutes()).isEqualTo(20);
  }

  @Test
  void shouldMoveTheTimeOfAStartNoMoreOftenThanItsMinutesAndInAnEarlyRoomToo() {
    Suite suite = heard(1);
    for (double start : new double[] {10, -10}) {
      long about = TARGET + Math.round(start * 60_000);
      Shown shown = Shown.at(suite, "07:00", late(suite, "07:00", start));
      assertThat(shown.column(1).start50()).isEqualTo(about);
      shown = Shown.after(shown.judged(), suite, "07:01", late(suite, "07:01", start + 2));
      assertThat(shown.column(1).start50()).isEqualTo(about);
      assertThat(shown.wait(1).about()).isEqualTo(about);
      shown = Shown.after(shown.judged(), suite, "07:02", late(suite, "07:02", start + 4));
      assertThat(shown.column(1).start50()).as("for less than a minute").isEqualTo(about);
      shown = Shown.after(shown.judged(), suite, "07:03", late(suite, "07:03", start + 4));
      assertThat(shown.column(1).start50()).isEqualTo(about + 4 * 60_000);
      assertThat(shown.wait(1).about()).isEqualTo(about + 4 * 60_000);
    }
  }

  @Test
  void shouldNeverShowAStartThatIsPast() {
    Suite suite = heard(1);
    suite.does("07:28", 1, Section.SUCTION);
    Shown shown = Shown.at(suite, "07:29", late(suite, "07:29", 1));
    assertThat(shown.column(1).start50()).isEqualTo(TARGET + 60_000);
    shown = Shown.after(shown.judged(), suite, "07:33", late(suite, "07:33", 4));
    assertThat(shown.column(1).start50()).isGreaterThanOrEqualTo(Suite.at("07:33"));
  }

  @Test
  void shouldTakeMoreTrialsOfTheSameMomentForTheSameAnswer() {
    Suite suite = heard(1);
    Shown first = Shown.at(suite, "07:00", late(suite, "07:00", 10));
    Shown refined = Shown.after(first.judged(), suite, "07:00", late(suite, "07:00", 14));
    assertThat(refined.room(1).lateMinutes()).isEqualTo(14);
  }

  @Test
  void shouldMeasureLateAndTightRoomsByTheSameMedianStart() {
    Suite suite = heard(3);
    List<RoomOut> rooms = List.of(out(1, 0.30, 6, 9), out(2, 0.45, 4, 8), out(3, 0.55, 0, 5));
    Shown shown = Shown.at(suite, "07:00", of(suite, "07:00", rooms));
    assertThat(shown.column(1).standing()).isEqualTo(Standing.LATE);
    assertThat(shown.column(1).lateMinutes()).isEqualTo(6);
    assertThat(shown.column(2).standing()).isEqualTo(Standing.TIGHT);
    assertThat(shown.column(2).lateMinutes()).isEqualTo(4);
    assertThat(shown.column(3).standing()).isEqualTo(Standing.TIGHT);
    assertThat(shown.column(3).lateMinutes()).isZero();
  }

  @Test
  void shouldSortOnceAMinuteHoweverManyRoomsAreAdded() {
    Suite suite = heard(3);
    Shown first = Shown.at(suite, "07:00", late(suite, "07:00", 5, 15, 0));
    assertThat(first.judged().needs()).containsExactly("2", "1");
    Shown added = at(first, suite, "07:00", 40, late(suite, "07:00", 5, 15, 40));
    assertThat(added.judged().needs()).containsExactly("2", "1", "3");
    Shown sorted = at(added, suite, "07:01", 0, late(suite, "07:01", 5, 15, 40));
    assertThat(sorted.judged().needs()).containsExactly("3", "2", "1");
  }

  @Test
  void shouldSortAFastRehearsalNoFasterThanEyesFollow() {
    Suite suite = heard(2);
    Judged judged = Shown.at(suite, "07:00", late(suite, "07:00", 5, 15)).judged();
    for (String clock : List.of("07:01", "07:03", "07:04")) {
      judged = sixtyToOne(suite, judged, clock);
      assertThat(judged.needs()).as("4 real seconds at most, " + clock).containsExactly("2", "1");
    }
    assertThat(sixtyToOne(suite, judged, "07:05").needs()).containsExactly("1", "2");
  }

  private static Judged sixtyToOne(Suite suite, Judged before, String clock) {
    Foretold turned = late(suite, clock, 15, 5);
    return Outlook.judge(before, suite.morning(), turned, Suite.at(clock), 60);
  }

  @Test
  void shouldPutAStuckRoomWhereItBelongsAtOnceAndLeaveTheOthersInPlace() {
    Suite suite = heard(4);
    Shown first = Shown.at(suite, "07:00", late(suite, "07:00", 9, 8, 7, 0));
    Foretold turned = late(suite, "07:00", 7, 8, 9, 0);
    suite.station(
        "07:00", 2, new Command.Fault(Suite.ofRoom(2, "monitors.basic"), Private.of("no reading")));
    suite.station(
        "07:00", 4, new Command.Fault(Suite.ofRoom(4, "monitors.basic"), Private.of("no reading")));
    Shown stuck = at(first, suite, "07:00", 20, turned);
    assertThat(stuck.judged().needs()).containsExactly("2", "1", "3", "4");
    assertThat(stuck.judged().sortedAt()).isEqualTo(Suite.at("07:00"));
  }

  @Test
  void shouldShowAnUnansweredCallOfARoomThatIsLateAndOfOneBelowTheFiveWorst() {
    Suite suite = heard(7);
    Foretold figures = late(suite, "07:00", 70, 60, 50, 40, 30, 20, 10);
    suite.station("07:00", 1, new Command.AskHelp(new RoomId("1"), null));
    suite.station("07:00", 7, new Command.AskHelp(new RoomId("7"), null));
    Shown asked = Shown.at(suite, "07:00", figures);
    assertThat(asked.need(1).kind()).isEqualTo("late");
    assertThat(asked.need(1).help()).isTrue();
    assertThat(asked.need(2).help()).isFalse();
    assertThat(asked.need(7).help()).isTrue();
    assertThat(asked.has("need/6")).isFalse();
    suite.desk("07:01", new Command.AnswerHelp(new RoomId("1"), new PersonId("T1")));
    assertThat(Shown.at(suite, "07:01", figures).need(1).help()).isFalse();
  }

  private static Shown at(Shown before, Suite suite, String clock, int seconds, Foretold figures) {
    Morning morning = suite.morning();
    long now = Suite.at(clock) + seconds * 1_000L;
    Judged judged = Outlook.judge(before.judged(), morning, figures, now);
    return new Shown(judged, Outlook.parts(morning, figures, judged, now));
  }

  @Test
  void shouldCallARoomReadyOnlyOnceItWasReportedReady() {
    Suite suite = heard(1);
    suite.everythingGood("07:05", 1);
    Foretold figures = late(suite, "07:06", 0);
    assertThat(Shown.at(suite, "07:06", figures).room(1).standing()).isEqualTo(Standing.AHEAD);
    suite.station("07:06", 1, new Command.ReportReady(new RoomId("1")));
    figures = late(suite, "07:07", 0);
    assertThat(Shown.at(suite, "07:07", figures).room(1).standing()).isEqualTo(Standing.READY);
  }

  @Test
  void shouldNotCallARoomQuietWhileAnyOfItsItemsIsInHandOfLate() {
    Suite suite = new Suite(1, "06:00");
    PersonId by = new PersonId("A1");
    suite.station("06:31", 1, new Command.Arrive(by, null));
    suite.station("06:32", 1, new Command.Begin(Suite.ofRoom(1, "machine.self-test"), by));
    suite.station("06:45", 1, new Command.Begin(Suite.ofRoom(1, "monitors.basic"), by));
    Foretold figures = late(suite, "07:05", 0);
    assertThat(Shown.at(suite, "07:05", figures).room(1).standing()).isEqualTo(Standing.AHEAD);
    assertThat(Shown.at(suite, "07:20", figures).room(1).standing()).isEqualTo(Standing.UNHEARD);
  }
}
