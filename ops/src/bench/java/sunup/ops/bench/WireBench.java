package sunup.ops.bench;

import io.vertx.core.Vertx;
import io.vertx.core.VertxOptions;
import io.vertx.core.http.WebSocketClient;
import io.vertx.core.http.WebSocketClientOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * What frames cost: the board beside a bare Vert.x loop and two general real-time servers, a bare
 * loop on Node's {@code ws} and the MQTT broker aedes over WebSockets, one after another in one
 * run. All get the same bytes: a frame of the board with one change.
 */
@Command(
    name = "wire",
    mixinStandardHelpOptions = true,
    description = "The wire beside a bare loop and two general real-time servers.")
public final class WireBench implements java.util.concurrent.Callable<Integer> {
  private static final int PUBLISHERS = 5;

  /** Sockets of one address: the board takes 1,024. */
  private static final int SOCKETS_PER_ADDRESS = 500;

  private static final int OPENING_AT_ONCE = 50;
  private static final long WARM_MS = 2_000;
  private static final long DRAIN_MS = 1_000;
  private static final long READY_S = 40;
  private static final int COMMITS = 400;
  private static final long TICK_STEP_MS = 10;

  @Option(names = "--screens", split = ",", description = "How many (${DEFAULT-VALUE}).")
  private List<Integer> screens = List.of(500);

  @Option(names = "--rates", split = ",", description = "Changes a second (${DEFAULT-VALUE}).")
  private List<Integer> rates = List.of(5, 50);

  @Option(names = "--seconds", description = "Measured of each (${DEFAULT-VALUE}).")
  private int seconds = 5;

  @Option(names = "--servers", split = ",", description = "Which (${DEFAULT-VALUE}).")
  private List<WireServer> servers = List.of(WireServer.values());

  @Option(names = "--slow", description = "Also with a tenth of the screens reading nothing.")
  private boolean slow;

  @Option(names = "--storm", description = "Also all screens coming back at once.")
  private boolean storm;

  @Option(
      names = "--ticks",
      description = "Also with a tick a second from each of the board's screens, as pages send.")
  private boolean ticks;

  private final Vertx vertx = Vertx.vertx(new VertxOptions().setEventLoopPoolSize(2));
  private final List<WebSocketClient> clients = new ArrayList<>();
  private byte[] sample;
  private double echoMs;
  private double commitMs;

  /** Exits 0 when all was measured. */
  public static void main(String[] args) {
    CommandLine line = new CommandLine(new WireBench());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    System.exit(line.execute(args));
  }

  /** Where the library for Node was put, by its own package manager. */
  static Path nodeModules() {
    return Path.of("target/bench-wire").toAbsolutePath();
  }

  @Override
  public Integer call() throws Exception {
    Path folder = Files.createTempDirectory("sunup-wire-");
    print(
        "%d processors for servers and screens together, JDK %s; %d s each",
        Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"), seconds);
    commitMs = commits(folder);
    echoMs = echo(folder);
    print(
        "bare echo p99 %.2f ms, commit of this disk p99 %.2f ms: the aim for a touch's frame is"
            + " p99 <= %.1f ms",
        echoMs, commitMs, 50 + 1.5 * (echoMs + commitMs));
    print(
        "%-7s %7s %6s %9s %9s %8s %8s %8s %9s %8s %8s",
        "server",
        "screens",
        "rate",
        "frames/s",
        "delivered",
        "cpu %",
        "us/frame",
        "us/chg",
        "B/change",
        "p50 ms",
        "p99 ms");
    for (int count : screens) {
      for (WireServer server : servers) {
        measure(server, count, folder.resolve(server + "-" + count));
      }
    }
    vertx.close().toCompletionStage().toCompletableFuture().get(READY_S, TimeUnit.SECONDS);
    return 0;
  }

  private static void print(String form, Object... values) {
    System.out.println(String.format(Locale.ROOT, form, values));
  }

  private double commits(Path folder) throws SQLException {
    Times times = new Times();
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("commits"));
        Statement s = c.createStatement()) {
      s.execute("PRAGMA journal_mode=WAL");
      s.execute("PRAGMA synchronous=FULL");
      s.execute("CREATE TABLE event (n INTEGER PRIMARY KEY, bytes BLOB)");
      try (PreparedStatement insert = c.prepareStatement("INSERT INTO event(bytes) VALUES (?)")) {
        for (int at = 0; at < COMMITS; at++) {
          insert.setBytes(1, new byte[300]);
          long from = System.nanoTime();
          insert.executeUpdate();
          times.add(System.nanoTime() - from);
        }
      }
    }
    return times.quantile(0.99) / 1e6;
  }

  private double echo(Path folder) throws Exception {
    sample =
        "{\"at\":\"at=0000000000000000000\"}".getBytes(java.nio.charset.StandardCharsets.UTF_8);
    WireScreen.Counts counts = new WireScreen.Counts();
    try (ServerProcess process = WireServer.VERTX.start(folder.resolve("echo"))) {
      Crowd crowd = new Crowd(WireServer.VERTX, process.port(), counts);
      crowd.open(1);
      crowd.publish(200, 3_000);
      counts.clear();
      crowd.publish(200, 3_000);
      crowd.close();
    } finally {
      sample = null;
    }
    return counts.times.quantileMs(0.99);
  }

  private void measure(WireServer server, int count, Path folder) throws Exception {
    WireScreen.Counts counts = new WireScreen.Counts();
    try (ServerProcess process = server.start(folder)) {
      Crowd crowd = new Crowd(server, process.port(), counts);
      crowd.open(20);
      crowd.publish(20, WARM_MS);
      if (sample == null) {
        sample = counts.sample;
        print("a frame with one change has %d bytes", sample.length);
      }
      long before = resident(server, process);
      crowd.open(count - 20);
      long idle = resident(server, process);
      for (int rate : rates) {
        crowd.publish(rate, WARM_MS);
        park(DRAIN_MS);
        cell(server, process, crowd, rate, "");
      }
      if (ticks && server == WireServer.BOARD) {
        ticking(server, process, crowd);
      }
      print(
          "%-7s %7d screens: %.1f kB of memory each, idle; %.1f after frames (resident %d MB)",
          name(server),
          count,
          (double) (idle - before) / (count - 20),
          (double) (resident(server, process) - before) / (count - 20),
          process.residentKb() / 1024);
      if (slow) {
        slow(server, process, crowd);
      }
      if (storm) {
        storm(server, process, crowd);
      }
      crowd.close();
    }
  }

  private static void park(long ms) {
    LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(ms));
  }

  private static String name(WireServer server) {
    return server.name().toLowerCase(Locale.ROOT);
  }

  private void cell(WireServer server, ServerProcess process, Crowd crowd, int rate, String note)
      throws Exception {
    WireScreen.Counts counts = crowd.counts;
    counts.clear();
    Map<String, Double> before = process.processorSeconds();
    long from = System.nanoTime();
    int sent = crowd.publish(rate, seconds * 1_000L);
    double took = (System.nanoTime() - from) / 1e9;
    Map<String, Double> used = used(before, process.processorSeconds());
    double cpu = used.values().stream().mapToDouble(Double::doubleValue).sum();
    // What came by now; the rest may still come, late.
    double framesNow = counts.frames.sum();
    park(DRAIN_MS);
    long expected = (long) sent * crowd.reading();
    double frames = Math.max(1, counts.frames.sum());
    print(
        "%-7s %7d %6d %9.0f %8.1f%% %8.0f %8.1f %8.1f %9.0f %8.2f %8.2f%s",
        name(server),
        crowd.reading(),
        rate,
        framesNow / took,
        100.0 * counts.changes.sum() / expected,
        100 * cpu / took,
        1e6 * cpu / frames,
        1e6 * cpu / Math.max(1, counts.changes.sum()),
        (double) counts.bytes.sum() / Math.max(1, counts.changes.sum()),
        counts.times.quantileMs(0.5),
        counts.times.quantileMs(0.99),
        note);
    if (server == WireServer.BOARD) {
      print("        of it by thread, %% of a core: %s", share(used, took));
    }
  }

  private static Map<String, Double> used(Map<String, Double> before, Map<String, Double> after) {
    Map<String, Double> used = new TreeMap<>();
    after.forEach((name, now) -> used.put(name, Math.max(0, now - before.getOrDefault(name, 0.0))));
    return used;
  }

  private static String share(Map<String, Double> used, double took) {
    List<String> words = new ArrayList<>();
    used.forEach(
        (name, cpu) -> {
          if (100 * cpu / took >= 0.5) {
            words.add(String.format(Locale.ROOT, "%s %.1f", name, 100 * cpu / took));
          }
        });
    return String.join(", ", words);
  }

  /** Kilobytes in memory after whatever the server can let go of was let go of. */
  private static long resident(WireServer server, ServerProcess process) throws Exception {
    if (server != WireServer.BOARD && server != WireServer.VERTX) {
      return process.residentKb();
    }
    Path jcmd = Path.of(System.getProperty("java.home"), "bin", "jcmd");
    for (int time = 0; time < 2; time++) {
      new ProcessBuilder(jcmd.toString(), Long.toString(process.pid()), "GC.run")
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start()
          .waitFor(READY_S, TimeUnit.SECONDS);
    }
    return process.residentKb();
  }

  private void ticking(WireServer server, ServerProcess process, Crowd crowd) throws Exception {
    long timer = crowd.tick();
    for (int rate : rates) {
      crowd.publish(rate, WARM_MS);
      park(DRAIN_MS);
      cell(server, process, crowd, rate, "  with ticks");
    }
    vertx.cancelTimer(timer);
  }

  /** A tenth of the screens reads nothing; the others must not notice, nor the memory. */
  private void slow(WireServer server, ServerProcess process, Crowd crowd) throws Exception {
    long before = process.residentKb();
    int rate = rates.get(rates.size() - 1);
    crowd.reads(false);
    cell(server, process, crowd, rate, "  a tenth reads nothing");
    long after = process.residentKb();
    crowd.reads(true);
    print("        memory grew by %d kB a slow screen", (after - before) / crowd.slow());
  }

  /** All sockets end at once and all screens come back at once. */
  private void storm(WireServer server, ServerProcess process, Crowd crowd) throws Exception {
    Map<String, Double> before = process.processorSeconds();
    int count = crowd.reading();
    crowd.close();
    long from = System.nanoTime();
    int tries = crowd.openAtOnce(count);
    double took = (System.nanoTime() - from) / 1e9;
    double cpu =
        used(before, process.processorSeconds()).values().stream().mapToDouble(d -> d).sum();
    print(
        "%-7s %7d screens came back at once: all had what there is after %.2f s (%d tries again),"
            + " %.2f ms of processor each",
        name(server), count, took, tries, 1e3 * cpu / count);
  }

  /** The client of an address of this machine. */
  private WebSocketClient client(int number) {
    while (clients.size() <= number) {
      clients.add(
          vertx.createWebSocketClient(
              new WebSocketClientOptions()
                  .setMaxConnections(2 * SOCKETS_PER_ADDRESS)
                  .setMaxFrameSize(8 << 20)
                  .setMaxMessageSize(8 << 20)
                  .setLocalAddress("127.0.0." + (2 + clients.size()))));
    }
    return clients.get(number);
  }

  /** Screens of one server, and who sends changes to it. */
  private final class Crowd {
    private final WireServer server;
    private final int port;
    private final WireScreen.Counts counts;
    private final List<WireScreen> all = new ArrayList<>();
    private final List<WireScreen> publishers = new ArrayList<>();
    private boolean allRead = true;

    Crowd(WireServer server, int port, WireScreen.Counts counts) throws Exception {
      this.server = server;
      this.port = port;
      this.counts = counts;
      for (int at = 0; at < PUBLISHERS; at++) {
        publishers.add(one(100, "desk-" + at).silent());
      }
      await(publishers);
    }

    private WireScreen one(int number, String name) throws IOException {
      return WireScreen.open(client(number), server, port, name, counts);
    }

    private void await(List<WireScreen> which) throws Exception {
      CompletableFuture.allOf(
              which.stream().map(WireScreen::ready).toArray(CompletableFuture[]::new))
          .get(READY_S, TimeUnit.SECONDS);
    }

    void open(int count) throws Exception {
      for (int at = 0; at < count; at += OPENING_AT_ONCE) {
        List<WireScreen> some = new ArrayList<>();
        for (int i = at; i < Math.min(count, at + OPENING_AT_ONCE); i++) {
          some.add(one(all.size() / SOCKETS_PER_ADDRESS, "screen-" + all.size()));
          all.add(some.get(some.size() - 1));
        }
        await(some);
      }
    }

    /** How often one had to try again. */
    int openAtOnce(int count) throws Exception {
      int again = 0;
      while (all.size() < count) {
        List<WireScreen> some = new ArrayList<>();
        for (int at = all.size(); at < count; at++) {
          some.add(one(at / SOCKETS_PER_ADDRESS, "screen-" + at));
        }
        for (WireScreen screen : some) {
          try {
            screen.ready().get(READY_S, TimeUnit.SECONDS);
            all.add(screen);
          } catch (java.util.concurrent.ExecutionException refused) {
            again++;
          }
        }
      }
      return again;
    }

    int reading() {
      return all.size() - (allRead ? 0 : slow());
    }

    int slow() {
      return Math.max(1, all.size() / 10);
    }

    void reads(boolean on) {
      allRead = on;
      all.subList(0, slow()).forEach(screen -> screen.reads(on));
    }

    /** Each screen sends one a second, one after another; ends with the timer. */
    long tick() {
      long from = System.nanoTime();
      AtomicLong sent = new AtomicLong();
      return vertx.setPeriodic(
          TICK_STEP_MS,
          id -> {
            long due = (System.nanoTime() - from) * all.size() / 1_000_000_000L;
            for (long at = sent.getAndSet(due); at < due; at++) {
              all.get((int) (at % all.size())).send(WireServer.tick());
            }
          });
    }

    /** At a fixed rate, whatever comes back; how many were sent. */
    int publish(int rate, long ms) throws IOException {
      long from = System.nanoTime();
      int count = (int) (rate * ms / 1_000);
      for (int at = 0; at < count; at++) {
        long due = from + at * 1_000_000_000L / rate;
        while (System.nanoTime() < due) {
          LockSupport.parkNanos(due - System.nanoTime());
        }
        publishers.get(at % PUBLISHERS).send(server.change(WireScreen.text(), sample));
      }
      return count;
    }

    void close() {
      all.forEach(WireScreen::close);
      all.clear();
    }
  }
}
