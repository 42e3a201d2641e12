package sunup.ops.bench;

import com.sun.management.ThreadMXBean;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sunup.forecast.Draw;
import sunup.forecast.ForecastInput;
import sunup.forecast.ItemDraws;
import sunup.forecast.Run;

/**
 * The forecast's own cost: per completion, beside the least that any simulation of these draws has
 * to do, measured in turns in one run on one thread.
 */
@Command(
    name = "kernel",
    mixinStandardHelpOptions = true,
    description = {
      "The forecast's cost per completed item, beside the floor (a draw, its",
      "exponential, a store) measured in turns: for one component of each size, and as suites",
      "grow, in one component and in many of four rooms."
    })
final class KernelBench implements Callable<Integer> {
  private static final int FIRST = 256;
  private static final int ALL = 2_000;
  private static final int FLOOR_ITEMS = 2_880;
  private static final int FLOOR_TRIALS = 64;
  private static final int SMALL = 4;
  private static final int RUNS_AT_MOST = 2_000;

  @Spec private CommandSpec spec;

  @Option(
      names = "--rooms",
      split = ",",
      description = "Rooms of one component (${DEFAULT-VALUE}).",
      defaultValue = "1,4,16,64")
  private List<Integer> rooms;

  @Option(
      names = "--growth",
      split = ",",
      description = "Rooms of growing suites (${DEFAULT-VALUE}).",
      defaultValue = "8,32,128,512")
  private List<Integer> growth;

  @Option(names = "--seed", description = "Seed (${DEFAULT-VALUE}).", defaultValue = "7")
  private long seed;

  @Option(
      names = "--seconds",
      description = "Bound for each line, after as long a warm-up (${DEFAULT-VALUE}).",
      defaultValue = "5")
  private double seconds;

  @Option(
      names = "--threads",
      description =
          "Threads that share each forecast's trials (${DEFAULT-VALUE}); the floor has one.",
      defaultValue = "1")
  private int threads;

  private final long[] sink = new long[FLOOR_ITEMS];
  private ItemDraws[] floor;
  private PrintWriter out;

  @Override
  public Integer call() throws InterruptedException {
    out = spec.commandLine().getOut();
    floor = new ItemDraws[FLOOR_ITEMS];
    for (int i = 0; i < FLOOR_ITEMS; i++) {
      floor[i] = new ItemDraws(seed, "case:c", "i" + i, new Draw.LogNormal(60_000, 120_000));
    }
    out.println(
        BenchCommand.machine() + ", seed " + seed + ", trials shared by " + threads + " threads");
    out.println(
        "one component                  whole forecast: time, ns a completion, of the floor");
    for (int n : rooms) {
      for (int trials : new int[] {FIRST, ALL}) {
        line(n + " rooms", CoupledSuite.of(n, n, seed, trials));
      }
    }
    out.println("growing suites, " + FIRST + " trials");
    for (int n : growth) {
      line(n + " rooms, one component", CoupledSuite.of(n, n, seed, FIRST));
      line(n + " rooms by fours", CoupledSuite.of(n, SMALL, seed, FIRST));
    }
    return 0;
  }

  private void line(String what, ForecastInput in) throws InterruptedException {
    measure(in, new Times(), new Times());
    Times whole = new Times();
    Times least = new Times();
    measure(in, whole, least);
    double completions = (double) in.rooms().size() * CoupledSuite.ITEMS * in.trials();
    double each = whole.quantile(0.5) / completions;
    double draws = least.quantile(0.5) / ((double) FLOOR_ITEMS * FLOOR_TRIALS);
    out.printf(
        Locale.ROOT,
        "%-24s %5d trials  %s  %.0f ns  %.1f of %.0f ns, %d bytes a trial%n",
        what,
        in.trials(),
        whole.line(),
        each,
        each / draws,
        draws,
        allocated(in));
    out.flush();
  }

  private void measure(ForecastInput in, Times whole, Times least) throws InterruptedException {
    long end = System.nanoTime() + (long) (seconds * 1e9);
    do {
      long from = System.nanoTime();
      Together.run(in, threads);
      long then = System.nanoTime();
      draw();
      whole.add(then - from);
      least.add(System.nanoTime() - then);
    } while (System.nanoTime() < end && whole.count() < RUNS_AT_MOST);
  }

  private void draw() {
    for (int trial = 0; trial < FLOOR_TRIALS; trial++) {
      for (int i = 0; i < FLOOR_ITEMS; i++) {
        sink[i] = floor[i].duration(trial);
      }
    }
  }

  /** What a trial allocates once a run is prepared and has done some. */
  private static long allocated(ForecastInput in) {
    ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    Run run = new Run(in);
    int half = in.trials() / 2;
    run.advance(half);
    long before = thread.getThreadAllocatedBytes(Thread.currentThread().getId());
    run.advance(in.trials());
    long after = thread.getThreadAllocatedBytes(Thread.currentThread().getId());
    return (after - before) / (in.trials() - half);
  }
}
