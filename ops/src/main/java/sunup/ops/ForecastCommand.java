package sunup.ops;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.forecast.AsRun;
import sunup.forecast.BadInput;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.forecast.Forecaster;

/**
 * Forecasts a morning from a file, so that anyone can check the figures against another program.
 */
@Command(
    name = "forecast",
    mixinStandardHelpOptions = true,
    description = "Forecasts the morning in a JSON file and prints the figures as JSON.")
final class ForecastCommand implements Callable<Integer> {
  private static final String NONE_STARTED =
      "No room has started, so there are no minutes to explain: a room has started if its"
          + " \"startedAt\" is given, or the item that marks its \"startStep\" is good.";

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "A morning: the forecast's input as JSON.")
  private Path file;

  @Option(names = "--seed", description = "Another seed than the file's.")
  private Long seed;

  @Option(names = "--trials", description = "Another number of trials than the file's.")
  private Integer trials;

  @Option(names = "--table", description = "A table for reading instead of JSON.")
  private boolean table;

  @Option(
      names = "--as-run",
      description = "Instead: where the minutes of the rooms that have started went, as JSON.")
  private boolean asRun;

  @Option(
      names = "--zone",
      description = "Time zone of the table's times (${DEFAULT-VALUE}).",
      defaultValue = "UTC")
  private ZoneId zone;

  @Override
  public Integer call() throws Exception {
    if (Files.isDirectory(file)) {
      throw Wrong.input(file + " is a folder. Give a file with a morning as JSON.");
    }
    if (!Files.isReadable(file)) {
      throw Wrong.input(
          file + (Files.exists(file) ? " can't be read." : " is not there. Look at its name."));
    }
    if (asRun && table) {
      throw Wrong.input("--table is for forecasts. Leave out --table or --as-run.");
    }
    Object figures;
    try {
      ForecastInput in = asked(Json.read(Files.readAllBytes(file), ForecastInput.class));
      figures = asRun ? AsRun.of(in) : Forecaster.ofSent(in);
    } catch (BadJson | BadInput e) {
      throw Wrong.input(file + ": " + e.getMessage());
    }
    if (figures instanceof AsRun run && run.rooms().isEmpty()) {
      spec.commandLine().getErr().println(NONE_STARTED);
    }
    PrintWriter out = spec.commandLine().getOut();
    if (table) {
      print((Forecast) figures, out);
    } else {
      out.println(Json.mapper().writerWithDefaultPrettyPrinter().writeValueAsString(figures));
    }
    out.flush();
    return 0;
  }

  private ForecastInput asked(ForecastInput in) throws Wrong {
    if (trials != null && trials < 1) {
      throw Wrong.input("--trials must be 1 or more.");
    }
    return in.with(seed != null ? seed : in.seed(), trials != null ? trials : in.trials());
  }

  private void print(Forecast f, PrintWriter out) {
    out.printf(
        Locale.ROOT,
        "model %d, inputs %s, seed %d, %d trials, seen from %s%n",
        f.model(),
        f.inputs(),
        f.seed(),
        f.trials(),
        time(f.now()));
    f.warnings().forEach(w -> out.println("warning: " + w));
    out.println("room     on time    10%    50%    90%   mean late   waits for (share)");
    for (Forecast.RoomOut r : f.rooms()) {
      StringBuilder waits = new StringBuilder();
      r.holdups().stream()
          .limit(3)
          .forEach(
              h ->
                  waits.append(
                      String.format(
                          Locale.ROOT,
                          "%s %s (%.2f)  ",
                          h.kind(),
                          h.item() != null ? h.item() : h.thing() != null ? h.thing() : "",
                          h.share())));
      out.printf(
          Locale.ROOT,
          "%-8s %7.3f  %s  %s  %s   %6.1f min  %s%n",
          r.id(),
          r.onTime(),
          time(r.start10()),
          time(r.start50()),
          time(r.start90()),
          r.meanLateMs() / 60_000.0,
          waits.toString().strip());
    }
  }

  private String time(long at) {
    return DateTimeFormatter.ofPattern("HH:mm").format(Instant.ofEpochMilli(at).atZone(zone));
  }
}
