package sunup.ops;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sunup.board.CasePlan;
import sunup.board.MorningPlan;
import sunup.board.Recorded;
import sunup.codec.BadJson;
import sunup.journal.Append;
import sunup.journal.Appended;
import sunup.journal.Bytes;
import sunup.journal.EventCodec;
import sunup.journal.Head;
import sunup.journal.Journal;
import sunup.journal.PrivateValue;
import sunup.journal.Receipt;
import sunup.journal.SqliteJournal;
import sunup.journal.TakenOver;
import sunup.ops.madeup.MadeMornings;
import sunup.ops.madeup.Scenario;

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
  private static final long MINUTE = 60_000;
  private static final long ANSWER_SECONDS = 60;

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
      List<String> wrong =
          read.mistakes(
              plan.cases().stream()
                  .map(CasePlan::service)
                  .filter(s -> s != null)
                  .distinct()
                  .toList(),
              plan.rooms().stream().map(Object::toString).toList(),
              plan.places().stream().map(p -> p.id().value()).toList());
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
    SecureRandom random = new SecureRandom();
    EventCodec codec =
        new EventCodec(
            count -> {
              byte[] bytes = new byte[count];
              random.nextBytes(bytes);
              return bytes;
            });
    MadeMornings mornings = new MadeMornings(scenario);
    int made = 0;
    try (Journal journal = SqliteJournal.open(folder)) {
      LocalDate date = scenario.from();
      for (; !date.isAfter(scenario.to()); date = date.plusDays(1)) {
        DayOfWeek day = date.getDayOfWeek();
        if (day == DayOfWeek.SATURDAY || day == DayOfWeek.SUNDAY) {
          continue;
        }
        MorningPlan plan = demo.plan(date);
        write(journal, codec, plan, mornings.play(plan));
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

  private static void write(
      Journal journal, EventCodec codec, MorningPlan plan, List<MadeMornings.Given> given)
      throws InterruptedException, Wrong {
    CompletableFuture<TakenOver> taken = new CompletableFuture<>();
    journal.takeOver(plan.id(), null, taken::complete);
    if (!(known(taken) instanceof TakenOver.Won won)) {
      throw Wrong.failed("The journal does not take " + plan.id() + ".");
    }
    Head head = won.head();
    List<CompletableFuture<Appended>> told = new ArrayList<>();
    for (MadeMornings.Given one : given) {
      Head after = head;
      List<Bytes> events = new ArrayList<>();
      List<PrivateValue> privates = new ArrayList<>();
      for (Recorded recorded : one.events()) {
        long eraseAfter = recorded.recordedAt() + 24 * 60 * MINUTE;
        EventCodec.Encoded encoded = codec.encode(recorded, eraseAfter);
        events.add(encoded.bytes());
        privates.addAll(encoded.privates());
        after = after.after(encoded.bytes());
      }
      Bytes payload = Bytes.of(one.id().value().getBytes(StandardCharsets.UTF_8));
      Receipt receipt = new Receipt(one.id(), payload, head.seq(), after.seq(), null);
      CompletableFuture<Appended> done = new CompletableFuture<>();
      told.add(done);
      journal.append(
          new Append(plan.id(), head.epoch(), head.seq(), after.chain(), events, receipt, privates),
          done::complete);
      head = after;
    }
    for (CompletableFuture<Appended> done : told) {
      if (!(known(done) instanceof Appended.Durable)) {
        throw Wrong.failed("The journal did not keep " + plan.id() + ". Look at the disk.");
      }
    }
  }

  private static <T> T known(CompletableFuture<T> answer) throws InterruptedException, Wrong {
    try {
      return answer.get(ANSWER_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException | TimeoutException e) {
      throw Wrong.failed("The journal does not answer. Look at the disk.");
    }
  }
}
