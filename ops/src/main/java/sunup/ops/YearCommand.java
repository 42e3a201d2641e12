package sunup.ops;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sunup.archive.ForecastLog;
import sunup.board.LearnedTimes;
import sunup.board.MorningPlan;
import sunup.codec.BadJson;
import sunup.journal.Journal;
import sunup.journal.SideDatabase;
import sunup.journal.SqliteJournal;
import sunup.ops.madeup.Scenario;
import sunup.ops.madeup.Taught;
import sunup.ops.madeup.WatchedMornings;
import sunup.ops.madeup.Weekdays;
import sunup.ops.madeup.Weighing;
import sunup.review.facts.ForecastNote;

/** Makes an invented year of closed mornings that hides truths, for the review to find them. */
@Command(
    name = "year",
    mixinStandardHelpOptions = true,
    description = {
      "Makes a data folder with an invented time of closed mornings that hides what a scenario"
          + " says.",
      "Start a board on it and try to find the truths from the review's pages alone. A scenario is"
          + " JSON; the one that comes along stands in year/hidden.json of the program, and"
          + " REVIEW.md explains it."
    })
final class YearCommand implements Callable<Integer> {
  /**
   * Mornings that are played side by side, so that one goes by what those before the last one
   * taught. A number of its own, so that the year is the same on every machine.
   */
  private static final int SIDE_BY_SIDE = 2;

  @Spec private CommandSpec spec;

  @Option(
      names = "--scenario",
      paramLabel = "FILE",
      description = "What is hidden; without it what comes along.")
  private Path scenarioFile;

  @Option(names = "--site", description = "The site's file; without it the demo's.")
  private Path siteFile;

  @Option(names = "--list", description = "The case list of each morning; without it the demo's.")
  private Path caseFile;

  @Option(
      names = "--trials",
      paramLabel = "N",
      defaultValue = "256",
      description = "Of each forecast that the board keeps; a real one keeps its first 256.")
  private int trials;

  @Option(
      names = "--weigh",
      description = "Make nothing; say what each truth costs, by the same dice with and without.")
  private boolean weigh;

  @Parameters(
      arity = "0..1",
      paramLabel = "FOLDER",
      description = "The new data folder, as run takes it.")
  private Path data;

  /** The board's own in it. */
  private Path folder;

  @Override
  public Integer call() throws Wrong {
    try {
      if (weigh) {
        Demo demo = demo();
        weigh(demo, scenario(demo));
        return 0;
      }
      if (data == null) {
        throw Wrong.input("Name the new data folder, or give --weigh.");
      }
      folder = data.resolve("board");
      if (Files.exists(folder.resolve(SqliteJournal.FILE))) {
        throw Wrong.input(folder + " has a journal already. Name a new folder.");
      }
      Demo demo = demo();
      Scenario scenario = scenario(demo);
      Files.createDirectories(folder);
      Files.copy(site(), folder.resolve("site.json"));
      make(demo, scenario);
      return 0;
    } catch (IOException e) {
      throw Wrong.failed(e.getMessage());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Main.FAILED;
    }
  }

  private Path site() throws IOException {
    return siteFile != null ? siteFile : asFile("demo/site.json");
  }

  private Demo demo() throws IOException, Wrong {
    return Demo.read(site(), caseFile != null ? caseFile : asFile("demo/cases.csv"), null);
  }

  /** A text of the program as a file that is gone when it ends. */
  private static Path asFile(String name) throws IOException {
    Path file = Files.createTempFile("sunup-", "-" + Path.of(name).getFileName());
    file.toFile().deleteOnExit();
    return Files.writeString(file, DemoFolder.resource(name));
  }

  private Scenario scenario(Demo demo) throws IOException, Wrong {
    String name = scenarioFile == null ? "year/hidden.json" : scenarioFile.toString();
    if (scenarioFile != null && !Files.isReadable(scenarioFile)) {
      throw Wrong.input(scenarioFile + " can't be read.");
    }
    String text =
        scenarioFile == null
            ? DemoFolder.resource(name)
            : Files.readString(scenarioFile, StandardCharsets.UTF_8);
    try {
      Scenario read = Scenario.read(text);
      LocalDate any = read.from() == null ? LocalDate.of(2026, 1, 5) : read.from();
      MorningPlan plan = demo.plan(any);
      List<String> wrong = read.mistakesWithTime(plan);
      if (!wrong.isEmpty()) {
        throw Wrong.input(name + " can't be used:\n  " + String.join("\n  ", wrong));
      }
      return read;
    } catch (BadJson e) {
      throw Wrong.input(name + ": " + e.getMessage());
    }
  }

  /** By true starts: those that a truth falls on, with nothing hidden, with it, with all. */
  private void weigh(Demo demo, Scenario scenario) throws Wrong {
    PrintWriter out = spec.commandLine().getOut();
    out.printf("%-60s %7s %26s %26s%n", "", "", "minutes late a start", "on time, in 100");
    out.printf("%-60s %7s", "truth", "starts");
    out.printf(" %6s %6s %6s %6s".repeat(2), ofAll());
    out.println();
    for (Weighing.Weight w : Weighing.of(scenario, planned(demo))) {
      out.printf("%-60.60s %7d", w.name(), w.none().starts());
      List<Weighing.Sum> sums = List.of(w.none(), w.alone(), w.others(), w.all());
      sums.forEach(s -> out.printf(Locale.ROOT, " %6.1f", s.meanLate()));
      sums.forEach(s -> out.printf(Locale.ROOT, " %6.1f", 100 * s.share()));
      out.println();
    }
    out.flush();
  }

  private static Object[] ofAll() {
    return new Object[] {"none", "alone", "others", "all", "none", "alone", "others", "all"};
  }

  private static Function<LocalDate, MorningPlan> planned(Demo demo) {
    return date -> {
      try {
        return demo.plan(date);
      } catch (Wrong e) {
        throw new IllegalStateException(e.getMessage(), e);
      }
    };
  }

  /** A morning before it is laid down. */
  private record Played(MorningPlan plan, WatchedMornings.Watched watched) {}

  /** By the way in which a running board keeps them; when this returns they are on the disk. */
  private static void keep(ForecastLog log, List<ForecastNote> notes)
      throws InterruptedException, Wrong {
    CompletableFuture<Boolean> durable = new CompletableFuture<>();
    log.keep(notes, 1, durable::complete);
    try {
      if (!durable.get(60, TimeUnit.SECONDS)) {
        throw Wrong.failed("The forecasts were not kept. Look at the disk.");
      }
    } catch (ExecutionException | TimeoutException e) {
      throw Wrong.failed("The log of forecasts does not answer. Look at the disk.");
    }
  }

  private void make(Demo demo, Scenario scenario) throws IOException, InterruptedException, Wrong {
    PrintWriter out = spec.commandLine().getOut();
    WatchedMornings mornings = new WatchedMornings(scenario, trials);
    Taught taught = new Taught();
    ExecutorService cores = Executors.newFixedThreadPool(SIDE_BY_SIDE);
    int made = 0;
    int said = 0;
    int acts = 0;
    long begun = System.nanoTime();
    try (Journal journal = SqliteJournal.open(folder);
        ForecastLog log = new ForecastLog(() -> SideDatabase.sqlite(folder, ForecastLog.PART))) {
      LaidMornings laid = new LaidMornings(journal);
      Queue<Future<Played>> ahead = new ArrayDeque<>();
      LocalDate date = scenario.from();
      while (!date.isAfter(scenario.to()) || !ahead.isEmpty()) {
        if (!date.isAfter(scenario.to()) && ahead.size() < SIDE_BY_SIDE) {
          if (Weekdays.isOne(date)) {
            MorningPlan plan = demo.plan(date);
            LearnedTimes by = taught.next();
            ahead.add(cores.submit(() -> new Played(plan, mornings.play(plan, by))));
          }
          date = date.plusDays(1);
          continue;
        }
        Played next = ahead.remove().get();
        laid.lay(next.plan.id(), next.watched.given());
        keep(log, next.watched.notes());
        taught.add(next.plan.id().date(), next.watched.events());
        made++;
        said += next.watched.notes().size();
        acts += next.watched.acts();
        if (made % 20 == 0) {
          out.printf("%d mornings, up to %s%n", made, next.plan.id().date());
          out.flush();
        }
      }
    } catch (ExecutionException e) {
      throw Wrong.failed(e.getCause().toString());
    } finally {
      cores.shutdownNow();
    }
    out.printf(
        "%d mornings made in %s in %d s; the board said %d forecasts, and the desk took %d holdups"
            + " by them.%n",
        made, folder, (System.nanoTime() - begun) / 1_000_000_000, said, acts);
    out.printf(
        "Look at them: ops/run --empty --data %s, then open /review. The board makes its facts of"
            + " them in the background, and the page says how far it is.%n",
        data);
    out.flush();
  }
}
