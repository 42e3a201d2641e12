package sunup.forecast;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import sunup.ops.bench.CoupledSuite;

/**
 * The forecast's inner loop under JMH: one trial of one component of coupled rooms, played, and
 * played and taken down; with what each allocates.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class KernelJmh {
  private static final int TRIALS = 2_000;

  /** Rooms of the component. */
  @Param({"1", "4", "16", "64"})
  public int rooms;

  private Trial trial;
  private Tally tally;
  private int n;

  /** A compiled component; the place for what is taken down is there before. */
  @Setup
  public void prepare() {
    ForecastInput in = CoupledSuite.of(rooms, rooms, 7, TRIALS);
    Model model = Compiler.compile(in, IntStream.range(0, rooms).boxed().toList());
    trial = new Trial(model);
    Moments moments = new Moments(model, TRIALS);
    moments.reach(TRIALS);
    tally = new Tally(model, moments, in.now());
  }

  /** Plays a trial. */
  @Benchmark
  public long play() {
    n = (n + 1) % TRIALS;
    trial.run(n);
    return trial.now;
  }

  /** Plays a trial and takes down its figures, chains and last moments. */
  @Benchmark
  public long playAndTakeDown() {
    n = (n + 1) % TRIALS;
    trial.run(n);
    tally.take(trial.course, n);
    return trial.now;
  }

  /** JMH's own options as arguments. */
  public static void main(String[] args) throws RunnerException, CommandLineOptionException {
    Collection<RunResult> results =
        new Runner(
                new OptionsBuilder()
                    .parent(new CommandLineOptions(args))
                    .include(KernelJmh.class.getName())
                    .addProfiler(GCProfiler.class)
                    .build())
            .run();
    System.out.println();
    for (RunResult result : results) {
      told(result);
    }
  }

  private static void told(RunResult result) {
    int rooms = Integer.parseInt(result.getParams().getParam("rooms"));
    double items = (double) rooms * CoupledSuite.ITEMS;
    List<String> name = List.of(result.getParams().getBenchmark().split("\\."));
    System.out.printf(
        Locale.ROOT,
        "%-16s %2d rooms  %6.1f ns a completion (+/- %.1f)  %.0f bytes a trial%n",
        name.get(name.size() - 1),
        rooms,
        result.getPrimaryResult().getScore() / items,
        result.getPrimaryResult().getScoreError() / items,
        result.getSecondaryResults().get("gc.alloc.rate.norm").getScore());
  }
}
