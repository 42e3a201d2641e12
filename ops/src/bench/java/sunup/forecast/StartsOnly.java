package sunup.forecast;

import java.util.stream.IntStream;

/** The forecast's trials with nothing taken down but the starts: what other simulations do too. */
public final class StartsOnly {
  private StartsOnly() {}

  /** The start of each room in each trial, by room and trial, all rooms as one component. */
  public static long[][] play(ForecastInput in) {
    Checks.check(in);
    Model m = Compiler.compile(in, IntStream.range(0, in.rooms().size()).boxed().toList());
    Trial trial = new Trial(m);
    long[][] starts = new long[m.rooms][in.trials()];
    for (int n = 0; n < in.trials(); n++) {
      trial.run(n);
      for (int r = 0; r < m.rooms; r++) {
        starts[r][n] = in.now() + Math.min(trial.course.good(m.startItem[r]), m.cap[r]);
      }
    }
    return starts;
  }
}
