package sunup.moves;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.moves.Small.EXACT;
import static sunup.moves.Small.MINUTE;
import static sunup.moves.Small.NOW;
import static sunup.moves.Small.about;
import static sunup.moves.Small.exactly;
import static sunup.moves.Small.item;
import static sunup.moves.Small.morning;
import static sunup.moves.Small.person;
import static sunup.moves.Small.room;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Move;
import sunup.board.PersonId;
import sunup.board.PlaceId;
import sunup.board.RoomId;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.Settings;
import sunup.forecast.ForecastInput.State;

class MoveSearchTest {
  private static final RoomId LONG = new RoomId("1");
  private static final RoomId BRIEF = new RoomId("2");
  private static final PersonId TECHNICIAN = new PersonId("T1");

  /** One technician, two rooms; the rule goes to the longer work first. */
  private static ForecastInput oneTechnician(double longer, double shorter) {
    return morning(
        7,
        EXACT,
        List.of(person("T1", "technician", null, List.of())),
        List.of(),
        List.of(),
        room("1", 5, tech(longer), item("go", null, exactly(0), "start", "tech")),
        room("2", 5, tech(shorter), item("go", null, exactly(0), "start", "tech")));
  }

  private static ItemIn tech(double minutes) {
    return item("tech", "technician", exactly(minutes), null);
  }

  /**
   * Longer first: late by (20 - 5) + (25 - 5). Shorter first: 0 + (25 - 5). Smith's rule: putting
   * the shorter of two first saves the difference of their lengths.
   */
  @Test
  void shouldSaveTheDifferenceOfTwoLengthsWhenTheTechnicianGoesToTheShorterFirst() {
    Ideas ideas = Small.search(oneTechnician(20, 5));

    assertThat(ideas.shown()).hasSize(1);
    Idea idea = ideas.shown().get(0);
    assertThat(idea.move()).isEqualTo(new Move.SendTo(TECHNICIAN, BRIEF));
    assertThat(idea.person()).isEqualTo(TECHNICIAN);
    assertThat(idea.savedMinutes()).isEqualTo(15);
    assertThat(idea.errorMinutes()).isZero();
    assertThat(idea.rooms()).containsExactly(new Idea.Gain("2", 20), new Idea.Gain("1", -5));
  }

  @Test
  void shouldShowNothingWhenTheSavingIsUnderTwoMinutes() {
    assertThat(Small.search(oneTechnician(20, 18.1)).shown()).isEmpty();
    assertThat(Small.search(oneTechnician(20, 18)).shown())
        .extracting(Idea::move)
        .contains(new Move.SendTo(TECHNICIAN, BRIEF));
  }

  @Test
  void shouldNotThinkOfAMoveAgainThatWasCalledNotSafe() {
    Ideas ideas = Small.search(oneTechnician(20, 5), "send.T1.2");

    assertThat(ideas.shown()).isEmpty();
    assertThat(ideas.possible()).isPositive();
  }

  @Test
  void shouldSaveWhatAClosedPlaceCostsWhenItOpensEarlier() {
    PlaceIn pharmacy = new PlaceIn("pharmacy", NOW + 30 * MINUTE, exactly(2));
    ItemIn fetch =
        item("drugs", "anaesthetist", exactly(4), null, null, "pharmacy", List.of(), Progress.OPEN);
    ForecastInput in =
        morning(
            3,
            EXACT,
            List.of(person("A1", "anaesthetist", "1", List.of())),
            List.of(),
            List.of(pharmacy),
            room("1", 10, fetch, item("go", null, exactly(0), "start", "drugs")));

    Ideas ideas = Small.search(in);

    Idea idea = ideas.shown().get(0);
    assertThat(idea.move())
        .isEqualTo(new Move.OpenEarlier(new PlaceId("pharmacy"), NOW + 15 * MINUTE, LONG));
    assertThat(idea.savedMinutes()).isEqualTo(15);
  }

  @Test
  void shouldBeginWhatWaitsByItselfFirstAndDoTheRestMeanwhile() {
    // In the order of the list: 10, then 1 and 12 waiting. The other way round: 13 in all.
    ForecastInput in =
        morning(
            3,
            EXACT,
            List.of(person("A1", "anaesthetist", "1", List.of())),
            List.of(),
            List.of(),
            room(
                "1",
                5,
                item("drugs", "anaesthetist", exactly(10), null),
                item(
                    "test",
                    "anaesthetist",
                    exactly(1),
                    exactly(12),
                    null,
                    null,
                    List.of(),
                    Progress.OPEN),
                item("go", null, exactly(0), "start", "drugs", "test")));

    Ideas ideas = Small.search(in);

    assertThat(ideas.shown().get(0).move()).isEqualTo(new Move.First(LONG, List.of("test")));
    assertThat(ideas.shown().get(0).savedMinutes()).isEqualTo(10);
  }

  @Test
  void shouldGiveTheOnlyMachineToTheRoomThatNeedsItBriefly() {
    Need scanner = new Need("scanner", 1, null, false);
    List<RoomIn> rooms = new ArrayList<>();
    double[] takes = {30, 4};
    List<PersonIn> people = new ArrayList<>();
    for (int r = 1; r <= 2; r++) {
      people.add(person("A" + r, "anaesthetist", "" + r, List.of()));
      rooms.add(
          room(
              "" + r,
              6,
              item("wash", "anaesthetist", exactly(1), null),
              item(
                  "look",
                  "anaesthetist",
                  exactly(takes[r - 1]),
                  null,
                  null,
                  null,
                  List.of(scanner),
                  Progress.OPEN,
                  "wash"),
              item("go", null, exactly(0), "start", "look")));
    }
    ForecastInput in =
        morning(
            3,
            EXACT,
            people,
            List.of(new KindIn("scanner", 1, List.of())),
            List.of(),
            rooms.toArray(new RoomIn[0]));

    Idea idea = Small.search(in).shown().get(0);

    assertThat(idea.move()).isEqualTo(new Move.Unit("scanner", BRIEF));
    // 1 + 30 and 31 + 4 against 1 + 4 and 5 + 30, over a target of 6: 25 + 29 less 0 + 29.
    assertThat(idea.savedMinutes()).isEqualTo(25);
  }

  /** A fault that nobody is mending, and a technician who does other work first. */
  @Test
  void shouldSendTheTechnicianToAFaultThatNobodyIsOn() {
    Progress fault =
        new Progress(State.FAULT, NOW - MINUTE, null, exactly(3), List.of("technician"), null);
    ForecastInput in =
        morning(
            3,
            EXACT,
            List.of(person("T1", "technician", null, List.of())),
            List.of(),
            List.of(),
            room("1", 5, tech(40), item("go", null, exactly(0), "start", "tech")),
            room(
                "2",
                5,
                item("leak", null, exactly(1), null, null, null, List.of(), fault),
                item("go", null, exactly(0), "start", "leak")));

    Idea idea = Small.search(in).shown().get(0);

    assertThat(idea.move()).isEqualTo(new Move.SendTo(TECHNICIAN, BRIEF));
    // Mended at 3, good at 4 instead of at 44; the other room's work is later by the 3.
    assertThat(idea.savedMinutes()).isEqualTo(39 - 3);
  }

  /** Rooms that are alike: whoever is first, it is the same in the mean. */
  private static ForecastInput alike(long seed) {
    List<RoomIn> rooms = new ArrayList<>();
    List<PersonIn> people = new ArrayList<>();
    people.add(person("T1", "technician", null, List.of()));
    for (int r = 1; r <= 3; r++) {
      people.add(person("A" + r, "anaesthetist", "" + r, List.of()));
      rooms.add(
          room(
              "" + r,
              12,
              item("tech", "technician", about(6, 14), null),
              item("own", "anaesthetist", about(4, 9), null, "tech"),
              item("go", null, exactly(0), "start", "own")));
    }
    return morning(
        seed, Settings.DEFAULT, people, List.of(), List.of(), rooms.toArray(new RoomIn[0]));
  }

  @Test
  void shouldShowAtMostOneInTwentyMorningsAMoveWhereNoneHelps() {
    int mornings = 60;
    int shown = 0;
    int confirmed = 0;
    for (int seed = 1; seed <= mornings; seed++) {
      Ideas ideas = Small.search(alike(seed));
      shown += ideas.shown().isEmpty() ? 0 : 1;
      confirmed += ideas.confirmed() > 0 ? 1 : 0;
    }
    assertThat(confirmed).as("mornings in which chance made a move look useful").isPositive();
    assertThat(shown).isLessThanOrEqualTo(mornings / 20);
  }

  @Test
  void shouldGiveTheSameBitsOnEveryNodeAndWhateverWasGivenUpBefore() {
    ForecastInput in = sunup.forecast.RandomMornings.shared(11, 5, 256);
    MoveSearch givenUp = Small.begun(in);
    for (int slice = 0; slice < 9; slice++) {
      givenUp.advance();
    }

    assertThat(Small.search(in)).isEqualTo(Small.search(in));
  }

  @Test
  void shouldMeasureAnAgreedStartAgainstTheBookedOneSoThatNoMinutesVanish() {
    // Nothing is shared in time: agreeing later only makes a room later.
    ForecastInput in = oneTechnician(20, 5);
    Move later = new Move.Later(LONG, new sunup.board.CaseId("C1"), NOW + 21 * MINUTE);
    Stream stream = new Stream(in, in.seed(), 64);
    Stream.Copy base = stream.new Copy(in);
    Stream.Copy copy = stream.new Copy(Applied.to(in, List.of(), later, NOW));
    while (base.advance() || copy.advance()) {
      // Goes on to the end.
    }

    assertThat(copy.late(in.rooms().get(0))[0]).isEqualTo(20 * MINUTE);
    assertThat(copy.late(in.rooms().get(1))[0]).isZero();
    assertThat(base.late(in.rooms().get(0))[0]).isEqualTo(15 * MINUTE);
  }

  @Test
  void shouldTellTheErrorOfTheMeanOfPairedDifferences() {
    Paired paired = Paired.of(new long[] {2, 4, 4, 6});
    assertThat(paired.mean()).isEqualTo(4);
    assertThat(paired.error()).isCloseTo(Math.sqrt(8.0 / 3 / 4), within(1e-12));
  }
}
