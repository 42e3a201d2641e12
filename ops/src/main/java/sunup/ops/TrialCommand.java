package sunup.ops;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sunup.codec.BadJson;
import sunup.ops.madeup.MadeMornings;
import sunup.ops.madeup.Scenario;
import sunup.ops.madeup.Weekdays;
import sunup.ops.rehearsal.Story;
import sunup.ops.trial.PlayedMorning;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.FirstCaseFact;
import sunup.review.trial.Trial;

/** The long ring of whole mornings. */
@Command(
    name = "trial",
    mixinStandardHelpOptions = true,
    description = {
      "The long ring of whole mornings: plays one invented morning of the demo's hospital after",
      "another by the board's own rules, makes the review's facts of each, and checks what must",
      "hold of any: minutes that add up exactly, forecasts that can be, the same again from the",
      "same seed. Then tells how the forecasts did. Ends with 1 if something did not hold."
    })
final class TrialCommand implements Callable<Integer> {
  /** Each such morning is played and forecast twice. */
  private static final int TWICE_EVERY = 10;

  private static final long DRAWN_BY = 1;

  @Spec private CommandSpec spec;

  @Option(names = "--seed", description = "Of all mornings (${DEFAULT-VALUE}).", defaultValue = "1")
  private long seed;

  @Option(
      names = "--seconds",
      description = "No morning is begun after so long (${DEFAULT-VALUE}).",
      defaultValue = "60")
  private long seconds;

  @Option(
      names = "--trials",
      description = "Of each forecast (${DEFAULT-VALUE}).",
      defaultValue = "256")
  private int trials;

  @Override
  public Integer call() throws IOException, Wrong {
    if (seconds < 1 || trials < 1) {
      throw Wrong.input("--seconds and --trials must be at least 1.");
    }
    PrintWriter out = spec.commandLine().getOut();
    Demo demo =
        Demo.of(
            "demo/site.json",
            DemoFolder.resource("demo/site.json"),
            DemoFolder.resource("demo/cases.csv"),
            Story.PLAIN);
    Scenario hidden = hidden();
    MadeMornings mornings = new MadeMornings(hidden);
    List<FirstCaseFact> facts = new ArrayList<>();
    List<String> broken = new ArrayList<>();
    long end = System.nanoTime() + seconds * 1_000_000_000;
    int played = 0;
    for (LocalDate date = hidden.from(); played == 0 || System.nanoTime() < end; ) {
      if (Weekdays.isOne(date)) {
        boolean twice = played % TWICE_EVERY == 0;
        PlayedMorning one = PlayedMorning.of(demo.plan(date), mornings, trials, twice);
        facts.addAll(one.facts());
        broken.addAll(one.broken());
        played++;
      }
      date = date.plusDays(1);
    }
    long late = facts.stream().filter(FirstCaseFact::late).count();
    out.printf(
        "seed %d: %d mornings, %d first cases, %d of them late; %d times something did not hold%n",
        seed, played, facts.size(), late, broken.size());
    broken.forEach(out::println);
    for (int before : BoardSaid.MOMENTS) {
      told(out, facts, before);
    }
    out.flush();
    return broken.isEmpty() ? 0 : Main.FAILED;
  }

  /** What the year's scenario hides, by this seed. */
  private Scenario hidden() throws IOException, Wrong {
    try {
      Scenario read = Scenario.read(DemoFolder.resource("year/hidden.json"));
      return new Scenario(read.from(), read.to(), seed, read.truths(), read.leaks(), null);
    } catch (BadJson e) {
      throw Wrong.failed(e.getMessage());
    }
  }

  private static void told(PrintWriter out, List<FirstCaseFact> facts, int before) {
    Trial trial = Trial.of(facts, before, DRAWN_BY);
    Trial.Score score = trial.replayed();
    if (score == null) {
      out.printf("T-%d: too few forecasts to say%n", before);
      return;
    }
    out.printf(
        Locale.ROOT,
        "T-%d: %d forecasts, Brier %.3f (always the base: %.3f), within 10 to 90 %% of the start:"
            + " %.0f %%%n",
        before,
        score.n(),
        score.brier().score(),
        score.brier().uncertainty(),
        100 * within(facts, before));
  }

  /** Share of the starts that came between the 10 and the 90 % point. */
  private static double within(List<FirstCaseFact> facts, int before) {
    int all = 0;
    int in = 0;
    for (FirstCaseFact fact : facts) {
      for (BoardSaid said : fact.said()) {
        if (said.minutesBefore() == before && said.note() != null && fact.hasStarted()) {
          all++;
          long start = fact.startedAt();
          in += start >= said.note().start10() && start <= said.note().start90() ? 1 : 0;
        }
      }
    }
    return all == 0 ? 0 : (double) in / all;
  }
}
