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
}
