package sunup.ops.bench;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Measures the board on this machine. */
@Command(
    name = "bench",
    mixinStandardHelpOptions = true,
    description = "Measures the board on this machine: figures, never a pass or fail.",
    footer = {
      "",
      "ops/bench libraries and ops/bench jmh fetch libraries that the board has not, and",
      "measure the forecast beside two of them and under JMH."
    },
    subcommands = {
      ForecastBench.class,
      FirstBench.class,
      KernelBench.class,
      ReviewBench.class,
      SuitesBench.class,
      TouchBench.class
    })
public final class BenchCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Say what to measure:");
  }

  /** What figures depend on, for the first line of a report. */
  static String machine() {
    return String.format(
        "JDK %s, %d processors",
        System.getProperty("java.version"), Runtime.getRuntime().availableProcessors());
  }
}
