package sunup.forecast;

import static sunup.forecast.Mornings.at;

import sunup.forecast.ForecastInput.Settings;

/** Run by hand: how long forecasts take. Asserts nothing. */
final class SpeedProbe {
  private SpeedProbe() {}

  /** The time that this thread computed: other work on the machine does not count. */
  private static long cpu() {
    return java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  public static void main(String[] args) {
    for (int rooms : new int[] {1, 4, 12, 40}) {
      ForecastInput in = Hospital.morning(rooms, at(6, 40), 2000, Settings.DEFAULT);
      for (int trials : new int[] {256, 2000}) {
        long best = Long.MAX_VALUE;
        long compile = Long.MAX_VALUE;
        long result = Long.MAX_VALUE;
        Forecast f = null;
        for (int n = 0; n < 12; n++) {
          long t0 = cpu();
          Run run = new Run(in.withTrials(trials));
          long t1 = cpu();
          run.advance(trials);
          long t2 = cpu();
          f = run.result();
          long t3 = cpu();
          best = Math.min(best, t3 - t0);
          compile = Math.min(compile, t1 - t0);
          result = Math.min(result, t3 - t2);
        }
        long items = in.rooms().stream().mapToLong(r -> r.items().size()).sum();
        System.out.printf(
            "%d rooms %d trials: %.1f ms (compile %.1f, result %.1f), %.0f ns an item, %d components, room 1: %.2f %s%n",
            rooms,
            trials,
            best / 1e6,
            compile / 1e6,
            result / 1e6,
            (double) (best - compile - result) / items / trials,
            f.components().size(),
            f.rooms().get(0).onTime(),
            (f.rooms().get(0).start50() - Hospital.TARGET) / 60000.0);
        if (trials == 2000 && rooms <= 4) {
          f.holdups().stream().limit(8).forEach(System.out::println);
        }
      }
    }
  }
}
