package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.PLAIN;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.items;
import static sunup.forecast.Mornings.morning;
import static sunup.forecast.Mornings.people;
import static sunup.forecast.Mornings.person;
import static sunup.forecast.Mornings.room;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.forecast.Mornings.Work;

/** Where a program of the page by somebody else came to other figures. Minutes after NOW. */
class CornersTest {
  private static final long NOW = at(6, 0);
  private static final long BEGINS = NOW - 30 * MINUTE;

  private static double start(Work... works) {
    ForecastInput in =
        morning(
            NOW,
            1,
            PLAIN,
            people(person("anna", "a").in("1").here(NOW).spoke(NOW)),
            List.of(room("1", NOW, NOW, items(works))));
    return (Forecaster.run(in).rooms().get(0).start50() - NOW) / (double) MINUTE;
  }

  /** It was done before its booked time; what is done again keeps to it. */
  @Test
  void shouldNotDoALapsedItemAgainBeforeItsBookedTime() {
    assertThat(
            start(
                item("drawn")
                    .by("a")
                    .takes(exactly(2))
                    .lives(8)
                    .gates("start")
                    .notBefore(NOW + 20 * MINUTE)
                    .good(NOW - 9 * MINUTE, "anna"),
                item("long").takes(exactly(1)),
                item("start").after("long").marks("start")))
        .isEqualTo(22);
  }

  /** She is free at now, so the other thing in hand, of nobody named, is hers. */
  @Test
  void shouldChooseNobodyForHandsThatEndNow() {
    assertThat(
            start(
                item("over").by("a").takes(exactly(5)).inHand(NOW - 6 * MINUTE, null),
                item("second").by("a").takes(exactly(10)).inHand(NOW - 2 * MINUTE, null),
                item("third").by("a").takes(exactly(1)),
                item("start").after("third").marks("start")))
        .isEqualTo(9);
  }

  private static Forecast.RoomOut forecast(long target, Work... works) {
    return forecast(person("anna", "a").in("1").here(BEGINS).spoke(NOW), target, works);
  }

  private static Forecast.RoomOut forecast(Mornings.Person one, long target, Work... works) {
    ForecastInput in =
        morning(NOW, 1, PLAIN, people(one), List.of(room("1", target, BEGINS, items(works))));
    return Forecaster.run(in).rooms().get(0);
  }

  /** What kind of holdup, of which item, carries how many of the late minutes. */
  private static List<String> lateMinutes(Forecast.RoomOut room) {
    return room.holdups().stream()
        .map(
            h ->
                h.kind()
                    + (h.item() == null ? " " : " of " + h.item() + " ")
                    + Math.round(h.share() * room.meanLateMs() / MINUTE))
        .toList();
  }

  /** It has been open again for ten minutes: what follows waits until it is good once more. */
  @Test
  void shouldLetNothingFollowWhatLapsedBeforeNow() {
    assertThat(
            start(
                item("sample")
                    .by("a")
                    .takes(exactly(2))
                    .lives(10)
                    .gates("start")
                    .good(NOW - 20 * MINUTE, "anna"),
                item("test").takes(exactly(5)).after("sample"),
                item("start").after("test").marks("start")))
        .isEqualTo(7);
  }

  /** Good at -20, open again at -10; who could do it again is away from then until 5. */
  @Test
  void shouldExplainWhatLapsedBeforeNowFromTheMomentAtWhichItLapsed() {
    Forecast.RoomOut room =
        forecast(
            person("anna", "a")
                .in("1")
                .here(BEGINS)
                .spoke(NOW)
                .away(NOW - 15 * MINUTE, NOW + 5 * MINUTE),
            NOW,
            item("sample")
                .by("a")
                .takes(exactly(2))
                .lives(10)
                .gates("start")
                .good(NOW - 20 * MINUTE, "anna"),
            item("start").marks("start"));

    assertThat(room.meanLateMs()).isEqualTo(7 * MINUTE);
    assertThat(lateMinutes(room)).containsExactly("person of sample 7");
  }

  /** Its first time hands and waiting were one figure; of the second both are played apart. */
  @Test
  void shouldAllowForTheWaitingOfALapsedItemOnlyOnce() {
    Forecast.RoomOut room =
        forecast(
            NOW - 25 * MINUTE,
            item("test")
                .by("a")
                .takes(exactly(2))
                .waits(exactly(6))
                .lives(10)
                .gates("start")
                .good(NOW - 20 * MINUTE, "anna"),
            item("start").marks("start"));

    assertThat(room.meanLateMs()).isEqualTo(33 * MINUTE);
    assertThat(lateMinutes(room)).containsExactly("plan 3");
  }

  @Test
  void shouldCallATimeThatIsBookedBeyondTheCapBookedNotWaiting() {
    Forecast.RoomOut room =
        forecast(
            NOW,
            item("first").by("a").takes(exactly(10)),
            item("start").after("first").marks("start").notBefore(NOW + 300 * MINUTE));

    assertThat(room.capped()).isEqualTo(1);
    assertThat(lateMinutes(room)).containsExactly("plan 210");
  }

  /** Good at 2, open again at 10, and whoever could do it has left: it waits for somebody. */
  @Test
  void shouldSayWhatALapsedItemWaitsForAtTheCap() {
    Forecast.RoomOut room =
        forecast(
            person("anna", "a").in("1").here(NOW).spoke(NOW).leaves(NOW + 5 * MINUTE),
            NOW,
            item("sample").by("a").takes(exactly(2)).lives(8).gates("start"),
            item("long").takes(exactly(20)),
            item("start").after("long").marks("start"));

    assertThat(room.capped()).isEqualTo(1);
    assertThat(lateMinutes(room)).containsExactly("person of sample 230", "lapse of sample 10");
  }

  /** The unit went to another after the first time; the second time must be begun by 24. */
  @Test
  void shouldNotLetWhatFollowedTheFirstTimeHurryTheSecond() {
    ForecastInput in =
        Mornings.with(
            morning(
                NOW,
                1,
                PLAIN,
                people(
                    person("anna", "a").in("1").here(NOW).spoke(NOW),
                    person("bert", "b").in("2").here(NOW).spoke(NOW)),
                List.of(
                    room(
                        "1",
                        NOW + 30 * MINUTE,
                        NOW,
                        items(
                            item("scan")
                                .by("a")
                                .takes(exactly(6))
                                .lives(8)
                                .gates("start")
                                .needs("scanner", 1, null),
                            item("long").takes(exactly(20)),
                            item("start").after("long").marks("start"))),
                    room(
                        "2",
                        NOW + 9 * MINUTE,
                        NOW,
                        items(
                            item("scan").by("b").takes(exactly(5)).needs("scanner", 1, null),
                            item("start").after("scan").marks("start"))))),
            List.of(new ForecastInput.KindIn("scanner", 1, List.of())),
            List.of());

    Forecast.ItemOut scan = Forecaster.run(in).rooms().get(0).items().get(0);

    assertThat((scan.last50() - NOW) / MINUTE).isEqualTo(24);
  }

  private static final Mornings.Person ANNA = person("anna", "a").in("1").here(NOW).spoke(NOW);
  private static final Mornings.Person TOM = person("tom", "t").here(NOW).spoke(NOW);
  private static final Mornings.Person LATER =
      person("zoe", "z").in("1").comes(NOW + 600 * MINUTE, exactly(0));

  private static ForecastInput.RoomIn one(Work... works) {
    return room("1", NOW, NOW, items(works));
  }

  /** Tom is wanted here too, and comes to it when the other room's start is long over. */
  private static ForecastInput.RoomIn another() {
    return room(
        "2",
        NOW,
        NOW,
        items(
            item("first").takes(exactly(5)),
            item("long").by("t").takes(exactly(30)).after("first"),
            item("start").after("long").marks("start")));
  }

  private static Forecast.RoomOut first(ForecastInput.RoomIn... rooms) {
    return Forecaster.run(morning(NOW, 1, PLAIN, people(ANNA, TOM, LATER), List.of(rooms)))
        .rooms()
        .get(0);
  }

  /** Good at 2, started at 3, open again at 12: that is too late to be a cause of the start. */
  @Test
  void shouldNotLetWhatLapsesAfterTheStartChangeWhyItWasLate() {
    ForecastInput.RoomIn room =
        one(
            item("x").by("a").takes(exactly(2)).lives(10).gates("release"),
            item("start").by("t").takes(exactly(1)).after("x").marks("start"),
            item("release").by("z").after("start").marks("release"));

    Forecast.RoomOut coupled = first(room, another());

    assertThat(lateMinutes(coupled)).containsExactly("plan 3");
    assertThat(coupled.items().get(0).criticality()).isEqualTo(1);
    assertThat(coupled.items().get(0).done50()).isEqualTo(NOW + 2 * MINUTE);
    assertThat(coupled.holdups()).isEqualTo(first(room).holdups());
  }

  /** The start itself may lapse, for a later step; it was the start all the same. */
  @Test
  void shouldCountAStartOnceThoughItLapses() {
    ForecastInput.RoomIn room =
        one(
            item("x").by("t").takes(exactly(1)),
            item("start").after("x").marks("start").lives(4).gates("release"),
            item("release").by("z").after("start").marks("release"));

    Forecast.RoomOut coupled = first(room, another());

    assertThat(coupled.start50()).isEqualTo(NOW + MINUTE);
    assertThat(coupled.holdups()).isEqualTo(first(room).holdups());
    assertThat(start(room, another(), 1)).isEqualTo(35);
  }

  private static double start(ForecastInput.RoomIn a, ForecastInput.RoomIn b, int which) {
    ForecastInput in = morning(NOW, 1, PLAIN, people(ANNA, TOM, LATER), List.of(a, b));
    return (Forecaster.run(in).rooms().get(which).start50() - NOW) / (double) MINUTE;
  }

  /** It was good at this room's cap of 240 and is open again at 242, while the other plays on. */
  @Test
  void shouldExplainACappedRoomByWhatWasAtItsCap() {
    ForecastInput.RoomIn room =
        one(
            item("x").takes(exactly(2)).lives(240).gates("start"),
            item("q").by("z").takes(exactly(100)),
            item("h").by("t").takes(exactly(1)),
            item("start").after("x", "q", "h").marks("start"));
    ForecastInput.RoomIn other =
        room(
            "2",
            NOW + 50 * MINUTE,
            NOW,
            items(item("start").marks("start").notBefore(NOW + 250 * MINUTE)));
    ForecastInput in = morning(NOW, 1, PLAIN, people(ANNA, TOM, LATER), List.of(room, other));
    Run together = new Run(in, false);
    together.advance(1);

    Forecast.RoomOut coupled = together.result().rooms().get(0);

    assertThat(coupled.capped()).isEqualTo(1);
    assertThat(lateMinutes(coupled)).containsExactly("person of q 240");
    assertThat(coupled).isEqualTo(first(room));
  }

  /** The unit came at 7; the second time, from 17 on, the room had it. */
  @Test
  void shouldNotWaitAgainForUnitsThatTheRoomStillHolds() {
    ForecastInput in =
        Mornings.with(
            morning(
                NOW,
                1,
                PLAIN,
                people(
                    ANNA,
                    person("bert", "b").in("2").here(NOW).spoke(NOW),
                    person("cara", "c").in("1").comes(NOW + 18 * MINUTE, exactly(0))),
                List.of(
                    one(
                        item("x")
                            .by("a")
                            .takes(exactly(2))
                            .lives(8)
                            .gates("start")
                            .needs("k", 1, "y"),
                        item("y").by("c").takes(exactly(1)).after("x"),
                        item("start").after("y").marks("start")),
                    room(
                        "2",
                        NOW,
                        NOW,
                        items(
                            item("u").by("b").takes(exactly(7)).needs("k", 1, null),
                            item("start").after("u").marks("start"))))),
            List.of(new ForecastInput.KindIn("k", 1, List.of("2"))),
            List.of());

    assertThat(lateMinutes(Forecaster.run(in).rooms().get(0)))
        .containsExactly("person of x 9", "lapse of x 8", "plan 3");
  }

  /** All of it happens at 5, the second note after the first has been given out and is good. */
  @Test
  void shouldPlayTheWholeInstantAtWhichTheLastRoomStarts() {
    Forecast.RoomOut room =
        first(
            one(
                item("long").by("a").takes(exactly(5)),
                item("start").after("long").marks("start"),
                item("note").by("t").after("long"),
                item("again").by("t").after("note")));

    assertThat(room.items().get(3).done50()).isEqualTo(NOW + 5 * MINUTE);
  }

  /** What was done first waits and is good at -3, the last; a word comes five minutes later. */
  @Test
  void shouldHearAWordAfterTheLastOfAllIsGoodNotAfterTheLastIsDone() {
    ForecastInput.Silence atEnd = new ForecastInput.Silence(0, 0, 1, 0, 0, exactly(0), exactly(5));
    ForecastInput in =
        morning(
            NOW,
            1,
            new ForecastInput.Settings(0, 0, 240 * MINUTE, 0, atEnd),
            people(person("anna", "a").in("1").here(BEGINS).spoke(NOW - 20 * MINUTE)),
            List.of(
                one(
                    item("x").by("a").takes(exactly(2)).waits(exactly(15)),
                    item("y").by("a").takes(exactly(3)),
                    item("start").after("x", "y").marks("start"))));

    Forecast.RoomOut room = Forecaster.run(in).rooms().get(0);

    assertThat(room.kept()).isEqualTo(1);
    assertThat(room.start50()).isEqualTo(NOW);
  }

  /** The first room is before the second in the list, though it asks for nothing until 2. */
  @Test
  void shouldNotKeepUnitsFromARoomThatIsBeforeInTheListOfPromises() {
    ForecastInput in =
        Mornings.with(
            morning(
                NOW,
                1,
                PLAIN,
                people(ANNA, person("bert", "b").in("2").comes(NOW + 30 * MINUTE, exactly(0))),
                List.of(
                    one(
                        item("x")
                            .by("a")
                            .takes(exactly(2))
                            .lives(10)
                            .gates("start")
                            .needs("k", 1, null)
                            .good(NOW - 8 * MINUTE, "anna"),
                        item("long").takes(exactly(9)),
                        item("start").after("long").marks("start")),
                    room(
                        "2",
                        NOW,
                        NOW,
                        items(
                            item("u").by("b").takes(exactly(7)).needs("k", 1, null),
                            item("start").after("u").marks("start"))))),
            List.of(new ForecastInput.KindIn("k", 1, List.of("1", "2"))),
            List.of());

    assertThat(Forecaster.run(in).rooms().get(0).start50()).isEqualTo(NOW + 9 * MINUTE);
  }

  /** As of a start that is booked beyond the cap: nothing but the plan made it late. */
  @Test
  void shouldAllowForABookedTimeThatHasNotComeAtTheCap() {
    Forecast.RoomOut room =
        first(
            one(
                item("visit").notBefore(NOW + 300 * MINUTE),
                item("start").after("visit").marks("start")));

    assertThat(room.capped()).isEqualTo(1);
    assertThat(lateMinutes(room)).containsExactly("plan 240");
  }

  /** Nobody said that she came, but she did something eight minutes ago. */
  @Test
  void shouldTakeWhoDidSomethingAsHere() {
    ForecastInput in =
        morning(
            NOW,
            1,
            PLAIN,
            people(
                person("anna", "a")
                    .in("1")
                    .comes(NOW - 20 * MINUTE, exactly(30))
                    .reporting("never")),
            List.of(
                one(
                    item("w").by("a").takes(exactly(3)).good(NOW - 8 * MINUTE, "anna"),
                    item("x").by("a").takes(exactly(10)),
                    item("start").after("x", "w").marks("start"))));

    assertThat(Forecaster.run(in).rooms().get(0).start50()).isEqualTo(NOW + 2 * MINUTE);
  }
}
