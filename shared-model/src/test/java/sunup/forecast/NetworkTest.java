package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.PLAIN;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.items;
import static sunup.forecast.Mornings.morning;
import static sunup.forecast.Mornings.room;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.forecast.Forecast.ItemOut;
import sunup.forecast.Forecast.RoomOut;

class NetworkTest {
  private static final long START = at(6, 0);

  /**
   * Heizer and Render, Operations Management, the Milwaukee Paper network: activities, times and
   * earliest and latest finishes as printed; T = 15 on A-C-E-G-H.
   */
  @Test
  void shouldGiveTheBooksTimesOfTheMilwaukeePaperNetwork() {
    ForecastInput in =
        morning(
            START,
            16,
            PLAIN,
            List.of(),
            List.of(
                room(
                    "1",
                    START + 15 * MINUTE,
                    START,
                    items(
                        item("A").takes(exactly(2)),
                        item("B").takes(exactly(3)),
                        item("C").takes(exactly(2)).after("A"),
                        item("D").takes(exactly(4)).after("B"),
                        item("E").takes(exactly(4)).after("C"),
                        item("F").takes(exactly(3)).after("C"),
                        item("G").takes(exactly(5)).after("D", "E"),
                        item("H").takes(exactly(2)).after("F", "G").marks("start")))));

    RoomOut room = Forecaster.run(in).rooms().get(0);

    assertThat(room.start50()).isEqualTo(START + 15 * MINUTE);
    assertThat(room.onTime()).isEqualTo(1.0);
    int[] earliestFinish = {2, 3, 4, 7, 8, 7, 13, 15};
    int[] latestStart = {0, 1, 2, 4, 4, 10, 8, 13};
    for (int i = 0; i < 8; i++) {
      ItemOut item = room.items().get(i);
      assertThat(item.done50()).as(item.key()).isEqualTo(START + earliestFinish[i] * MINUTE);
      assertThat(item.last50()).as(item.key()).isEqualTo(START + latestStart[i] * MINUTE);
    }
  }
}
