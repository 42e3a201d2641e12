package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.again.SecondSimulation;
import umontreal.ssj.probdist.NormalDist;

/**
 * The kernel against a second simulation that was written from the page alone. Both are Monte
 * Carlo: each figure of each room may differ by its error. The bound of all comparisons together is
 * set so that a right kernel fails once in a hundred choices of numbers; the numbers are fixed.
 */
class SecondOpinionTest {
  private static final double FALSE_ALARMS = 0.01;
  private static final long FIRST = Long.getLong("sunup.compare.first", 1);
  private static final int MORNINGS = Integer.getInteger("sunup.compare.mornings", 5);
  private static final int TRIALS = Integer.getInteger("sunup.compare.trials", 1000);
  private static final long SECONDS = Long.getLong("sunup.compare.seconds", 600);
  private static final int FIGURES = 6;
  private static final int ROOMS_MOST = 4;

  private final double z =
      NormalDist.inverseF01(1 - FALSE_ALARMS / 2 / (MORNINGS * ROOMS_MOST * FIGURES));
  private final List<String> apart = new ArrayList<>();
  private double worst;
  private String where = "";
  private int compared;

  @Test
  void shouldGiveTheFiguresOfASimulationWrittenFromThePage() {
    TreeMap<String, Integer> seen = new TreeMap<>();
    long until = System.nanoTime() + SECONDS * 1_000_000_000L;
    int done = 0;
    for (long seed = FIRST; seed < FIRST + MORNINGS && System.nanoTime() < until; seed++) {
      ForecastInput in = EveryFeature.of(seed, TRIALS, seen);
      compare("morning " + seed, in, seed);
      done++;
    }
    System.out.printf(
        Locale.ROOT,
        "%d mornings, %d figures compared at %.2f standard errors, the worst at %.2f (%s); %s%n",
        done,
        compared,
        z,
        worst,
        where,
        seen);
    apart.forEach(System.out::println);
    if (done < MORNINGS) {
      System.out.printf("%d s were over after %d of %d mornings%n", SECONDS, done, MORNINGS);
    }
    assertThat(done).isPositive();
    assertThat(apart).isEmpty();
  }

  private void compare(String name, ForecastInput in, long seed) {
    Forecast f = Forecaster.run(in);
    long[][] starts = starts(in);
    long[][][] played = SecondSimulation.play(in, TRIALS, seed + 1_000_000);
    for (int r = 0; r < in.rooms().size(); r++) {
      RoomIn room = in.rooms().get(r);
      room(name + " " + room.id(), in, r, f.rooms().get(r), starts[r], played);
    }
  }

  /** The forecast's own starts by room and trial: it tells means, and their error needs more. */
  private static long[][] starts(ForecastInput in) {
    Model m = Compiler.compile(in, IntStream.range(0, in.rooms().size()).boxed().toList());
    Trial trial = new Trial(m);
    Moments moments = new Moments(m, TRIALS);
    Tally tally = new Tally(m, moments, in.now());
    moments.reach(TRIALS);
    for (int n = 0; n < TRIALS; n++) {
      trial.run(n);
      tally.take(trial.course, n);
    }
    return Arrays.stream(moments.start)
        .map(of -> Arrays.stream(of).mapToLong(s -> in.now() + s).toArray())
        .toArray(long[][]::new);
  }

  private void room(
      String name, ForecastInput in, int r, RoomOut ours, long[] own, long[][][] played) {
    RoomIn room = in.rooms().get(r);
    long[] starts = played[0][r];
    long limit = room.target() + in.settings().graceMs();
    long onTime =
        Arrays.stream(starts).filter(s -> Math.floorDiv(s, 60_000) * 60_000 <= limit).count();
    share(name + " on time", ours.onTime(), onTime);
    double[] theirs = late(starts, room.target());
    double[] mine = late(own, room.target());
    assertThat(mine[0]).as(name).isCloseTo(ours.meanLateMs() / 60_000, within(1e-6));
    double error = Math.sqrt((mine[1] + theirs[1]) / TRIALS);
    told(name + " mean late", mine[0], theirs[0], 0.01, error);
    point(name + " start10", ours.start10(), 0.1, starts);
    point(name + " start50", ours.start50(), 0.5, starts);
    point(name + " start90", ours.start90(), 0.9, starts);
    point(name + " could50", ours.could50(), 0.5, played[1][r]);
  }

  /** Mean and variance of the late minutes. */
  private static double[] late(long[] starts, long target) {
    double sum = 0;
    double squares = 0;
    for (long s : starts) {
      double late = Math.max(0, s - target) / 60_000.0;
      sum += late;
      squares += late * late;
    }
    double mean = sum / starts.length;
    return new double[] {mean, Math.max(0, squares / starts.length - mean * mean)};
  }

  private void share(String name, double ours, long count) {
    double both = (ours * TRIALS + count + 1) / (2.0 * TRIALS + 2);
    told(name, ours, count / (double) TRIALS, 0, Math.sqrt(2 * both * (1 - both) / TRIALS));
  }

  /** Our q-point lies where the other's share below and up to it encloses q, but for the error. */
  private void point(String name, long ours, double q, long[] theirs) {
    double below = Arrays.stream(theirs).filter(s -> s < ours).count() / (double) TRIALS;
    double upTo = Arrays.stream(theirs).filter(s -> s <= ours).count() / (double) TRIALS;
    double off = Math.max(0, Math.max(below - q, q - upTo));
    told(name, q + off, q, 0, Math.sqrt(2 * q * (1 - q) / TRIALS));
  }

  private void told(String name, double ours, double theirs, double rounding, double error) {
    compared++;
    double off = Math.max(0, Math.abs(ours - theirs) - rounding) / Math.max(error, 1e-9);
    where = off > worst ? name : where;
    worst = Math.max(worst, off);
    if (off > z) {
      apart.add(
          String.format(
              Locale.ROOT, "%s: %.4f against %.4f, %.1f standard errors", name, ours, theirs, off));
    }
  }
}
