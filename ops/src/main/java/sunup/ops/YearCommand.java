package sunup.ops;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sunup.board.MorningPlan;
import sunup.codec.BadJson;
import sunup.journal.Journal;
import sunup.journal.SqliteJournal;
import sunup.ops.madeup.MadeMornings;
import sunup.ops.madeup.Scenario;
import sunup.ops.madeup.Weekdays;

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

  @Parameters(paramLabel = "FOLDER", description = "The new data folder, as run takes it.")
  private Path data;

  /** The board's own in it. */
  private Path folder;

  @Override
  public Integer call() throws Wrong {
    try {
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

  private void make(Demo demo, Scenario scenario) throws IOException, InterruptedException, Wrong {
    PrintWriter out = spec.commandLine().getOut();
    MadeMornings mornings = new MadeMornings(scenario);
    int made = 0;
    try (Journal journal = SqliteJournal.open(folder)) {
      LaidMornings laid = new LaidMornings(journal);
      LocalDate date = scenario.from();
      for (; !date.isAfter(scenario.to()); date = date.plusDays(1)) {
        if (!Weekdays.isOne(date)) {
          continue;
        }
        MorningPlan plan = demo.plan(date);
        laid.lay(plan.id(), mornings.play(plan));
        made++;
        if (made % 20 == 0) {
          out.printf("%d mornings, up to %s%n", made, date);
          out.flush();
        }
      }
    }
    out.printf("%d mornings made in %s.%n", made, folder);
    out.printf(
        "Look at them: ops/run --empty --data %s, then open /review. The board makes its facts of"
            + " them in the background, and the page says how far it is.%n",
        data);
    out.flush();
  }
}
