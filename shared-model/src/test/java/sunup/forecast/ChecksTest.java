package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static sunup.forecast.Mornings.PLAIN;
import static sunup.forecast.Mornings.about;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.items;
import static sunup.forecast.Mornings.morning;
import static sunup.forecast.Mornings.room;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.Mornings.Work;

class ChecksTest {
  private static final long NOW = at(6, 0);

  private static ForecastInput with(Work... works) {
    return morning(NOW, 1, PLAIN, List.of(), List.of(room("1", NOW, NOW, items(works))));
  }

  private static void refused(ForecastInput in, String... says) {
    assertThatThrownBy(() -> Forecaster.run(in))
        .isInstanceOf(BadInput.class)
        .hasMessageContainingAll(says);
  }

  @Test
  void shouldNameTheFieldAndWhatToDo() {
    refused(with(item("a")), "rooms[0].startStep", "let one item of the room mark the start");
    refused(with(item("a"), item("a").marks("start")), "rooms[0].items[1].key", "give each item");
    refused(
        with(item("a").after("b"), item("s").marks("start")), "rooms[0].items[0].after", "\"b\"");
    refused(with(item("a").at("moon"), item("s").marks("start")), "items[0].place", "no place");
    refused(with(item("a").needs("u", 1, null), item("s").marks("start")), "needs.kind", "no kind");
    refused(
        with(item("a").takes(about(5, 4)), item("s").marks("start")),
        "items[0].hands.oneInTenMs",
        "not be less");
    refused(
        with(item("a").takes(exactly(-1)), item("s").marks("start")), "items[0].hands.ms", "0 to");
    refused(with(item("s").marks("start")).withTrials(0), "trials", "1 to");
    refused(null, "input");
  }

  @Test
  void shouldNameTheItemsThatWaitForEachOther() {
    refused(
        with(item("a").after("b"), item("b").after("a"), item("s").marks("start")),
        "circle",
        "a, b");
  }

  @Test
  void shouldTakeAMorningWithoutRooms() {
    Forecast f = Forecaster.run(morning(NOW, 4, PLAIN, List.of(), List.of()));
    assertThat(f.rooms()).isEmpty();
  }

  /** A board goes on with what is asked of it; who sends a morning by hand is told. */
  @Test
  void shouldRefuseWhatCanNeverStartAndWarnOfWhatIsNeverDone() {
    Work check = item("check").by("nobody").takes(exactly(5));
    Work start = item("s").marks("start");
    ForecastInput never = with(check.gates("start"), start);
    assertThat(Forecaster.run(never).rooms().get(0).capped()).isEqualTo(1);
    assertThatThrownBy(() -> Forecaster.ofSent(never))
        .isInstanceOf(BadInput.class)
        .hasMessageContainingAll(
            "rooms[0].items[0].who",
            "[nobody]",
            "room \"1\" can never start",
            "leave the item out");
    Forecast aside = Forecaster.ofSent(with(item("check").by("nobody"), start));
    assertThat(aside.warnings())
        .singleElement()
        .asString()
        .contains("rooms[0].items[0].who", "[nobody]", "no start waits for it");
    assertThat(Forecaster.ofSent(with(start)).warnings()).isEmpty();
  }

  @Test
  void shouldTellOfMoreUnitsThanThereAre() {
    Work scan = item("scan").needs("scanner", 3, null);
    ForecastInput two =
        Mornings.with(
            with(scan, item("s").after("scan").marks("start")),
            List.of(new KindIn("scanner", 2, List.of())),
            List.of());
    assertThatThrownBy(() -> Forecaster.ofSent(two))
        .hasMessageContainingAll("rooms[0].items[0].needs.units", "3 of scanner", "2 exist");
  }
}
