package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Command;
import sunup.board.Evidence;
import sunup.board.PersonId;
import sunup.board.Private;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.Step;
import sunup.codec.Json;
import sunup.forecast.Forecast;
import sunup.outlook.Judged.RoomJudged;
import sunup.wire.Audience;
import sunup.wire.Part;
import sunup.wire.Part.NeedPart;
import sunup.wire.Part.RoomPart;
import sunup.wire.Standing;

/** What the board says of a suite, from commands to the parts on the screens. */
class OutlookTest {
  private static RoomJudged judged(Suite suite, String clock, int room) {
    return Shown.at(suite, clock).room(room);
  }

  private static List<Part> parts(Suite suite, String clock) {
    return Shown.at(suite, clock).parts();
  }

  private static NeedPart need(List<Part> parts, int room) {
    return parts.stream()
        .filter(p -> p.key().equals("need/" + room))
        .map(NeedPart.class::cast)
        .findFirst()
        .orElseThrow();
  }

  /** A suite in which rooms 2 and 3 report as they go and room 1 says nothing. */
  private static Suite roomOneSilent() {
    Suite suite = new Suite(3, "06:00");
    for (int room = 2; room <= 3; room++) {
      suite.station("06:31", room, new Command.Arrive(new PersonId("A" + room), null));
      suite.does("06:37", room, Section.MACHINE).does("06:39", room, Section.SUCTION);
    }
    return suite;
  }

  @Test
  void shouldNeverCallARoomLateOrReadyForItsSilence() {
    Suite suite = roomOneSilent();
    for (String clock : List.of("06:45", "07:00", "07:15", "07:25", "07:31", "07:50")) {
      assertThat(judged(suite, clock, 1).standing()).as(clock).isEqualTo(Standing.UNHEARD);
    }
  }

  /** Figures are asked for at moments of a grid: the last word may be some seconds newer. */
  @Test
  void shouldForecastFromTheLastWordWhenAskedForAMomentBefore() {
    Suite suite = roomOneSilent();
    assertThat(Shown.forecast(suite.morning(), "06:38"))
        .isEqualTo(Shown.forecast(suite.morning(), "06:39"));
  }

  @Test
  void shouldAskAQuietRoomBeforeItIsTooLate() {
    List<Part> parts = parts(roomOneSilent(), "06:50");
    assertThat(need(parts, 1).kind()).isEqualTo("ask");
    assertThat(need(parts, 1).words()).isEqualTo("no word yet");
  }

  @Test
  void shouldTakeAQuietRoomForProbablyGettingReady() {
    Forecast figures = Shown.forecast(roomOneSilent().morning(), "07:05");
    Forecast nothing = Shown.forecast(new Suite(3, "06:00").morning(), "07:05");
    assertThat(figures.rooms().get(0).kept()).isPositive();
    assertThat(nothing.rooms().get(0).could50()).isLessThan(Suite.at("07:40"));
  }

  @Test
  void shouldCallAFaultThatNobodyMendsStuckUntilSomebodyTakesIt() {
    Suite suite = roomOneSilent();
    suite.station(
        "06:50", 2, new Command.Fault(Suite.ofRoom(2, "monitors.basic"), Private.of("no reading")));
    assertThat(judged(suite, "06:51", 2).standing()).isEqualTo(Standing.STUCK);
    assertThat(need(parts(suite, "06:51"), 2).words()).isEqualTo("monitors: fault, nobody on it");
    suite.desk(
        "06:52", new Command.TakeFault(Suite.ofRoom(2, "monitors.basic"), new PersonId("T1")));
    assertThat(judged(suite, "06:53", 2).standing()).isNotEqualTo(Standing.STUCK);
  }

  @Test
  void shouldNameThePharmacyThatOpensLateOnTheWall() {
    Suite suite = new Suite(2, "07:40");
    for (int room = 1; room <= 2; room++) {
      suite.station("06:31", room, new Command.Arrive(new PersonId("A" + room), null));
      for (Section section : Section.values()) {
        if (section.isSetUp() && section != Section.DRUGS) {
          suite.does("07:00", room, section);
        }
      }
    }
    NeedPart need = need(parts(suite, "07:05"), 1);
    assertThat(need.kind()).isEqualTo("late");
    assertThat(need.minutes()).isGreaterThan(8);
    assertThat(need.words()).isEqualTo("drugs: pharmacy opens 07:40");
  }

  @Test
  void shouldSayStartedWhateverIsOpenOnceTheStartHappened() {
    Suite suite = roomOneSilent();
    suite.station("07:28", 2, new Command.Reach(new sunup.board.CaseId("C2"), Step.INDUCTION));
    RoomPart room =
        parts(suite, "07:29").stream()
            .filter(p -> p.key().equals("room/2"))
            .map(RoomPart.class::cast)
            .findFirst()
            .orElseThrow();
    assertThat(room.standing()).isEqualTo(Standing.STARTED);
    assertThat(room.word()).isEqualTo("in 07:28");
  }

  @Test
  void shouldGiveTheWallNothingAboutPatientsOrPeople() {
    Suite suite = roomOneSilent();
    suite.holding(
        "06:40",
        new Command.Good(Suite.ofCase(1, "patient.arrived"), new Evidence.Touch(), null, null));
    suite.desk("06:45", new Command.AddNote(new RoomId("1"), Private.of("deaf, bring slate")));
    String wall =
        Json.write(
            parts(suite, "07:10").stream().filter(p -> p.audience() == Audience.WALL).toList());
    assertThat(wall)
        .doesNotContain("hernia")
        .doesNotContain("slate")
        .doesNotContainPattern("\"[ANRSHPT][0-9]+\"")
        .doesNotContain("onTime\":0.")
        .doesNotContain("case/");
  }

  @Test
  void shouldKeepEveryHoldupOnTheWallWithinFortyLetters() {
    for (Part part : parts(new Suite(6, "07:50"), "07:20")) {
      if (part instanceof NeedPart need) {
        assertThat(need.words()).hasSizeLessThanOrEqualTo(40).isNotBlank();
      }
    }
  }

  @Test
  void shouldNotMoveAShownFigureForASmallWobble() {
    Suite suite = new Suite(2, "07:50");
    Judged first = Shown.at(suite, "07:10").judged();
    Foretold later = Shown.figures(suite.morning(), "07:11");
    Judged second = Shown.after(first, suite, "07:11", later).judged();
    for (String room : first.rooms().keySet()) {
      int before = first.rooms().get(room).lateMinutes();
      int after = second.rooms().get(room).lateMinutes();
      assertThat(Math.abs(after - before)).isNotIn(1, 2);
    }
  }

  @Test
  void shouldGiveEqualPartsForEqualMornings() {
    Suite suite = roomOneSilent();
    assertThat(parts(suite, "07:00")).isEqualTo(parts(suite, "07:00"));
  }
}
