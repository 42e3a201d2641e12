package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.DelayReason;
import sunup.board.Evidence;
import sunup.board.Morning;
import sunup.board.PersonId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.board.Section;
import sunup.board.UnitId;
import sunup.forecast.Draw;
import sunup.forecast.Forecast.Share;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.wire.Part.NotePart;
import sunup.wire.Standing;

/** What is known, what is expected, and what is only not denied. */
class KnownTest {
  private static Share elsewhere(String kind, String item, String thing) {
    return new Share("3", kind, item, thing, "6", 0.6, Suite.at("08:19"));
  }

  private static Words words(Suite suite, String clock) {
    return new Words(Snapshot.of(suite.morning(), Suite.at(clock)));
  }

  @Test
  void shouldSayThatAUnitIsElsewhereOnlyIfTheRecordSaysSo() {
    Suite suite = new Suite(6, "06:00");
    Share share = elsewhere("equipment", "patient.block", "ultrasound");
    assertThat(words(suite, "07:00").staff(share))
        .isEqualTo("ultrasound goes to 6 first, until about 08:19");
    assertThat(words(suite, "07:00").wall(share))
        .isEqualTo("ultrasound: 6 first, until about 08:19");
    UnitId unit = new UnitId("ultrasound-1");
    long seen = suite.morning().units().get(unit).revision();
    suite.desk("07:00", new Command.Claim(unit, new RoomId("6")), seen);
    assertThat(words(suite, "07:01").wall(share)).isEqualTo("ultrasound is in 6 until about 08:19");
  }

  @Test
  void shouldSayThatAPersonIsElsewhereOnlyIfTheRecordSaysSo() {
    Suite suite = new Suite(6, "06:00");
    Share share = elsewhere("person", "machine.self-test", "T1");
    assertThat(words(suite, "07:00").staff(share))
        .isEqualTo("technician goes to 6 first, until about 08:19");
    suite.desk("07:00", new Command.Arrive(new PersonId("T1"), new RoomId("6")));
    assertThat(words(suite, "07:01").staff(share))
        .isEqualTo("technician is in 6 until about 08:19");
  }

  @Test
  void shouldWriteNoSecondColonBehindAnItemThatHasOne() {
    Suite suite = new Suite(3, "06:00");
    Share share = new Share("1", "waits", "patient.papers", null, null, 1, Suite.at("07:10"));
    assertThat(words(suite, "07:00").wall(share)).isEqualTo("patient: papers, until about 07:10");
  }

  /** The forecast reckons with the rare extra of items that nobody reported faulty. */
  @Test
  void shouldCallNothingAFaultThatNobodyReportedFaulty() {
    Suite suite = new Suite(2, "06:00");
    Share share = new Share("1", "mend", "machine.self-test", null, null, 1, Suite.at("07:50"));
    String before = words(suite, "07:00").key(share);
    assertThat(words(suite, "07:00").wall(share)).isEqualTo("machine check: may take longer");
    assertThat(words(suite, "07:00").staff(share)).doesNotContain("fault");
    suite.station(
        "07:01", 1, new Command.Fault(Suite.ofRoom(1, "machine.self-test"), Private.of("leak")));
    assertThat(words(suite, "07:02").wall(share)).isEqualTo("machine check: fault, nobody on it");
    assertThat(words(suite, "07:02").key(share)).isNotEqualTo(before);
  }

  @Test
  void shouldTakeANursesSilenceForNothingWhereOnlyOtherRoomsReportTheTrack() {
    Suite suite = new Suite(2, "06:00");
    suite.nurse(
        "06:40",
        2,
        new Command.Sweep(new RoomId("2"), Section.ROOM, List.of(), new PersonId("N2")));
    assertThat(styles(suite, "N1")).containsExactly("never");
    assertThat(styles(suite, "N2")).isNull();
  }

  private static List<String> styles(Suite suite, String person) {
    return Outlook.input(suite.morning(), Suite.at("06:50"), 64).people().stream()
        .filter(p -> p.id().equals(person))
        .findFirst()
        .orElseThrow()
        .styles();
  }

  private static ItemIn item(Suite suite, String clock, int room, String key) {
    RoomIn in = Outlook.input(suite.morning(), Suite.at(clock), 64).rooms().get(room - 1);
    return in.items().stream().filter(i -> i.key().equals(key)).findFirst().orElseThrow();
  }

  @Test
  void shouldTakeARoomsSilentTrackForPlannedUntilSomebodyReportsItOfThatRoom() {
    Suite suite = new Suite(2, "06:00");
    assertThat(item(suite, "06:40", 1, "patient.papers").arrival()).isNotNull();
    suite.holding(
        "06:35",
        new Command.Good(Suite.ofCase(2, "patient.arrived"), new Evidence.Touch(), null, null));
    assertThat(item(suite, "06:40", 2, "patient.papers").arrival()).isNull();
    assertThat(item(suite, "06:40", 1, "patient.papers").arrival()).isNotNull();
    assertThat(item(suite, "06:40", 1, "patient.arrived").arrival().silent()).isTrue();
  }

  @Test
  void shouldTakeAPatientForMissingOnceOverdueWhereHoldingReports() {
    Suite suite = new Suite(2, "06:00");
    assertThat(item(suite, "06:46", 1, "patient.arrived").arrival().silent()).isTrue();
    suite.holding(
        "06:35",
        new Command.Good(Suite.ofCase(2, "patient.arrived"), new Evidence.Touch(), null, null));
    assertThat(item(suite, "06:44", 1, "patient.arrived").arrival().silent()).isTrue();
    assertThat(item(suite, "06:46", 1, "patient.arrived").arrival().silent()).isFalse();
  }

  @Test
  void shouldNotGiveARoomInUseAFreshTimeAtEachMoment() {
    Suite suite = new Suite(2, "06:00");
    suite.desk("06:20", new Command.SayRoom(new RoomId("1"), RoomUse.CLEANING, Suite.at("06:40")));
    assertThat(occupied(suite, "06:30")).isEqualTo(new Draw.Constant(10 * FirstSettings.MINUTE));
    Draw.LogNormal soon = (Draw.LogNormal) occupied(suite, "06:50");
    Draw.LogNormal later = (Draw.LogNormal) occupied(suite, "07:20");
    // Of usually 10 and one in ten over 30 minutes, 10 have run: 7.32 and 33.59 are left.
    assertThat(soon.usualMs()).isEqualTo(Math.round((10 * Math.sqrt(3) - 10) * 60_000));
    assertThat(soon.oneInTenMs()).isEqualTo(Math.round((10 * Math.sqrt(19) - 10) * 60_000));
    assertThat(later.usualMs()).isGreaterThan(2 * soon.usualMs());
  }

  @Test
  void shouldCountHowLongARoomHasBeenInUseWhereNoEndWasSaid() {
    Suite suite = new Suite(2, "06:00");
    suite.desk("06:30", new Command.SayRoom(new RoomId("1"), RoomUse.CLEANING, null));
    suite.desk("06:40", new Command.SayRoom(new RoomId("1"), RoomUse.CLEANING, null));
    long begun = ((Draw.LogNormal) occupied(suite, "06:31")).usualMs();
    long run = ((Draw.LogNormal) occupied(suite, "06:45")).usualMs();
    assertThat(run).isLessThan(begun);
  }

  private static Draw occupied(Suite suite, String clock) {
    ForecastInput in = Outlook.input(suite.morning(), Suite.at(clock), 64);
    return in.rooms().get(0).occupiedFor();
  }

  @Test
  void shouldAskAboutARoomThatShouldBeFreeByNowAndNotCallItLateForThat() {
    Suite suite = new Suite(2, "06:00");
    suite.desk("06:20", new Command.SayRoom(new RoomId("1"), RoomUse.OCCUPIED, Suite.at("07:00")));
    for (Section section : Section.values()) {
      if (section.isSetUp()) {
        suite.does("07:14", 1, section);
      }
    }
    Shown shown = Shown.at(suite, "07:15");
    assertThat(shown.room(1).standing()).isEqualTo(Standing.UNHEARD);
    assertThat(shown.column(1).word()).isEqualTo("in use?");
    assertThat(shown.need(1).kind()).isEqualTo("ask");
    assertThat(shown.need(1).words()).isEqualTo("in use until 07:00: still?");
    // Room 2 alone was never heard from.
    assertThat(shown.suite().quiet()).isEqualTo(1);
    suite.desk("07:16", new Command.SayRoom(new RoomId("1"), RoomUse.OCCUPIED, Suite.at("07:40")));
    shown = Shown.at(suite, "07:17");
    assertThat(shown.room(1).standing()).isEqualTo(Standing.LATE);
    assertThat(shown.need(1).words()).isEqualTo("room in use until 07:40, then cleaning");
  }

  @Test
  void shouldSayWhoAskedForHelpAndWhoGaveAReasonAndWhen() {
    Suite suite = new Suite(2, "06:00");
    suite.station("07:05", 1, new Command.AskHelp(new RoomId("1"), null));
    suite.station(
        "07:31",
        2,
        new Command.GiveReason(
            new CaseId("C2"), DelayReason.TRANSPORT, Private.of("lift stood still")));
    Shown shown = Shown.at(suite, "07:40");
    NotePart help = (NotePart) shown.part("note/help/1");
    assertThat(help.by()).isEqualTo(Role.ANAESTHETIST);
    assertThat(help.at()).isEqualTo(Suite.at("07:05"));
    NotePart reason = (NotePart) shown.part("note/reason/C2");
    assertThat(reason.by()).isEqualTo(Role.ANAESTHETIST);
    assertThat(reason.at()).isEqualTo(Suite.at("07:31"));
  }

  /** Older notes leave the state; a desk must not be sent all of its notes again with each one. */
  @Test
  void shouldShowANoteUnderTheSameKeyHoweverManyCame() {
    Suite suite = new Suite(1, "06:00");
    for (int n = 0; n < Morning.MAX_NOTES + 10; n++) {
      String clock = "%02d:%02d".formatted(7 + n / 60, n % 60);
      suite.desk(clock, new Command.AddNote(null, Private.of("note " + n)));
    }
    Shown before = Shown.at(suite, "16:00");
    suite.desk("16:00", new Command.AddNote(null, Private.of("one more")));
    Shown after = Shown.at(suite, "16:00");
    assertThat(after.notes()).hasSameSizeAs(before.notes());
    assertThat(after.notes().values().stream().filter(n -> !before.notes().containsValue(n)))
        .singleElement()
        .satisfies(n -> assertThat(n.text()).isEqualTo("one more"));
  }
}
