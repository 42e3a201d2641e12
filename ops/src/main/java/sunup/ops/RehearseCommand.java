package sunup.ops;

import io.vertx.core.Vertx;
import java.io.PrintWriter;
import java.net.ConnectException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sunup.board.CasePlan;
import sunup.board.MorningPlan;
import sunup.ops.rehearsal.Player;
import sunup.ops.rehearsal.Script;
import sunup.ops.rehearsal.StartTimes;

/** Plays the simulated hospital against a running board. */
@Command(
    name = "rehearse",
    mixinStandardHelpOptions = true,
    description = {
      "Plays a simulated hospital's people against a running board, through its sockets.",
      "The board must show the same case list: the demo's, or the one that is given here."
    })
final class RehearseCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--url",
      description = "The board (${DEFAULT-VALUE}).",
      defaultValue = "http://127.0.0.1:" + RunCommand.DEFAULT_PORT + "/")
  private URI url;

  @Option(
      names = "--seed",
      description = "The same seed plays the same morning (${DEFAULT-VALUE}).",
      defaultValue = "" + RunCommand.DEFAULT_SEED)
  private long seed;

  @Option(
      names = "--speed",
      description =
          "Morning seconds per real second, 1 to 60; without it the board's own clock leads.")
  private Double speed;

  @Option(names = "--site", description = "A site's file instead of the demo's.")
  private Path site;

  @Option(names = "--cases", description = "A case list, CSV, instead of the demo's.")
  private Path cases;

  @Option(names = "--story", description = "What is special about the morning, JSON.")
  private Path story;

  @Option(
      names = "--print",
      description = "Only prints what would truly happen: when each room starts, and why then.")
  private boolean print;

  @Option(
      names = "--causes",
      description = {
        "Only plays the morning with all causes of late first starts, without a board, and prints",
        "when the board's rules and forecast show each, beside the time to act by."
      })
  private boolean causes;

  @Override
  public Integer call() throws Exception {
    if (causes) {
      return CauseTable.print(Causes.own(), seed, out());
    }
    if (speed != null && !(speed >= 1 && speed <= 60)) {
      throw Wrong.input("--speed must be 1 to 60.");
    }
    if ((site == null) != (cases == null)) {
      throw Wrong.input("--site and --cases go together.");
    }
    Path once = Files.createTempDirectory("sunup-rehearse-");
    try {
      Demo demo = site == null ? Demo.in(new DemoFolder(once)) : Demo.read(site, cases, story);
      return print ? print(demo) : play(demo);
    } finally {
      DemoFolder.remove(once);
    }
  }

  private int play(Demo demo) throws Exception {
    if (!"http".equals(url.getScheme()) || url.getHost() == null || url.getPort() < 0) {
      throw Wrong.input("--url must be like http://127.0.0.1:7450/, not " + url);
    }
    Vertx vertx = Vertx.vertx();
    try {
      Player player =
          new Player(
              vertx,
              url.getHost(),
              url.getPort(),
              morning -> {
                try {
                  return demo.script(morning.date(), seed);
                } catch (Wrong e) {
                  throw new IllegalArgumentException(e.getMessage(), e);
                }
              },
              speed == null ? 0 : speed,
              ScaledClock.RealTime.MACHINE::monotonicMs);
      Player.Tally tally = player.start().toCompletionStage().toCompletableFuture().get();
      out().printf("%d reports told, %d refused%n", tally.told(), tally.refusals());
      tally.refused().forEach((code, n) -> out().printf("  %s: %d%n", code, n));
      out().flush();
      return 0;
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IllegalArgumentException wrong) {
        throw Wrong.input(wrong.getMessage());
      }
      if (e.getCause() instanceof ConnectException nobody) {
        throw Wrong.failed(
            nobody.getMessage()
                + ". Start one with ops/run --no-rehearsal, or name it with --url.");
      }
      throw e;
    } finally {
      vertx.close().toCompletionStage().toCompletableFuture().get();
    }
  }

  private int print(Demo demo) throws Wrong {
    LocalDate date = LocalDate.now(demo.site().settings().zoneId());
    MorningPlan plan = demo.plan(date);
    Script script = demo.script(date, seed);
    ZoneId zone = plan.settings().zoneId();
    out().printf("seed %d: %d reports%n", seed, script.reports().size());
    for (StartTimes.Start s : StartTimes.of(script, plan)) {
      CasePlan c = s.plan();
      out()
          .printf(
              Locale.ROOT,
              "room %-3s booked %s  starts %s  %+4d min  after %-22s  reports %s%n",
              c.room(),
              time(c.bookedAt(), zone),
              s.at() == null ? "never" : time(s.at(), zone),
              s.lateMinutes(),
              s.lastBefore(),
              script.styles().get(c.room()).name().toLowerCase(Locale.ROOT).replace('_', ' '));
    }
    out().flush();
    return 0;
  }

  private static String time(long at, ZoneId zone) {
    return DateTimeFormatter.ofPattern("HH:mm").format(Instant.ofEpochMilli(at).atZone(zone));
  }

  private PrintWriter out() {
    return spec.commandLine().getOut();
  }
}
