package sunup.cluster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * How long desks waited at each fault, and what was found at the end of each run; in a file that
 * several runs add to, if one is given: a quantile needs more faults than one run has time for.
 */
final class FaultFigures {
  private static final String FAULT = "fault";
  private static final String RUN = "run";

  private final Path file;
  private final List<String> lines = new ArrayList<>();

  /**
   * @param file may be there already; null for this run alone
   */
  FaultFigures(Path file) throws IOException {
    this.file = file;
    if (file != null && Files.exists(file)) {
      lines.addAll(Files.readAllLines(file));
    }
  }

  private void add(String line) throws IOException {
    lines.add(line);
    if (file != null) {
      Files.writeString(file, line + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }
  }

  void fault(Fault fault, long backMs) throws IOException {
    add(FAULT + " " + fault.words() + " " + backMs);
  }

  void run(long seed, int faults, int commands, int lost, int doubled, int oldAsLive)
      throws IOException {
    add("%s %d %d %d %d %d %d".formatted(RUN, seed, faults, commands, lost, doubled, oldAsLive));
  }

  /** Prints them; true if every fault kept its aim at the 95th percentile. */
  boolean print() {
    System.out.printf(
        "%n%-18s %5s %8s %8s %8s %8s%n", FAULT, "times", "p50 ms", "p95 ms", "most ms", "aim");
    boolean inTime = true;
    for (Map.Entry<Fault, List<Long>> one : times().entrySet()) {
      Fault fault = one.getKey();
      long p95 = quantile(one.getValue(), 0.95);
      inTime &= p95 <= fault.aimMs();
      System.out.printf(
          "%-18s %5d %8d %8d %8d %8d%n",
          fault.words(),
          one.getValue().size(),
          quantile(one.getValue(), 0.5),
          p95,
          quantile(one.getValue(), 1),
          fault.aimMs());
    }
    long[] sums = new long[5];
    List<String[]> runs =
        lines.stream().map(l -> l.split(" ", -1)).filter(l -> l[0].equals(RUN)).toList();
    for (String[] run : runs) {
      for (int at = 0; at < sums.length; at++) {
        sums[at] += Long.parseLong(run[2 + at]);
      }
    }
    System.out.printf(
        "%d runs: %d faults, %d commands acknowledged, lost %d, doubled %d, an old board as live %d"
            + " times%n",
        runs.size(), sums[0], sums[1], sums[2], sums[3], sums[4]);
    return inTime;
  }

  private Map<Fault, List<Long>> times() {
    Map<Fault, List<Long>> times = new EnumMap<>(Fault.class);
    for (String line : lines) {
      String[] said = line.split(" ", -1);
      if (said[0].equals(FAULT)) {
        Stream.of(Fault.values())
            .filter(fault -> fault.words().equals(said[1]))
            .forEach(
                fault ->
                    times
                        .computeIfAbsent(fault, f -> new ArrayList<>())
                        .add(Long.parseLong(said[2])));
      }
    }
    return times;
  }

  private static long quantile(List<Long> values, double q) {
    List<Long> sorted = values.stream().sorted().toList();
    return sorted.get((int) Math.ceil(q * sorted.size()) - 1);
  }
}
