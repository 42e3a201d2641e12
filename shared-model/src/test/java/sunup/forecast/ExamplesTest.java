package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.forecast.Forecast.RoomOut;

/** The example files: one a feature, for whoever programs the model again. */
class ExamplesTest {
  private static final double MINUTE = 60_000;

  private static ForecastInput read(String name) throws IOException, BadJson {
    try (InputStream in = ExamplesTest.class.getResourceAsStream("/forecast/" + name + ".json")) {
      return Json.read(in.readAllBytes(), ForecastInput.class);
    }
  }

  private static RoomOut last(ForecastInput in) {
    var rooms = Forecaster.run(in).rooms();
    return rooms.get(rooms.size() - 1);
  }

  /** Constant durations, one answer: the start of the last room, minutes after now. */
  @ParameterizedTest
  @CsvSource({
    "network, 15",
    "waiting, 9",
    "errand, 13",
    "fault, 12",
    "lapse, 14",
    "equipment, 13",
    "one-for-two, 22.2"
  })
  void shouldStartWhenTheExampleSays(String name, double minutes) throws IOException, BadJson {
    ForecastInput in = read(name);
    assertThat((last(in).start50() - in.now()) / MINUTE).isCloseTo(minutes, within(1e-9));
  }

  @Test
  void shouldFindTheSilentRoomProbablyReady() throws IOException, BadJson {
    assertThat(last(read("silence")).onTime()).isCloseTo(0.95, within(0.03));
  }

  /** Mean left after 20 minutes of 21 +/- 16: 15.04; computed in the project's check values. */
  @Test
  void shouldDrawOnWhatIsInHand() throws IOException, BadJson {
    assertThat(last(read("in-hand")).meanLateMs() / MINUTE).isCloseTo(15.04, within(1.5));
  }

  @Test
  void shouldAddATextbookPair() throws IOException, BadJson {
    assertThat(last(read("three-point")).meanLateMs() / MINUTE).isCloseTo(4.5 + 5, within(0.5));
  }
}
