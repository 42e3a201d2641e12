package sunup.ops.bench;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sunup.board.Morning;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.forecast.Forecaster;
import sunup.ops.madeup.MadeUpSuite;
import sunup.outlook.Foretold;
import sunup.outlook.Judged;
import sunup.outlook.Outlook;

/** How long one forecast of a suite takes on one thread, and what stands around it. */
@Command(
    name = "forecast",
    mixinStandardHelpOptions = true,
    description = "One forecast of invented suites, on one thread.")
final class ForecastBench implements Callable<Integer> {
  private static final int FIRST = 256;
  private static final int RUNS_AT_MOST = 1_000;

  @Spec private CommandSpec spec;

  @Option(
      names = "--rooms",
      split = ",",
      description = "Sizes of suite (${DEFAULT-VALUE}).",
      defaultValue = "1,4,12,40")
  private List<Integer> rooms;

  @Option(
      names = "--trials",
      split = ",",
      description = "Trials (${DEFAULT-VALUE}).",
      defaultValue = "256,2000")
  private List<Integer> trials;

  @Option(
      names = "--seconds",
      description = "Bound for each line, after as long a warm-up (${DEFAULT-VALUE}).",
      defaultValue = "5")
  private double seconds;

  @Override
  public Integer call() throws Exception {
    PrintWriter out = spec.commandLine().getOut();
    out.println(BenchCommand.machine());
    for (int n : rooms) {
      Morning morning = MadeUpSuite.morning(n);
      for (int t : trials) {
        ForecastInput input = Outlook.input(morning, MadeUpSuite.at("07:00"), t);
        measure(() -> Forecaster.run(input));
        report(out, n + " rooms, " + t + " trials", measure(() -> Forecaster.run(input)));
      }
      around(out, n, morning);
    }
    return 0;
  }

  /** Input, standings and parts: what a frame costs beside the forecast. */
  private void around(PrintWriter out, int n, Morning morning) {
    long now = MadeUpSuite.at("07:00");
    Forecast figures = Forecaster.run(Outlook.input(morning, now, FIRST));
    Runnable all =
        () -> {
          Foretold foretold = new Foretold(figures, morning.seq(), false);
          Judged judged = Outlook.judge(Judged.NOTHING, morning, foretold, now);
          Outlook.parts(morning, foretold, judged, now);
        };
    measure(all);
    report(out, n + " rooms, standings and parts", measure(all));
  }

  private Times measure(Runnable work) {
    Times times = new Times();
    long end = System.nanoTime() + (long) (seconds * 1e9);
    do {
      long from = System.nanoTime();
      work.run();
      times.add(System.nanoTime() - from);
    } while (System.nanoTime() < end && times.count() < RUNS_AT_MOST);
    return times;
  }

  private static void report(PrintWriter out, String what, Times times) {
    out.printf(Locale.ROOT, "%-34s %s%n", what, times.line());
    out.flush();
  }
}
