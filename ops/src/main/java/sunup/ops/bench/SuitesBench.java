package sunup.ops.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sunup.journal.PostgresAddress;

/**
 * Many suites on some nodes of this machine, as a group of hospitals would have them: what they
 * cost at rest and under touches, how they spread, and how long a dead node's suites stand still.
 */
@Command(
    name = "suites",
    mixinStandardHelpOptions = true,
    description = "Many suites on several nodes of this machine, which it starts and ends.",
    footer = {
      "",
      "ops/cluster database starts a PostgreSQL for it and prints the options; ops/cluster end",
      "ends that. Without a database there is one node on a file."
    })
final class SuitesBench implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--suites",
      split = ",",
      description = "How many, one run for each (${DEFAULT-VALUE}).",
      defaultValue = "50,100")
  private List<Integer> counts;

  @Option(names = "--rooms", description = "Rooms a suite.", defaultValue = "10")
  private int rooms;

  @Option(
      names = "--nodes",
      description = "Nodes, with a database (${DEFAULT-VALUE}).",
      defaultValue = "3")
  private int nodeCount;

  @Option(
      names = "--seconds",
      description = "How long it rests and how long it is touched (${DEFAULT-VALUE}).",
      defaultValue = "30")
  private int seconds;

  @Option(
      names = "--rate",
      description = "Touches a second over all suites (${DEFAULT-VALUE}).",
      defaultValue = "20")
  private int rate;

  @Option(names = "--memory", description = "A node's -Xmx.", defaultValue = "2g")
  private String memory;

  @Option(names = "--database", description = "Address of an empty PostgreSQL.")
  private String database;

  @Option(names = "--database-user", description = "Its user.")
  private String user;

  @Option(names = "--database-password-file", description = "A file with the password.")
  private Path password;

  private PrintWriter out;

  @Override
  public Integer call() throws Exception {
    out = spec.commandLine().getOut();
    out.println(BenchCommand.machine());
    for (int suites : counts) {
      Path folder = Files.createTempDirectory("sunup-suites-");
      try {
        measure(folder, suites);
      } finally {
        remove(folder);
      }
    }
    return 0;
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(one);
      }
    }
  }

  private void say(String format, Object... values) {
    out.printf(Locale.ROOT, format + "%n", values);
    out.flush();
  }

  private void measure(Path folder, int count) throws Exception {
    PostgresAddress address =
        database == null ? null : new PostgresAddress(database, user, password);
    Path sites = folder.resolve("sites");
    BenchSite.write(sites, count, rooms, BenchSite.zone());
    List<BenchNode> nodes = new ArrayList<>();
    try {
      begin(folder, sites, address, nodes);
      double empty = liveMiB(nodes);
      try (BenchGroup group = new BenchGroup(nodes)) {
        long from = System.nanoTime();
        group.begin(count, BenchSite.cases(rooms));
        say(
            "%d suites of %d rooms, %d node(s): lists taken and opened in %.1f s",
            count, rooms, nodes.size(), seconds(from));
        double open = liveMiB(nodes);
        say(
            "memory: %.0f MiB live before the lists, %.0f after, %.2f MiB a suite over all nodes;"
                + " resident %s MiB",
            empty, open, (open - empty) / count, each(nodes));
        rest(nodes, count);
        touched(nodes, group);
        spread(nodes, count);
        if (nodes.size() > 1) {
          killed(nodes, group);
        }
      }
    } finally {
      for (BenchNode node : nodes) {
        node.end();
      }
    }
  }

  private void begin(Path folder, Path sites, PostgresAddress address, List<BenchNode> nodes)
      throws Exception {
    List<String> members = address == null ? List.of() : BenchNode.addresses(nodeCount);
    for (int i = 0; i < Math.max(1, members.size()); i++) {
      long from = System.nanoTime();
      nodes.add(BenchNode.start(folder, sites, address, members, i, memory));
      nodes.get(i).awaitReady();
      say("node %d ready after %.1f s", i + 1, seconds(from));
    }
  }

  private static double seconds(long from) {
    return (System.nanoTime() - from) / 1e9;
  }

  private static double liveMiB(List<BenchNode> nodes) throws Exception {
    double sum = 0;
    for (BenchNode node : nodes) {
      sum += node.liveMiB();
    }
    return sum;
  }

  private static String each(List<BenchNode> nodes) throws Exception {
    List<String> all = new ArrayList<>();
    for (BenchNode node : nodes) {
      all.add(Long.toString(Math.round(node.residentMiB())));
    }
    return String.join(" + ", all);
  }

  private static double processor(List<BenchNode> nodes) {
    return nodes.stream().mapToDouble(BenchNode::processorSeconds).sum();
  }

  /** Nobody touches anything: forecasts go on by the clock. */
  private void rest(List<BenchNode> nodes, int count) throws Exception {
    double before = processor(nodes);
    long from = System.nanoTime();
    Pacing.rest(seconds, TimeUnit.SECONDS);
    double took = seconds(from);
    double used = processor(nodes) - before;
    say(
        "at rest: %.2f processors, %.1f ms of one a second and suite",
        used / took, 1e3 * used / took / count);
  }

  private void touched(List<BenchNode> nodes, BenchGroup group) throws Exception {
    Times answers = new Times();
    Times frames = new Times();
    double before = processor(nodes);
    int wanted = rate * seconds;
    AtomicInteger next = new AtomicInteger();
    long from = System.nanoTime();
    List<Callable<Integer>> work = new ArrayList<>();
    for (BenchGroup.Suite suite : group.suites()) {
      work.add(() -> touch(suite, group.suites().size(), from, next, wanted, answers, frames));
    }
    BenchGroup.all(work, BenchGroup.AT_ONCE);
    double took = seconds(from);
    say(
        "touched: %d in %.1f s, %.2f processors",
        answers.count(), took, (processor(nodes) - before) / took);
    say("  to answer           %s", answers.line());
    say("  to frame elsewhere  %s", frames.line());
  }

  /** A suite's share of the touches, each when its turn has come. */
  private int touch(
      BenchGroup.Suite suite,
      int suites,
      long from,
      AtomicInteger next,
      int wanted,
      Times answers,
      Times frames)
      throws Exception {
    int share = Math.max(1, wanted / suites);
    for (int i = 0; i < share; i++) {
      int turn = next.getAndIncrement();
      Pacing.until(from + TimeUnit.SECONDS.toNanos(turn) / rate);
      if (turn >= wanted || !BenchGroup.touch(suite, answers, frames)) {
        return i;
      }
    }
    return share;
  }

  private void spread(List<BenchNode> nodes, int count) throws Exception {
    List<Integer> owned = new ArrayList<>();
    for (BenchNode node : nodes) {
      owned.add(node.mornings());
    }
    double fair = (double) count / nodes.size();
    say(
        "mornings owned: %s; the most is %.0f %% over a fair share",
        owned, 100 * (Collections.max(owned) / fair - 1));
  }

  private void killed(List<BenchNode> nodes, BenchGroup group) throws Exception {
    int had = nodes.get(0).mornings();
    nodes.get(0).kill();
    long from = System.nanoTime();
    Times back = new Times();
    List<Callable<Boolean>> work = new ArrayList<>();
    for (BenchGroup.Suite suite : group.suites()) {
      work.add(
          () -> {
            BenchGroup.note(suite);
            synchronized (back) {
              back.add(System.nanoTime() - from);
            }
            return true;
          });
    }
    BenchGroup.all(work, work.size());
    say("a node with %d mornings killed; a note taken by every suite:", had);
    say("  since the kill      %s", back.line());
  }
}
