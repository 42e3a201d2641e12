package sunup.ops.bench;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sunup.archive.DuckFacts;
import sunup.archive.FactFigures;
import sunup.archive.FactStore.Source;
import sunup.archive.Filter;
import sunup.review.CausesCompared;
import sunup.review.Comparison;
import sunup.review.Split;
import sunup.review.charts.MinutesByCause.Grouping;

/**
 * What the review's questions take over many first cases: each in a store that was opened for it
 * alone, with three filters and without. Files are read from the machine's cache of them, unless
 * they are dropped from it before each.
 */
@Command(
    name = "review",
    mixinStandardHelpOptions = true,
    description = "The review's questions over many first cases, each on a store just opened.")
final class ReviewBench implements Callable<Integer> {
  private static final int DAYS_A_YEAR = 250;
  private static final LocalDate FIRST = LocalDate.of(2016, 1, 4);

  @Spec private CommandSpec spec;

  @Option(
      names = "--rooms",
      description = "Rooms, 40 a suite (${DEFAULT-VALUE}).",
      defaultValue = "2000")
  private int rooms;

  @Option(names = "--years", description = "Years (${DEFAULT-VALUE}).", defaultValue = "10")
  private int years;

  @Option(
      names = "--data",
      required = true,
      description = "Folder for the archive; it is filled once and used again.")
  private Path folder;

  @Option(
      names = "--before",
      description =
          "What a shell runs before each question, beside the clock: for example what drops the"
              + " archive from the machine's cache of files.")
  private String before;

  @Override
  public Integer call() throws Exception {
    Files.createDirectories(folder);
    PrintWriter out = spec.commandLine().getOut();
    fill(out);
    Filter three =
        Filter.ALL
            .between(FIRST.plusDays(years * 73L), FIRST.plusDays(years * 292L))
            .ofServices(List.of("eyes", "hearts"))
            .on(List.of(DayOfWeek.MONDAY, DayOfWeek.FRIDAY));
    out.printf(
        "%-34s %12s %12s %12s%n",
        "ms on a store just opened", "three filters", "one suite", "no filter");
    for (Map.Entry<String, BiFunction<FactFigures, Filter, Object>> e : questions().entrySet()) {
      double some = took(e.getValue(), three);
      double one = took(e.getValue(), Filter.ALL.inSuite("suite0"));
      double all = took(e.getValue(), Filter.ALL);
      out.printf(Locale.ROOT, "%-34s %12.0f %12.0f %12.0f%n", e.getKey(), some, one, all);
      out.flush();
    }
    return 0;
  }

  private void fill(PrintWriter out) throws Exception {
    long rows = (long) rooms * years * DAYS_A_YEAR;
    try (DuckFacts store = DuckFacts.open(folder)) {
      if (store.figures().choices(Filter.ALL.inSuite("suite0")).cases() == 0) {
        long from = System.nanoTime();
        store.append(Source.HISTORY, new ReviewRowsMade(rooms, years * DAYS_A_YEAR));
        double seconds = (System.nanoTime() - from) / 1e9;
        out.printf(
            Locale.ROOT,
            "%d rows written in %.0f s (%.0f a second)%n",
            rows,
            seconds,
            rows / seconds);
      }
    }
    out.printf(Locale.ROOT, "%.0f MB on disk%n", Files.size(folder.resolve(DuckFacts.FILE)) / 1e6);
    out.flush();
  }

  private Map<String, BiFunction<FactFigures, Filter, Object>> questions() {
    Map<String, BiFunction<FactFigures, Filter, Object>> all = new LinkedHashMap<>();
    all.put("measures", FactFigures::measures);
    all.put("measures by weekday", (f, x) -> f.measures(x, Split.WEEKDAY));
    all.put("measures by service", (f, x) -> f.measures(x, Split.SERVICE));
    all.put("days (both charts)", (f, x) -> List.of(f.days(x), f.days(x, null)));
    all.put("left out of the share", (f, x) -> f.unjudged(x, null));
    all.put("minutes by section", (f, x) -> f.causes(x, Grouping.SECTION));
    all.put("minutes by item", (f, x) -> f.causes(x, Grouping.ITEM));
    all.put("minutes by reported reason", (f, x) -> f.causes(x, Grouping.REPORTED));
    all.put("computed beside reported", FactFigures::sideBySide);
    all.put("rooms by weekday", FactFigures::roomByWeekday);
    all.put("distribution", FactFigures::lateness);
    LocalDate at = FIRST.plusDays(years * 182L);
    all.put(
        "compare before and after",
        (f, x) -> f.sums(from(x, at), before(x, at)).compare("from", "before"));
    for (Grouping by : List.of(Grouping.SECTION, Grouping.ITEM, Grouping.REPORTED)) {
      all.put(
          "causes of two periods, " + by.name().toLowerCase(Locale.ROOT),
          (f, x) ->
              CausesCompared.of(
                  "from", f.causeSums(from(x, at), by), "before", f.causeSums(before(x, at), by)));
    }
    all.put("compare services", (f, x) -> Comparison.eachOfSums(f.sums(x, Split.SERVICE)));
    all.put("compare rooms", (f, x) -> Comparison.eachOfSums(f.sums(x, Split.ROOM)));
    all.put("board on trial", (f, x) -> f.trial(x, 20, 1));
    all.put("board on trial by room", (f, x) -> f.trial(x, 20, Split.ROOM));
    return all;
  }

  private static Filter from(Filter filter, LocalDate at) {
    return filter.between(at, filter.to());
  }

  private static Filter before(Filter filter, LocalDate at) {
    return filter.between(filter.from(), at.minusDays(1));
  }

  private double took(BiFunction<FactFigures, Filter, Object> question, Filter filter)
      throws Exception {
    if (before != null
        && new ProcessBuilder("sh", "-c", before).inheritIO().start().waitFor() != 0) {
      throw new IllegalStateException("what was to run before each question failed: " + before);
    }
    try (DuckFacts store = DuckFacts.open(folder)) {
      long from = System.nanoTime();
      Object unused = question.apply(store.figures(), filter);
      return (System.nanoTime() - from) / 1e6;
    }
  }
}
