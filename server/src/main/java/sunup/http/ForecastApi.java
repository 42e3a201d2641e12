package sunup.http;

import io.vertx.core.Vertx;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.handler.BodyHandler;
import java.util.concurrent.Executor;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.forecast.AsRun;
import sunup.forecast.BadInput;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.forecast.Forecaster;

/**
 * The forecast for anybody: a whole morning as JSON in, its figures out. Nothing is kept, so that
 * the figures can be checked against another program.
 */
final class ForecastApi {
  static final String PATH = "/api/forecast";

  /** Where the minutes of the rooms that have started went. */
  static final String AS_RUN = "/api/as-run";

  /** Bytes of an input. */
  static final int BODY_BYTES_MAX = 2 * 1024 * 1024;

  /** Items of all rooms times trials: what is computed for one request. */
  static final long ITEM_TRIALS_MAX = 10_000_000;

  private final Vertx vertx;
  private final Executor pool;

  ForecastApi(Vertx vertx, Executor pool) {
    this.vertx = vertx;
    this.pool = pool;
  }

  void mount(Router router) {
    mount(router, PATH, ForecastApi::run);
    mount(router, AS_RUN, ForecastApi::asRun);
  }

  private interface Figures {
    Object of(byte[] body) throws Answers.Wrong;
  }

  private void mount(Router router, String path, Figures figures) {
    router
        .post(path)
        .handler(BodyHandler.create(false).setBodyLimit(BODY_BYTES_MAX))
        .handler(
            context ->
                Answers.later(
                    vertx,
                    context,
                    pool,
                    () -> figures.of(Answers.body(context, "application/json"))));
  }

  static ForecastInput read(byte[] body) throws Answers.Wrong {
    try {
      ForecastInput input = Json.read(body, ForecastInput.class);
      if (input != null) {
        return input;
      }
    } catch (BadJson e) {
      throw new Answers.Wrong("Not understood", 400, e.getMessage());
    }
    throw new Answers.Wrong("Not understood", 400, "null is no morning.");
  }

  static AsRun asRun(byte[] body) throws Answers.Wrong {
    try {
      return AsRun.of(read(body));
    } catch (BadInput e) {
      throw new Answers.Wrong("Can't be explained", 422, e.getMessage());
    }
  }

  static Forecast run(byte[] body) throws Answers.Wrong {
    ForecastInput input = read(body);
    long items = input.rooms().stream().mapToLong(room -> room.items().size()).sum();
    if (items * Math.max(1, input.trials()) > ITEM_TRIALS_MAX) {
      throw new Answers.Wrong(
          "Too much",
          422,
          "All items times trials may be at most " + ITEM_TRIALS_MAX + ". Ask for fewer trials.");
    }
    try {
      return Forecaster.ofSent(input);
    } catch (BadInput e) {
      throw new Answers.Wrong("Can't be simulated", 422, e.getMessage());
    }
  }
}
