package sunup.ops.bench;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.forecast.Run;

/** Forecasts by several threads, as the board's first answers are. */
final class Together {
  private static final ExecutorService HELPERS =
      Executors.newCachedThreadPool(
          task -> {
            Thread made = new Thread(task, "sunup-forecast-help");
            made.setDaemon(true);
            return made;
          });

  private Together() {}

  static Forecast run(ForecastInput in, int threads) throws InterruptedException {
    Run run = new Run(in);
    all(threads, run.sharing(in.trials()));
    all(threads, run.reading());
    return run.result();
  }

  private static void all(int threads, Runnable work) throws InterruptedException {
    CountDownLatch back = new CountDownLatch(threads - 1);
    for (int n = 1; n < threads; n++) {
      HELPERS.execute(
          () -> {
            work.run();
            back.countDown();
          });
    }
    work.run();
    back.await();
  }
}
