package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import sunup.forecast.Forecast.RoomOut;

/** Forecasts with a mistake planted in them, and properties that must notice it. */
final class Planted {
  private Planted() {}

  /** A forecast after some of the input's trials. */
  interface Engine {
    Forecast after(ForecastInput in, int trials);
  }

  static final Engine RIGHT =
      (in, trials) -> {
        Run run = new Run(in);
        run.advance(trials);
        return run.result();
      };

  /** The forecast of an input that a mistake has changed. */
  static Engine wrongInput(UnaryOperator<ForecastInput> mistake) {
    return (in, trials) -> RIGHT.after(mistake.apply(in), trials);
  }

  static Engine wrongRooms(UnaryOperator<RoomOut> mistake) {
    return (in, trials) -> {
      Forecast f = RIGHT.after(in, trials);
      List<RoomOut> rooms = f.rooms().stream().map(mistake).toList();
      return new Forecast(
          f.model(), f.inputs(), f.seed(), f.trials(), f.now(), rooms, f.holdups(), f.components());
    };
  }

  static void holds(Consumer<Engine> property, Engine... mistakes) {
    property.accept(RIGHT);
    for (int m = 0; m < mistakes.length; m++) {
      Engine wrong = mistakes[m];
      assertThatThrownBy(() -> property.accept(wrong))
          .as("planted mistake %d", m)
          .isInstanceOf(AssertionError.class);
    }
  }

  static int items(ForecastInput in) {
    return in.rooms().stream().mapToInt(r -> r.items().size()).sum();
  }

  static ForecastInput reseeded(ForecastInput in, long by) {
    return Mornings.withSeed(in, in.seed() + by);
  }
}
