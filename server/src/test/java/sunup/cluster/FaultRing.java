package sunup.cluster;

import io.vertx.core.Vertx;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;

/**
 * Real faults: nodes, proxy and database as processes in networks that are cut, under steady load;
 * at the end the clients' own logs are laid beside the journal. The program of {@code ops/faults
 * processes}; {@code --small} is one owner killed and one cut off. Runs in {@link Network#APART}.
 */
public final class FaultRing {
  private static final int WRITERS = 4;
  private static final long WHOLE_LIMIT_S = 90;
  private static final long SETTLE_MS = 1_500;

  /** One that was done. */
  private record Done(Fault fault, long at, long until, long backMs, long silentMs) {}

  private final long seed;
  private final Random random;
  private final Path folder;
  private final Vertx vertx;
  private final FaultyCluster cluster;
  private final List<Client> writers = new ArrayList<>();
  private final List<Client> screens = new ArrayList<>();
  private final List<Done> done = new ArrayList<>();
  private final LiveWatch live;
  private final FaultFigures figures;

  private FaultRing(long seed, List<Fault> kinds, FaultFigures figures) throws Exception {
    this.seed = seed;
    this.figures = figures;
    this.random = new Random(seed);
    this.folder = Files.createTempDirectory("sunup-faults-");
    System.out.println("seed " + seed + "; logs in " + folder);
    Network.begin();
    this.vertx = Vertx.vertx();
    this.cluster = new FaultyCluster(folder, vertx);
    for (int at = 0; at < WRITERS; at++) {
      writers.add(new Client(vertx, "desk-" + at, "desk", List.of(cluster.front())).begin());
    }
    screens.addAll(writers);
    for (String page : List.of("wall", "holding", "desk")) {
      screens.add(new Client(vertx, page + "-front", page, List.of(cluster.front())).watch());
    }
    Set<Client> tied = new HashSet<>();
    for (int place = 1; place <= FaultyCluster.NODES && !rolls(kinds); place++) {
      // A screen that stands beside its node: cut off with it, and must say so.
      List<String> its = List.of(cluster.beside(place));
      tied.add(new Client(vertx, "wall-at-node-" + place, "wall", its).watch());
    }
    screens.addAll(tied);
    this.live = new LiveWatch(screens, writers, tied);
  }

  /**
   * What is started anew takes the screens with it that can go nowhere else: then there are none.
   */
  private static boolean rolls(List<Fault> kinds) {
    return kinds.equals(List.of(Fault.ROLL));
  }

  /**
   * Runs it and ends the process: 0 if all is well, 1 if not, 2 if it can't be run here.
   *
   * @param args {@code --seed S}, {@code --minutes M}, {@code --faults a,b}, {@code --figures FILE}
   *     (is added to), {@code --several} (one node alone is left out), {@code --small}
   */
  public static void main(String[] args) {
    int code = 2;
    try {
      List<String> given = List.of(args);
      long seed = Long.parseLong(value(given, "--seed", "1"));
      double minutes = Double.parseDouble(value(given, "--minutes", "8"));
      boolean small = given.contains("--small");
      List<Fault> kinds = kinds(value(given, "--faults", small ? "kill-owner,cut-owner" : "all"));
      String file = value(given, "--figures", null);
      FaultFigures figures = new FaultFigures(file == null ? null : Path.of(file));
      boolean alone = !small && !given.contains("--several");
      code = run(seed, minutes, small, alone, kinds, figures) ? 0 : 1;
    } catch (IllegalArgumentException e) {
      System.err.println(e.getMessage());
    } catch (Throwable e) {
      code = 1;
      e.printStackTrace();
    }
    System.out.flush();
    System.exit(code);
  }

  private static String value(List<String> args, String name, String otherwise) {
    int at = args.indexOf(name);
    return at >= 0 && at + 1 < args.size() ? args.get(at + 1) : otherwise;
  }

  private static List<Fault> kinds(String names) {
    if (names.equals("all")) {
      return Stream.of(Fault.values()).filter(f -> f != Fault.ROLL).toList();
    }
    List<Fault> kinds = new ArrayList<>();
    for (String name : names.split(",", -1)) {
      kinds.add(
          Stream.of(Fault.values())
              .filter(fault -> fault.words().equals(name))
              .findFirst()
              .orElseThrow(
                  () ->
                      new IllegalArgumentException("No fault " + name + "; there are " + words())));
    }
    return kinds;
  }

  private static List<String> words() {
    return Arrays.stream(Fault.values()).map(Fault::words).toList();
  }

  private static boolean run(
      long seed,
      double minutes,
      boolean small,
      boolean alone,
      List<Fault> kinds,
      FaultFigures figures)
      throws Exception {
    long end = System.nanoTime() + (long) (minutes * TimeUnit.MINUTES.toNanos(1));
    boolean aloneWell = !alone || OneNodeFaults.run(Files.createTempDirectory("sunup-one-"));
    FaultRing ring = new FaultRing(seed, kinds, figures);
    do {
      List<Fault> round = new ArrayList<>(kinds);
      Collections.shuffle(round, ring.random);
      for (Fault fault : round) {
        if (small || System.nanoTime() < end) {
          ring.cause(fault);
        }
      }
    } while (!small && System.nanoTime() < end);
    return ring.judge(small) && aloneWell;
  }

  private void cause(Fault fault) throws Exception {
    awaitWhole();
    live.oldestLive();
    live.longestSilence();
    int owner = cluster.owner().orElseThrow();
    int place = fault.owner() ? owner : 1 + (owner + random.nextInt(2)) % FaultyCluster.NODES;
    long at = System.nanoTime();
    fault.begin(cluster, place, random);
    park(fault.holdMs() - ms(System.nanoTime() - at));
    fault.end(cluster, place);
    long ended = System.nanoTime();
    awaitWhole();
    long until = System.nanoTime();
    long back = backMs(at, until);
    long silent = live.longestSilence();
    done.add(new Done(fault, at, until, back, silent));
    figures.fault(fault, back);
    System.out.printf(
        "%s %-18s node %d: longest wait for an answer %5d ms, whole %5d ms after its end,"
            + " oldest board shown as live %5d ms, longest silence of a screen behind the proxy"
            + " %5d ms%n",
        LocalTime.now(ZoneOffset.UTC).truncatedTo(ChronoUnit.SECONDS),
        fault.words(),
        place,
        back,
        ms(until - ended),
        live.oldestLive(),
        silent);
  }

  /** The longest that a writer had to wait for an answer since the fault began. */
  private long backMs(long at, long until) {
    long longest = 0;
    for (Client writer : writers) {
      for (Client.Written one : writer.written(0)) {
        if (one.answeredAt() >= at && one.begunAt() <= until) {
          longest = Math.max(longest, one.answeredAt() - Math.max(at, one.begunAt()));
        }
      }
    }
    return ms(longest);
  }

  /** Until all nodes are there, all write, and all screens are live. */
  private void awaitWhole() throws Exception {
    int[] before = writers.stream().mapToInt(Client::count).toArray();
    long limit = System.nanoTime() + TimeUnit.SECONDS.toNanos(WHOLE_LIMIT_S);
    while (!(written(before) && liveScreens() && cluster.whole())) {
      if (System.nanoTime() > limit) {
        throw new AssertionError(
            "not whole again within %d s: owners %s, live screens %s, see %s"
                .formatted(WHOLE_LIMIT_S, cluster.owner(), lives(), folder));
      }
      park(50);
    }
  }

  private boolean written(int[] before) {
    for (int at = 0; at < before.length; at++) {
      if (writers.get(at).count() < before[at] + 2) {
        return false;
      }
    }
    return true;
  }

  private boolean liveScreens() {
    return lives().size() == screens.size();
  }

  private List<String> lives() {
    long now = System.nanoTime();
    return screens.stream()
        .filter(s -> ms(now - s.screen().beatAt()) < SETTLE_MS && !s.screen().readOnly())
        .map(Client::name)
        .toList();
  }

  /** Lays logs, journal and screens beside each other; true if all is well. */
  private boolean judge(boolean small) throws Exception {
    awaitWhole();
    List<Client.Written> all = new ArrayList<>();
    for (Client writer : writers) {
      writer.end();
      all.addAll(writer.written(0));
    }
    long last = all.stream().mapToLong(Client.Written::upTo).max().orElseThrow();
    Nodes.until(() -> screens.stream().allMatch(s -> s.screen().upTo() >= last), "all screens");
    live.end();
    Kept.Found found = Kept.find(cluster.database());
    List<Client.Written> lost = all.stream().filter(w -> found.times(w.id()) == 0).toList();
    List<Client.Written> doubled = all.stream().filter(w -> found.times(w.id()) > 1).toList();
    figures.run(seed, done.size(), all.size(), lost.size(), doubled.size(), live.oldAsLive());
    boolean inTime = figures.print();
    List<String> wrong = new ArrayList<>(found.problems());
    if (!lost.isEmpty() || !doubled.isEmpty()) {
      wrong.add("lost " + during(lost) + ", doubled " + during(doubled));
    }
    for (Client screen : screens) {
      wrong.addAll(found.compare(screen.name(), screen.page(), screen.screen().parts()));
    }
    if (done.stream().anyMatch(d -> d.fault() == Fault.ROLL && d.silentMs() > LiveWatch.STALE_MS)) {
      wrong.add("a screen was stale while the nodes were started anew in order");
    }
    if (live.oldAsLive() > 0) {
      wrong.add("an old board was shown as live " + live.oldAsLive() + " times");
    }
    System.out.printf(
        "%nseed %d: %d faults, %d commands acknowledged, lost %d, doubled %d; an old board as live"
            + " %d times; %d screens equal the replay: %s; delays by %s; this process stood still"
            + " %d times%n",
        seed,
        done.size(),
        all.size(),
        lost.size(),
        doubled.size(),
        live.oldAsLive(),
        screens.size(),
        wrong.isEmpty() ? "yes" : "see below",
        cluster.network().delayedBy(),
        live.stalls());
    wrong.forEach(System.out::println);
    if (wrong.isEmpty() && inTime) {
      Network.run("rm", "-r", folder.toString());
    }
    if (!inTime) {
      System.out.println("an aim was missed");
    }
    return wrong.isEmpty() && (small || inTime);
  }

  /** Each with the faults at whose time it was under way. */
  private List<String> during(List<Client.Written> which) {
    return which.stream()
        .map(
            w ->
                w
                    + " at "
                    + done.stream()
                        .filter(d -> w.answeredAt() >= d.at() && w.begunAt() <= d.until())
                        .map(d -> d.fault().words())
                        .toList())
        .toList();
  }

  private static void park(long ms) {
    long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(ms);
    while (System.nanoTime() < until) {
      LockSupport.parkNanos(until - System.nanoTime());
    }
  }

  private static long ms(long ns) {
    return ns / 1_000_000;
  }
}
