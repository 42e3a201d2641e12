package sunup.simulated;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.slf4j.LoggerFactory;

/**
 * Many histories of several nodes, one seed after another. {@code ops/faults histories} is {@link
 * #main}.
 */
public final class Histories {
  private static final int TOLD_EVERY = 2_000;

  private final Bug bug;
  private final Coverage coverage = new Coverage();
  private final List<Long> backMs = new ArrayList<>();
  private final long began = System.nanoTime();
  private Script failing;
  private List<String> wrong = List.of();

  Histories(Bug bug) {
    this.bug = bug;
  }

  /** One more; true if all was right. */
  boolean run(long seed) {
    Script script = Script.of(seed);
    ClusterHistory history = new ClusterHistory(script, bug, coverage, false);
    List<String> problems = quietly(history);
    backMs.add(history.backMs());
    if (!problems.isEmpty()) {
      failing = script;
      wrong = problems;
    }
    return problems.isEmpty();
  }

  /** What is wrong with a history by this script. */
  static List<String> wrong(Script script) {
    return quietly(new ClusterHistory(script, Bug.NONE, new Coverage(), false));
  }

  /** Nodes fail thousands of times here; what they say of it is not news. */
  private static List<String> quietly(ClusterHistory history) {
    Logger all = (Logger) LoggerFactory.getLogger("sunup");
    Level before = all.getLevel();
    all.setLevel(Level.OFF);
    try {
      return history.run();
    } finally {
      all.setLevel(before);
    }
  }

  int count() {
    return backMs.size();
  }

  Coverage coverage() {
    return coverage;
  }

  List<String> wrong() {
    return wrong;
  }

  /** What went wrong, in the fewest faults and commands that could be found. */
  String story() {
    if (failing == null) {
      return "";
    }
    Shrinker shrinker =
        new Shrinker(
            other -> !quietly(new ClusterHistory(other, bug, new Coverage(), false)).isEmpty());
    Script shortest = shrinker.shrink(failing);
    ClusterHistory again = new ClusterHistory(shortest, bug, new Coverage(), true);
    List<String> problems = quietly(again);
    return "seed "
        + failing.seed()
        + ", cut from "
        + failing.faults().size()
        + " faults and "
        + failing.touches().size()
        + " commands down to "
        + shortest.faults().size()
        + " and "
        + shortest.touches().size()
        + ":\n"
        + shortest
        + "\n"
        + String.join("\n", problems)
        + "\n"
        + again.story();
  }

  /** Pairs of a fault and what the morning was in, that were never drawn. */
  List<String> unseen() {
    List<String> never = new ArrayList<>();
    for (Fault.Kind kind : Fault.Kind.values()) {
      for (String phase : Coverage.PHASES_OF_MORNING) {
        String pair = kind.words() + " x " + phase;
        if (coverage.of(pair) == 0) {
          never.add(pair);
        }
      }
    }
    return never;
  }

  private static int pairs() {
    return Fault.Kind.values().length * Coverage.PHASES_OF_MORNING.size();
  }

  @Override
  public String toString() {
    long ms = (System.nanoTime() - began) / 1_000_000;
    return String.format(
        "%d histories of three nodes in %.1f s (%d a minute); commands taken again at all nodes"
            + " %d ms (median), %d ms (19 of 20), %d ms (most) after the last fault; %d of %d pairs"
            + " of fault and phase seen",
        count(),
        ms / 1e3,
        count() * 60_000L / Math.max(1, ms),
        back(50),
        back(95),
        back(100),
        pairs() - unseen().size(),
        pairs());
  }

  private long back(int percent) {
    List<Long> sorted = new ArrayList<>(backMs);
    Collections.sort(sorted);
    return sorted.isEmpty() ? 0 : sorted.get(Math.min(count() - 1, count() * percent / 100));
  }

  /**
   * Runs histories for a while.
   *
   * @param args the first seed, and for how many minutes
   */
  public static void main(String[] args) {
    long seed = Long.parseLong(args[0]);
    long end =
        System.nanoTime() + (long) (Double.parseDouble(args[1]) * TimeUnit.MINUTES.toNanos(1));
    Histories histories = new Histories(Bug.NONE);
    boolean right = true;
    for (long next = seed; right && System.nanoTime() < end; next++) {
      right = histories.run(next);
      if (histories.count() % TOLD_EVERY == 0) {
        System.out.println("  " + histories);
      }
    }
    System.out.println(histories);
    System.out.println("seen: " + histories.coverage());
    System.out.println(
        "pairs never seen: " + histories.unseen().stream().collect(Collectors.joining("; ")));
    if (!right) {
      System.out.println("WRONG: " + histories.story());
      System.exit(1);
    }
  }
}
