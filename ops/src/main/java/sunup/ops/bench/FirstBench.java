package sunup.ops.bench;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sunup.board.SiteSettings;
import sunup.board.Step;
import sunup.forecast.ForecastInput;
import sunup.live.OutlookSight;
import sunup.live.Pace;
import sunup.live.WarmUp;
import sunup.ops.madeup.MadeUpSuite;

/** What the first forecasts of a program take, before its code is compiled. */
@Command(
    name = "first",
    mixinStandardHelpOptions = true,
    description = {
      "The first forecasts of 256 trials of a program, one after the other, of coupled rooms: as",
      "the program begins, or after the warm-up that a board does at its start."
    })
final class FirstBench implements Callable<Integer> {
  private static final int FIRST = 256;

  @Spec private CommandSpec spec;

  @Option(
      names = "--rooms",
      description = "Rooms of one component (${DEFAULT-VALUE}).",
      defaultValue = "64")
  private int rooms;

  @Option(
      names = "--threads",
      description = "Threads that share the trials (${DEFAULT-VALUE}).",
      defaultValue = "2")
  private int threads;

  @Option(
      names = "--times",
      description = "So many forecasts (${DEFAULT-VALUE}).",
      defaultValue = "5")
  private int times;

  @Option(names = "--warm", description = "After the board's warm-up.")
  private boolean warm;

  @Override
  public Integer call() throws Exception {
    PrintWriter out = spec.commandLine().getOut();
    out.println(BenchCommand.machine() + ", " + rooms + " rooms, " + threads + " threads");
    long begun = System.nanoTime();
    if (warm) {
      SiteSettings site =
          new SiteSettings("Kestrel Bay", "Bench suite", "UTC", Step.INDUCTION, 0, 0.2, true);
      WarmUp.run(
          new OutlookSight(site, 1),
          Pace.DEFAULT,
          MadeUpSuite::warming,
          MadeUpSuite.now(),
          () -> false);
      out.printf(Locale.ROOT, "warm-up    %8.1f ms%n", (System.nanoTime() - begun) / 1e6);
    }
    ForecastInput in = CoupledSuite.of(rooms, rooms, 7, FIRST);
    for (int n = 1; n <= times; n++) {
      long from = System.nanoTime();
      Together.run(in, threads);
      out.printf(Locale.ROOT, "forecast %d %8.1f ms%n", n, (System.nanoTime() - from) / 1e6);
      out.flush();
    }
    return 0;
  }
}
