package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.PersonId;
import sunup.board.Section;
import sunup.board.Step;
import sunup.forecast.Forecast;
import sunup.wire.Part.ChancePart;
import sunup.wire.Part.RoomPart;
import sunup.wire.Standing;

/** What is not known is said not to be known. */
class UnknownTest {
  private static final List<String> LATE_IN_THE_DAY = List.of("07:25", "07:45", "11:29", "12:40");

  /** Room 2 reports, room 1 says nothing. */
  private static Suite roomOneSilent() {
    Suite suite = new Suite(2, "06:00");
    suite.station("06:31", 2, new Command.Arrive(new PersonId("A2"), null));
    return suite.does("06:37", 2, Section.MACHINE).does("06:39", 2, Section.SUCTION);
  }

  @Test
  void shouldTellNoStartAndNoLatenessOfARoomThatNobodyReportedFrom() {
    Suite suite = roomOneSilent();
    for (String clock : LATE_IN_THE_DAY) {
      Shown shown = Shown.at(suite, clock);
      assertThat(shown.room(1).standing()).as(clock).isEqualTo(Standing.UNHEARD);
      ChancePart chance = shown.chance(1);
      assertThat(chance.start10()).as(clock).isNull();
      assertThat(chance.start50()).as(clock).isNull();
      assertThat(chance.start90()).as(clock).isNull();
      assertThat(chance.onTime()).as(clock).isNull();
      assertThat(chance.meanLateMinutes()).as(clock).isNull();
      assertThat(chance.moreThanHours()).as(clock).isNull();
      assertThat(chance.shares()).as(clock).isEmpty();
      assertThat(shown.wait(1).about()).as(clock).isNull();
      assertThat(shown.column(1).start50()).as(clock).isNull();
      assertThat(shown.column(1).lateMinutes()).as(clock).isZero();
    }
  }

  @Test
  void shouldNeverTellAStartThatIsPast() {
    Suite suite = roomOneSilent();
    for (String clock : LATE_IN_THE_DAY) {
      Shown shown = Shown.at(suite, clock);
      ChancePart chance = shown.chance(2);
      for (Long at : new Long[] {chance.start10(), chance.start50(), chance.start90()}) {
        if (at != null) {
          assertThat(at).as(clock).isGreaterThanOrEqualTo(Suite.at(clock));
        }
      }
    }
  }

  @Test
  void shouldSayMoreThanSoManyHoursInsteadOfAStartAtTheEndOfWhatIsComputed() {
    Suite suite = roomOneSilent();
    suite.does("12:00", 2, Section.MONITORS);
    Shown soon = Shown.at(suite, "12:10");
    ChancePart chance = soon.chance(2);
    assertThat(soon.room(2).standing()).isEqualTo(Standing.LATE);
    assertThat(chance.start50()).isNull();
    assertThat(chance.moreThanHours()).isEqualTo(4);
    assertThat(chance.capped()).isPositive();
    assertThat(soon.wait(2).about()).isNull();
    RoomPart column = soon.column(2);
    assertThat(column.start50()).isNull();
    assertThat(column.lateMinutes()).isEqualTo(240);
    assertThat(column.orMore()).isTrue();
    assertThat(soon.need(2).orMore()).isTrue();
  }

  @Test
  void shouldNotTakeTheSilenceOfADraftForAnything() {
    Suite suite = Suite.draft(2, "06:00");
    for (String clock : List.of("06:50", "07:10", "07:29")) {
      Shown shown = Shown.at(suite, clock);
      assertThat(shown.room(1).standing()).as(clock).isNotEqualTo(Standing.UNHEARD);
      assertThat(shown.room(1).ask()).as(clock).isFalse();
      assertThat(shown.suite().quiet()).as(clock).isZero();
    }
  }

  @Test
  void shouldSayThatThereAreNoFiguresAndNotCountTheRoomOnTime() {
    Shown none = Shown.at(new Suite(2, "06:00"), "06:32", Foretold.NONE);
    assertThat(none.room(1).standing()).isEqualTo(Standing.NO_FIGURES);
    assertThat(none.column(1).word()).isEqualTo("no figures");
    assertThat(none.suite().onTime()).isNull();
    assertThat(none.suite().cases()).isEqualTo(2);
    assertThat(none.judged().needs()).isEmpty();
  }

  @Test
  void shouldCountOfAClosedMorningWhatStartedOnTimeThoughNothingIsComputedAnyMore() {
    Suite suite = new Suite(3, "06:00");
    suite.station("07:28", 2, new Command.Reach(new CaseId("C2"), Step.INDUCTION));
    suite.desk("12:10", new Command.CloseMorning());
    Shown over = Shown.at(suite, "12:11", Foretold.NONE);
    assertThat(over.suite().onTime()).isEqualTo(1);
    assertThat(over.suite().cases()).isEqualTo(3);
  }

  @Test
  void shouldKeepOldFiguresAndSayWhatMomentTheyAreOf() {
    Suite suite = roomOneSilent();
    Forecast figures = Shown.forecast(suite.morning(), "07:00");
    Shown old = Shown.at(suite, "07:12", new Foretold(figures, suite.morning().seq(), true));
    assertThat(old.suite().figuresOf()).isEqualTo(Suite.at("07:00"));
    assertThat(old.has("chance/2")).isTrue();
    Shown now = Shown.at(suite, "07:12");
    assertThat(now.suite().figuresOf()).isNull();
  }
}
