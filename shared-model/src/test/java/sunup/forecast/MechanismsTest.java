package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
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
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.Mornings.Person;
import sunup.forecast.Mornings.Work;

/** One mechanism a test, with durations that leave one answer. Minutes after NOW. */
class MechanismsTest {
  private static final long NOW = at(6, 0);

  private static Person anna() {
    return person("anna", "a").in("1").here(NOW).spoke(NOW);
  }

  private static Work start(String... after) {
    return item("start").after(after).marks("start");
  }

  private static RoomIn one(Work... works) {
    return room("1", NOW, NOW, items(works));
  }

  private static Forecast run(List<PersonIn> people, RoomIn... rooms) {
    return Forecaster.run(morning(NOW, 1, PLAIN, people, List.of(rooms)));
  }

  private static double minutes(RoomOut room) {
    return (room.start50() - NOW) / (double) MINUTE;
  }

  private static double startOf(Forecast f) {
    return minutes(f.rooms().get(0));
  }

  private static double done(Forecast f, int room, String key) {
    return f.rooms().get(room).items().stream()
        .filter(i -> i.key().equals(key))
        .mapToDouble(i -> (i.done50() - NOW) / (double) MINUTE)
        .findFirst()
        .orElseThrow();
  }

  private static Share largest(Forecast f) {
    return f.rooms().get(0).holdups().get(0);
  }

  @Test
  void shouldSkipWhatIsBlockedAndLetWaitingRunUnattended() {
    Forecast f =
        run(
            people(anna().spoke(NOW)),
            one(
                item("test").by("a").takes(exactly(1)).waits(exactly(6)),
                item("circuit").by("a").takes(exactly(2)).after("test"),
                item("drugs").by("a").takes(exactly(5)),
                start("circuit", "drugs")));
    assertThat(done(f, 0, "drugs")).isEqualTo(6);
    assertThat(startOf(f)).isEqualTo(9);
  }

  @Test
  void shouldBundleErrandsAndWalkOnceThereAndOnceBack() {
    ForecastInput in =
        Mornings.with(
            morning(
                NOW,
                1,
                PLAIN,
                people(anna()),
                List.of(
                    one(
                        item("fetch").by("a").takes(exactly(2)).at("pharmacy"),
                        item("here").by("a").takes(exactly(4)),
                        item("sign").by("a").takes(exactly(1)).at("pharmacy"),
                        start("fetch", "here", "sign")))),
            List.of(),
            List.of(new PlaceIn("pharmacy", NOW, exactly(3))));
    Forecast f = Forecaster.run(in);
    assertThat(done(f, 0, "fetch")).isEqualTo(5);
    assertThat(done(f, 0, "sign")).isEqualTo(6);
    assertThat(startOf(f)).isEqualTo(13);
  }

  @Test
  void shouldNameThePlaceThatOpensLate() {
    ForecastInput in =
        Mornings.with(
            morning(
                NOW,
                1,
                PLAIN,
                people(anna()),
                List.of(
                    one(
                        item("other").by("a").takes(exactly(5)),
                        item("fetch").by("a").takes(exactly(2)).at("pharmacy"),
                        start("other", "fetch")))),
            List.of(),
            List.of(new PlaceIn("pharmacy", NOW + 20 * MINUTE, exactly(0))));
    Forecast f = Forecaster.run(in);
    assertThat(startOf(f)).isEqualTo(22);
    Share share = largest(f);
    assertThat(share.kind()).isEqualTo("place");
    assertThat(share.thing()).isEqualTo("pharmacy");
    assertThat(share.item()).isEqualTo("fetch");
    assertThat(share.until()).isEqualTo(NOW + 20 * MINUTE);
    // 22 late: 7 too tightly planned for 7 minutes of work that begin at the target.
    assertThat(share.share()).isCloseTo(15.0 / 22, within(1e-9));
  }

  @Test
  void shouldTakeTheMenderOfAReportedFaultAndDoTheItemAgain() {
    RoomIn faulty =
        one(
            item("machine")
                .by("a")
                .takes(exactly(2))
                .fault(NOW - 3 * MINUTE, exactly(10), List.of("technician"), null),
            start("machine"));
    Forecast f = run(people(anna(), person("t", "technician").comes(NOW + MINUTE, null)), faulty);
    assertThat(startOf(f)).isEqualTo(1 + 10 + 2);
    assertThat(largest(f).kind()).isEqualTo("mend");
    // Taken already: three of the ten minutes have gone.
    RoomIn taken =
        one(
            item("machine")
                .by("a")
                .takes(exactly(2))
                .fault(NOW - 3 * MINUTE, exactly(10), List.of("technician"), "t"),
            start("machine"));
    assertThat(startOf(run(people(anna(), person("t", "technician").here(NOW)), taken)))
        .isEqualTo(7 + 2);
  }

  @Test
  void shouldDoALapsedItemAgainUntilItsStepIsUnderWayAndTwiceAtMost() {
    Forecast f =
        run(
            people(anna()),
            one(
                item("drawn").by("a").takes(exactly(2)).lives(10).gates("start"),
                item("long").takes(exactly(13)),
                item("start").after("long").marks("start")));
    // Good at 2, lapsed at 12, good again at 14.
    assertThat(startOf(f)).isEqualTo(14);
    Forecast twice =
        run(
            people(anna()),
            one(
                item("drawn").by("a").takes(exactly(2)).lives(10).gates("start"),
                item("long").takes(exactly(100)),
                item("start").after("long").marks("start")));
    assertThat(startOf(twice)).isEqualTo(100);
    assertThat(done(twice, 0, "drawn")).isEqualTo(26);
    Forecast good =
        run(
            people(anna()),
            one(
                item("drawn")
                    .by("a")
                    .takes(exactly(2))
                    .lives(10)
                    .gates("start")
                    .good(NOW - 9 * MINUTE, "anna"),
                item("long").takes(exactly(1.5)),
                item("start").after("long").marks("start")));
    assertThat(startOf(good)).isEqualTo(3);
  }

  @Test
  void shouldKeepTheFirstWhoComesForAStepOfTwoThatHasWaited() {
    RoomIn both =
        one(
            item("block").by("v").by("h").takes(exactly(4)),
            item("start").after("block").marks("start"));
    RoomIn other =
        room(
            "2",
            NOW,
            NOW,
            items(
                item("x").by("v").takes(exactly(7)).asked(),
                item("y").by("v").takes(exactly(7)).asked().after("x"),
                item("z").by("h").takes(exactly(6)).asked(),
                item("q").by("h").takes(exactly(9)).asked().after("z"),
                item("start").after("y", "q").marks("start")));
    Forecast f = run(people(person("v", "v").here(NOW), person("h", "h").here(NOW)), both, other);
    // h is free at 6 and kept, v comes at 7.
    assertThat(startOf(f)).isEqualTo(11);
    // Without patience the two would miss each other: v busy to 14, h to 15.
    assertThat(minutes(f.rooms().get(1))).isEqualTo(20);
  }

  @Test
  void shouldGoOnWithAStartAlsoWithSomebodyWhoIsKeptForAStepOfTwo() {
    RoomIn both = one(item("block").by("v").by("h").takes(exactly(4)), start("block"));
    Work in = item("in").by("b").takes(exactly(8)).marks("in");
    Work induction = item("start").by("h").takes(exactly(1)).after("in").marks("start");
    Work elsewhere = item("long").by("v").takes(exactly(20)).asked();
    RoomIn other = room("2", NOW, NOW, items(in, induction, elsewhere));
    Forecast f =
        run(
            people(
                person("v", "v").here(NOW),
                person("h", "h").here(NOW),
                person("b", "b").in("2").here(NOW)),
            both,
            other);
    // h is kept for the block from 5 on.
    assertThat(minutes(f.rooms().get(1))).isEqualTo(9);
  }

  @Test
  void shouldHoldUnitsUntilTheItemThatEndsTheirUse() {
    RoomIn a =
        one(
            item("fetch").takes(exactly(1)).needs("scanner", 1, "block"),
            item("block").by("v").takes(exactly(10)).after("fetch"),
            item("start").after("block").marks("start"));
    RoomIn b =
        room(
            "2",
            NOW,
            NOW,
            items(
                item("line").takes(exactly(2)).needs("scanner", 1, null),
                item("start").after("line").marks("start")));
    ForecastInput in =
        Mornings.with(
            morning(NOW, 1, PLAIN, people(person("v", "v").here(NOW)), List.of(a, b)),
            List.of(new KindIn("scanner", 1, List.of())),
            List.of());
    Forecast f = Forecaster.run(in);
    assertThat(startOf(f)).isEqualTo(11);
    assertThat(minutes(f.rooms().get(1))).isEqualTo(13);
    Share share = f.rooms().get(1).holdups().get(0);
    assertThat(share.kind()).isEqualTo("equipment");
    assertThat(share.thing()).isEqualTo("scanner");
    assertThat(share.where()).isEqualTo("1");
    // Promised to the second room, the first waits for it.
    Forecast promised =
        Forecaster.run(
            Mornings.with(in, List.of(new KindIn("scanner", 1, List.of("2"))), List.of()));
    assertThat(minutes(promised.rooms().get(1))).isEqualTo(2);
    assertThat(startOf(promised)).isEqualTo(13);
    // With the first room already.
    RoomIn held =
        one(
            item("fetch").takes(exactly(1)).holds("scanner", 1, "block").good(NOW - MINUTE, null),
            item("block").by("v").takes(exactly(10)).after("fetch"),
            item("start").after("block").marks("start"));
    Forecast there = Forecaster.run(Mornings.withRooms(in, List.of(held, b)));
    assertThat(minutes(there.rooms().get(1))).isEqualTo(12);
  }

  @Test
  void shouldSayWhereThePersonWaitedForIs() {
    RoomIn first =
        room(
            "1",
            NOW,
            NOW,
            items(
                item("long").by("v").takes(exactly(20)).asked(),
                item("start").after("long").marks("start")));
    RoomIn second =
        room(
            "2",
            NOW,
            NOW,
            items(
                item("short").by("v").takes(exactly(3)),
                item("start").after("short").marks("start")));
    Forecast f = run(people(person("vera", "v").here(NOW)), first, second);
    Share share = f.rooms().get(1).holdups().get(0);
    assertThat(share.kind()).isEqualTo("person");
    assertThat(share.thing()).isEqualTo("vera");
    assertThat(share.where()).isEqualTo("1");
    assertThat(share.share()).isCloseTo(20.0 / 23, within(1e-9));
    assertThat(f.components()).hasSize(1);
  }

  @Test
  void shouldBeginNothingAwayOrBeforeArrivalOrInAnOccupiedRoom() {
    RoomIn set =
        one(
            item("x").by("a").takes(exactly(2)),
            item("y").by("a").takes(exactly(2)),
            start("x", "y"));
    Person away = anna().away(NOW + MINUTE, NOW + 9 * MINUTE);
    assertThat(startOf(run(people(away), set))).isEqualTo(11);
    Person late = person("anna", "a").in("1").comes(NOW + 5 * MINUTE, exactly(2));
    Forecast f = run(people(late), set);
    assertThat(startOf(f)).isEqualTo(11);
    assertThat(largest(f).kind()).isIn("plan", "arrival");
    RoomIn occupied =
        new RoomIn(
            "1",
            "c",
            NOW,
            "start",
            NOW,
            exactly(30),
            null,
            items(
                item("x").by("a").takes(exactly(2)).inRoom(),
                item("y").by("a").takes(exactly(2)),
                start("x", "y")));
    Forecast g = run(people(anna()), occupied);
    assertThat(startOf(g)).isEqualTo(32);
    assertThat(largest(g).kind()).isEqualTo("occupied");
  }

  @Test
  void shouldStartAtTheBookedTimeAndSayWhenItCould() {
    ForecastInput in =
        morning(
            NOW,
            1,
            PLAIN,
            people(anna()),
            List.of(
                room(
                    "1",
                    NOW + 30 * MINUTE,
                    NOW,
                    items(
                        item("x").by("a").takes(exactly(12)),
                        item("start").after("x").marks("start").notBefore(NOW + 30 * MINUTE)))));
    RoomOut room = Forecaster.run(in).rooms().get(0);
    assertThat(minutes(room)).isEqualTo(30);
    assertThat(room.could50()).isEqualTo(NOW + 12 * MINUTE);
    assertThat(room.onTime()).isEqualTo(1);
    assertThat(room.holdups()).isEmpty();
    assertThat(room.items().get(0).last50()).isEqualTo(NOW + 18 * MINUTE);
  }

  @Test
  void shouldCutTheStartToWholeMinutes() {
    for (int seconds : new int[] {59, 60}) {
      RoomIn r =
          room(
              "1",
              NOW + 10 * MINUTE,
              NOW,
              items(item("start").takes(exactly(10 + seconds / 60.0)).marks("start")));
      assertThat(run(List.of(), r).rooms().get(0).onTime()).isEqualTo(seconds == 59 ? 1 : 0);
    }
  }

  @Test
  void shouldCountTheCapAndNameWhoIsMissingWhenAStartNeverComes() {
    Forecast f = run(List.of(), one(item("x").by("a").takes(exactly(2)), start("x")));
    RoomOut room = f.rooms().get(0);
    assertThat(room.capped()).isEqualTo(1);
    assertThat(minutes(room)).isEqualTo(240);
    assertThat(largest(f).kind()).isEqualTo("person");
    assertThat(largest(f).item()).isEqualTo("x");
  }

  @Test
  void shouldHoldWhoeverIsInAStepOfTwoThatIsInHand() {
    RoomIn a =
        one(
            item("block").by("v").by("h").takes(exactly(10)).inHand(NOW - 4 * MINUTE, "vera"),
            item("start").after("block").marks("start"));
    RoomIn b =
        room(
            "2",
            NOW,
            NOW,
            items(
                item("papers").by("h").takes(exactly(3)),
                item("start").after("papers").marks("start")));
    Forecast f = run(people(person("vera", "v").here(NOW), person("hal", "h").here(NOW)), a, b);
    assertThat(startOf(f)).isEqualTo(6);
    assertThat(minutes(f.rooms().get(1))).isEqualTo(9);
  }

  @Test
  void shouldGiveOutWorkAtNowAfterWhatEndsNow() {
    Forecast f =
        run(
            people(anna()),
            one(
                item("ends now").by("b").takes(exactly(3)).inHand(NOW - 3 * MINUTE, null),
                item("next").by("a").takes(exactly(2)).after("ends now"),
                item("other").by("a").takes(exactly(5)),
                start("next", "other")));
    assertThat(done(f, 0, "next")).isEqualTo(2);
    assertThat(startOf(f)).isEqualTo(7);
  }

  @Test
  void shouldHoldTheLikelyOneInWhatIsInHandOfNobodyNamed() {
    Forecast f =
        run(
            people(anna()),
            one(
                item("x").by("a").takes(exactly(10)).inHand(NOW - 4 * MINUTE, null),
                item("y").by("a").takes(exactly(5)),
                start("x", "y")));
    assertThat(done(f, 0, "x")).isEqualTo(6);
    assertThat(startOf(f)).isEqualTo(11);
  }

  @Test
  void shouldTellWhatWasLostBeforeNow() {
    long begins = NOW - 60 * MINUTE;
    RoomIn r =
        room(
            "1",
            NOW - 10 * MINUTE,
            begins,
            items(
                item("x").by("a").takes(exactly(20)).good(NOW, "anna"),
                item("y").by("a").takes(exactly(10)),
                start("x", "y")));
    Person anna = person("anna", "a").in("1").here(begins).spoke(NOW);
    RoomOut room = run(people(anna), r).rooms().get(0);
    // Begun at 5:00 by the implied beginning, good at 6:00 for 20 minutes allowed: all 20 late.
    assertThat(room.meanLateMs()).isEqualTo(20.0 * MINUTE);
    assertThat(room.alreadyLost()).isCloseTo(1, within(1e-9));
    assertThat(room.holdups()).isEmpty();
  }
}
