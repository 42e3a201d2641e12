package sunup.trying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.Morning;
import sunup.board.PlaceId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.forecast.Forecaster;
import sunup.outlook.Outlook;
import sunup.outlook.Suite;
import sunup.wire.Part.ChancePart;
import sunup.wire.Tried;
import sunup.wire.TryChange;

class SideBySideTest {
  private static final int TRIALS = 64;
  private static final PlaceId PHARMACY = new PlaceId("pharmacy");

  private static long now() {
    return Suite.at("06:40");
  }

  private static Tried tried(Suite suite, TryChange... changes) throws CantTry {
    SideBySide both = new SideBySide(suite.morning(), List.of(changes), now(), TRIALS);
    both.advance(TRIALS);
    return both.result();
  }

  /** What the desk reads of a morning once something has really been done. */
  private static List<ChancePart> board(Suite suite) {
    Morning morning = suite.morning();
    return Outlook.chances(morning, Forecaster.run(Outlook.input(morning, now(), TRIALS)), now());
  }

  private static RoomId room(int n) {
    return new RoomId("" + n);
  }

  private static Suite suite() {
    return new Suite(6, "07:20");
  }

  @Test
  void shouldShowOnTheCopyWhatTheBoardShowsOnceItIsDone() throws Exception {
    Suite suite = suite();
    Tried tried =
        tried(
            suite,
            new TryChange.Swap(room(1), room(3)),
            new TryChange.Opens(PHARMACY, Suite.at("06:50")),
            new TryChange.Target(room(2), Suite.at("07:50")));

    assertThat(tried.rooms()).extracting(Tried.TriedRoom::chance).isEqualTo(board(suite));
    long seen = suite.morning().seq();
    suite
        .desk("06:40", new Command.SwapCases(new CaseId("C1"), new CaseId("C3")), seen)
        .desk("06:40", new Command.PlaceOpens(PHARMACY, Suite.at("06:50")))
        .desk("06:40", new Command.AgreeLater(new CaseId("C2"), Suite.at("07:50")), seen);
    assertThat(tried.rooms()).extracting(Tried.TriedRoom::copyChance).isEqualTo(board(suite));
  }

  @Test
  void shouldLeaveTheMorningAsItIs() throws Exception {
    Suite suite = suite();
    Morning before = suite.morning();
    tried(suite, new TryChange.Swap(room(1), room(3)));
    assertThat(suite.morning()).isSameAs(before);
    assertThat(tried(suite, new TryChange.OneMoreUnit("ultrasound")).upTo())
        .isEqualTo(before.seq());
  }

  @Test
  void shouldSaveMinutesWithASmallErrorWhenThePharmacyOpensEarlier() throws Exception {
    Tried tried = tried(new Suite(6, "07:45"), new TryChange.Opens(PHARMACY, Suite.at("06:45")));

    assertThat(tried.savedMinutes()).isGreaterThan(10);
    assertThat(tried.errorMinutes()).isPositive().isLessThan(tried.savedMinutes() / 5);
    assertThat(tried.lateMinutes() - tried.copyLateMinutes())
        .isCloseTo(tried.savedMinutes(), within(0.15));
  }

  @Test
  void shouldSaveNothingAtAllWhenWhatIsChangedIsAsItWas() throws Exception {
    Tried tried = tried(suite(), new TryChange.Opens(PHARMACY, Suite.at("07:20")));

    assertThat(tried.savedMinutes()).isZero();
    assertThat(tried.errorMinutes()).isZero();
    assertThat(tried.rooms()).allMatch(r -> r.chance().equals(r.copyChance()));
  }

  @Test
  void shouldHelpTheRoomsOfOneKindOnlyWhenThereIsOneMoreOfIt() throws Exception {
    // Rooms 3 and 6 share one ultrasound machine.
    Tried tried = tried(new Suite(6, "06:00"), new TryChange.OneMoreUnit("ultrasound"));

    assertThat(tried.savedMinutes()).isGreaterThanOrEqualTo(0);
    assertThat(tried.rooms())
        .filteredOn(r -> !r.room().equals("3") && !r.room().equals("6"))
        .allMatch(r -> r.chance().equals(r.copyChance()));
  }

  @Test
  void shouldLetNoMinutesVanishWhenARoomIsMeantToStartLater() throws Exception {
    Tried tried = tried(suite(), new TryChange.Target(room(2), Suite.at("08:30")));

    Tried.TriedRoom moved = tried.rooms().get(1);
    assertThat(moved.copyTarget() - moved.target()).isEqualTo(60 * 60_000);
    assertThat(tried.copyLateMinutes()).isGreaterThan(tried.lateMinutes());
    assertThat(tried.savedMinutes()).isNegative();
  }

  @Test
  void shouldTakeAnEarlierTargetAndOneMorePersonToo() throws Exception {
    Suite suite = suite();
    Tried tried =
        tried(
            suite,
            new TryChange.Target(room(2), Suite.at("07:15")),
            new TryChange.OneMorePerson(Role.TECHNICIAN),
            new TryChange.OneMorePerson(Role.TECHNICIAN));
    assertThat(tried.rooms().get(1).copyTarget()).isEqualTo(Suite.at("07:15"));
    assertThat(tried.trials()).isEqualTo(TRIALS);
  }

  @Test
  void shouldRefuseInTheBoardsOwnWordsWhatTheBoardWouldRefuse() {
    Suite suite = suite().desk("06:40", new Command.Reach(new CaseId("C1"), Step.INDUCTION));
    assertThatThrownBy(() -> tried(suite, new TryChange.Swap(room(1), room(3))))
        .isInstanceOf(CantTry.class)
        .hasMessageContaining("Induction has begun in room 1");
    assertThatThrownBy(() -> tried(suite, new TryChange.Swap(room(2), room(9))))
        .hasMessageContaining("Room 9 has no first case");
    assertThatThrownBy(() -> tried(suite, new TryChange.OneMoreUnit("microscope")))
        .hasMessageContaining("This morning has no microscope");
    assertThatThrownBy(() -> tried(suite)).hasMessage("Change one to 8 things.");
    assertThatThrownBy(
            () -> tried(suite, new TryChange.Opens(new PlaceId("moon"), Suite.at("07:00"))))
        .hasMessageContaining("place moon");
  }
}
