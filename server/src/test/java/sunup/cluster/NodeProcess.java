package sunup.cluster;

import io.vertx.core.Vertx;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import sunup.access.PairingOptions;
import sunup.http.ServerOptions;
import sunup.http.SunupServer;
import sunup.journal.PostgresAddress;
import sunup.live.fake.TickingClock;
import sunup.suites.Clock;

/** A node in a process of its own, and the process as its test sees it. */
public final class NodeProcess {
  private static final String PORT = "port ";
  private static final String LINK = "link ";
  private static final String CLOCK = "clock";
  private static final long LIMIT_S = 60;

  private final Path said;
  private final Process process;
  private int port;

  /**
   * Starts one of several.
   *
   * @param me which of the addresses is its own
   */
  NodeProcess(Path folder, PostgresAddress database, List<String> addresses, int me)
      throws IOException {
    this(folder, List.of(), 0, database, addresses, me);
  }

  /**
   * Starts it.
   *
   * @param within what its command line begins with: another network, another clock
   * @param httpPort 0 takes a free one
   * @param database null for a file in its folder, and one node alone
   */
  NodeProcess(
      Path folder,
      List<String> within,
      int httpPort,
      PostgresAddress database,
      List<String> addresses,
      int me)
      throws IOException {
    Path mine = Files.createDirectories(folder.resolve("node-" + me));
    this.said = mine.resolve("said");
    for (int before = 1; Files.exists(said); before++) {
      Path kept = mine.resolve("said-" + before);
      if (!Files.exists(kept)) {
        Files.move(said, kept);
      }
    }
    List<String> line = new ArrayList<>(within);
    line.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Xmx384m",
            "-Dsunup.cluster.level=INFO",
            "-cp",
            System.getProperty("java.class.path"),
            NodeProcess.class.getName(),
            mine.toString(),
            Integer.toString(httpPort)));
    if (database != null) {
      line.addAll(
          List.of(
              database.url(),
              database.user(),
              database.passwordFile().toString(),
              Integer.toString(me)));
      line.addAll(addresses);
    }
    this.process =
        new ProcessBuilder(line)
            .redirectError(ProcessBuilder.Redirect.appendTo(mine.resolve("errors").toFile()))
            .redirectOutput(ProcessBuilder.Redirect.to(said.toFile()))
            .start();
  }

  /** Waits until it listens; its port. */
  int port() {
    if (port == 0) {
      Nodes.until(() -> !process.isAlive() || portSaid() > 0, "a node that listens");
      port = portSaid();
    }
    return port;
  }

  private int portSaid() {
    return said(PORT).map(Integer::parseInt).orElse(0);
  }

  private Optional<String> said(String what) {
    try {
      return Files.readString(said)
          .lines()
          .filter(line -> line.startsWith(what))
          .map(line -> line.substring(what.length()))
          .findFirst();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** What its first administrator needs, once it listens. */
  String link() {
    return said(LINK).orElseThrow();
  }

  /** If this file is there before the nodes of a folder start, their screens are paired. */
  static Path pepper(Path folder) {
    return folder.resolve("pepper");
  }

  /** kill -9. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor(LIMIT_S, TimeUnit.SECONDS);
  }

  /** Stops it in the middle of whatever it does, or lets it go on. */
  void signal(String name) throws Exception {
    Network.run("kill", "-" + name, Long.toString(process.pid()));
  }

  /** Sets its clock off from the machine's by so many seconds, while it runs. */
  void setClock(int seconds) throws IOException {
    Path next = said.resolveSibling("clock-next");
    Files.writeString(next, Integer.toString(seconds));
    Files.move(next, said.resolveSibling(CLOCK), StandardCopyOption.ATOMIC_MOVE);
  }

  /** What it wrote when it could not go on. */
  String errors() throws IOException {
    return Files.readString(said.resolveSibling("errors"));
  }

  /** True if it ends by itself. */
  boolean awaitEnd(long seconds) throws InterruptedException {
    return process.waitFor(seconds, TimeUnit.SECONDS);
  }

  boolean alive() {
    return process.isAlive();
  }

  /** SIGTERM, and waits for its end. */
  boolean stop() throws InterruptedException {
    process.destroy();
    return process.waitFor(LIMIT_S, TimeUnit.SECONDS);
  }

  public static void main(String[] args) throws Exception {
    PostgresAddress database = null;
    ClusterOptions cluster = null;
    if (args.length > 2) {
      database = new PostgresAddress(args[2], args[3], Path.of(args[4]));
      List<String> addresses = List.of(args).subList(6, args.length);
      cluster = Nodes.cluster(addresses, Integer.parseInt(args[5]));
    }
    int httpPort = Integer.parseInt(args[1]);
    SunupServer server;
    try {
      Path mine = Path.of(args[0]);
      Clock clock = new SetOffClock(new TickingClock(), mine.resolve(CLOCK));
      ServerOptions options = Nodes.options(mine, httpPort, database, cluster, clock);
      Path pepper = pepper(mine.getParent());
      if (Files.exists(pepper)) {
        options = options.pairing(new PairingOptions(pepper));
      }
      server = Nodes.get(SunupServer.start(Vertx.vertx(), options));
    } catch (ExecutionException e) {
      System.err.println(e.getCause().getMessage());
      System.exit(1);
      return;
    }
    Runtime.getRuntime().addShutdownHook(new Thread(() -> close(server)));
    server.firstLink().ifPresent(link -> System.out.println(LINK + link));
    System.out.println(PORT + server.port());
    CountDownLatch forEver = new CountDownLatch(1);
    forEver.await();
  }

  /**
   * The machine's clock, set off by what a file says. A process can't have a wall clock of its own,
   * but a node asks for the time here only.
   */
  private record SetOffClock(Clock right, Path file) implements Clock {
    private long offMs() {
      try {
        return 1_000 * Long.parseLong(Files.readString(file));
      } catch (IOException notSetOff) {
        return 0;
      }
    }

    @Override
    public long realMs() {
      return right.realMs() + offMs();
    }

    @Override
    public long monotonicMs() {
      return right.monotonicMs();
    }

    @Override
    public long morningMs() {
      return right.morningMs() + offMs();
    }

    @Override
    public double rate() {
      return right.rate();
    }
  }

  private static void close(SunupServer server) {
    try {
      Nodes.get(server.close());
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }
}
