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
}
