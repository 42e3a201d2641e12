package sunup.ops;

import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.VertxOptions;
import io.vertx.core.file.FileSystemOptions;
import java.io.IOException;
import java.net.BindException;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sunup.board.SiteSettings;
import sunup.http.ServerOptions;
import sunup.http.SunupServer;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;
import sunup.journal.DataFolder;
import sunup.live.ForecastPool;
import sunup.ops.madeup.MadeUpSuite;
import sunup.ops.rehearsal.Player;
import sunup.suites.Clock;

/** Runs the board on this machine until it is told to stop. */
@Command(
    name = "run",
    mixinStandardHelpOptions = true,
    description = "Runs the board on this machine, with a demo morning unless told otherwise.")
final class RunCommand implements Callable<Integer> {
  static final int DEFAULT_PORT = 7450;

  /** A morning with something of everything. */
  static final long DEFAULT_SEED = 14;

  /** About a year. */
  private static final int PAST_MOST = 250;

  /** How often the demo's clock is written down, real milliseconds. */
  private static final int KEEP_MS = 250;

  private static final int CLOSE_SECONDS = 20;
  private static final int START_SECONDS = 60;
  private static final Logger LOG = LoggerFactory.getLogger(RunCommand.class);

  @Spec private CommandSpec spec;

  @Option(
      names = "--empty",
      description = "No demo: an empty board whose case list comes by CSV at the desk.")
  private boolean empty;

  @Option(
      names = "--port",
      description = "Port to listen on, 0 takes a free one (${DEFAULT-VALUE}).",
      defaultValue = "" + DEFAULT_PORT)
  private int port;

  @Option(
      names = "--speed",
      description = "Demo: morning seconds per real second, 1 to 60 (${DEFAULT-VALUE}).",
      defaultValue = "10")
  private double speed;

  @Option(
      names = "--seed",
      description = "Demo: the same seed plays the same morning (" + DEFAULT_SEED + ").")
  private Long seed;

  @Option(
      names = "--at",
      description = "Demo: the clock begins at this local time (${DEFAULT-VALUE}).",
      defaultValue = "06:25")
  private LocalTime at;

  @Option(names = "--date", description = "Demo: the morning's date (today).")
  private LocalDate date;

  @Option(
      names = "--past",
      paramLabel = "MORNINGS",
      description =
          "A new demo: so many closed mornings before it, invented like it, for the review and the"
              + " machines' readings, 0 for none (${DEFAULT-VALUE}).",
      defaultValue = "40")
  private int past;

  @Option(names = "--no-rehearsal", description = "Demo: nobody plays; report by hand.")
  private boolean noRehearsal;

  @Option(
      names = "--data",
      description =
          "Folder to keep the board's data in; the demo keeps to demo/ in it. Without it the demo"
              + " takes a folder for once, --empty takes data/.")
  private Path data;

  @Option(
      names = "--site",
      description =
          "With --empty: the site's file (DATA/board/site.json), or a folder with a file for each"
              + " of several suites.")
  private Path site;

  @Option(
      names = "--spare",
      paramLabel = "SHARE",
      description =
          "Share of the forecasting threads' time for finer figures and for moves, 0 to 1"
              + " (${DEFAULT-VALUE}); less where many suites or other programs share the machine.",
      defaultValue = "" + ForecastPool.SPARE_SHARE)
  private double spare;

  @Mixin private DatabaseOptions database;
  @Mixin private NodeOptions nodes;
  @Mixin private PairOptions pairing;
  @Mixin private DoorOptions doors;

  @Option(
      names = "--cold",
      description =
          "No warm-up at the start: the first forecasts take longer. For tests and short trials.")
  private boolean cold;

  @Option(
      names = "--beside",
      description = "Demo on several nodes: another one takes the case list, this one does not.")
  private boolean beside;

  @Option(
      names = "--clock-began",
      paramLabel = "MS",
      description =
          "Demo on several nodes: the clock began then, epoch milliseconds, so that all have the"
              + " same.")
  private Long clockBegan;

  @Override
  public Integer call() throws Exception {
    check();
    return empty ? runEmpty() : runDemo();
  }

  private void check() throws Wrong {
    if (!(speed >= 1 && speed <= 60)) {
      throw Wrong.input("--speed must be 1 to 60.");
    }
    if (past < 0 || past > PAST_MOST) {
      throw Wrong.input("--past must be 0 to " + PAST_MOST + " mornings.");
    }
    if (!(spare >= 0 && spare <= 1)) {
      throw Wrong.input("--spare must be 0 to 1.");
    }
    if (port < 0 || port > 65_535) {
      throw Wrong.input("--port must be 0 to 65535.");
    }
    if (site != null && !empty) {
      throw Wrong.input("--site goes with --empty; the demo plays in a hospital of its own.");
    }
    pairing.check(empty);
    database.check();
    doors.check(empty, pairing.pair());
  }

  private int runEmpty() throws Exception {
    Path home = Path.of(System.getProperty("sunup.home", "."));
    Path folder = (data != null ? data : home.resolve("data")).resolve("board");
    DataFolder.make(folder);
    Path file = site != null ? site : folder.resolve("site.json");
    if (site == null && !Files.exists(file)) {
      Files.writeString(file, DemoFolder.resource("plain/site.json"));
    }
    List<Path> files = Files.isDirectory(file) ? jsonIn(file) : List.of(file);
    for (Path one : files) {
      if (!Files.isReadable(one)) {
        throw Wrong.input("The site's file " + one + " can't be read.");
      }
    }
    String about =
        files.size() == 1
            ? aboutSite(files.get(0))
            : files.size()
                + " suites by the files in "
                + file
                + ". Name one in a page's address, such as desk?suite=NAME;"
                + " /api/suites lists them.";
    Clock clock = new WallClock(ScaledClock.RealTime.MACHINE);
    ServerOptions options =
        asAsked(ServerOptions.of(folder, files, port, clock), folder)
            .listening(doors.host())
            .pairing(pairing.options());
    serve(options, (vertx, server) -> () -> {}, about);
    return 0;
  }

  /** What a demo takes as a board of one's own does. */
  private ServerOptions asAsked(ServerOptions options, Path folder) throws Wrong {
    return options
        .on(database.address(), nodes.cluster())
        .sparing(spare)
        .through(doors.doors(folder))
        .within(doors.limits());
  }

  private static List<Path> jsonIn(Path folder) throws IOException, Wrong {
    try (Stream<Path> all = Files.list(folder)) {
      List<Path> files =
          all.filter(f -> f.getFileName().toString().endsWith(".json")).sorted().toList();
      if (files.isEmpty()) {
        throw Wrong.input("There is no site's file (.json) in the folder " + folder + ".");
      }
      return files;
    }
  }

  /** What an empty board plays in, for the start print; a wrong file is told by the server. */
  static String aboutSite(Path file) throws IOException {
    SiteFile read = SiteReader.read("site.json", Files.readString(file)).site();
    if (read == null) {
      return "";
    }
    SiteSettings settings = read.settings();
    String marked =
        settings.demo()
            ? "It is marked as a demo and every page says so: set \"demo\" to false for a real one."
            : "Put your own rooms and people there, then start again.";
    return String.format(
        "An empty board for %s, %s, %d rooms, by %s.%n%s",
        settings.hospital(), settings.suiteName(), read.rooms().size(), file, marked);
  }

  private int runDemo() throws Exception {
    Path once = data == null ? Files.createTempDirectory("sunup-demo-") : null;
    try {
      DemoFolder folder = new DemoFolder(once != null ? once : data.resolve("demo"));
      Demo demo = Demo.in(folder);
      DemoFolder.Kept kept = folder.kept();
      if (kept != null && seed != null && seed != kept.seed()) {
        throw Wrong.input(
            folder.folder()
                + " plays seed "
                + kept.seed()
                + ". Leave --seed out to go on, or take another --data.");
      }
      long plays = kept != null ? kept.seed() : seed != null ? seed : DEFAULT_SEED;
      long from = from(demo, kept);
      ScaledClock clock = new ScaledClock(ScaledClock.RealTime.MACHINE, from, speed);
      serve(
          asAsked(
              ServerOptions.of(folder.folder(), folder.file("site.json"), port, clock),
              folder.folder()),
          (vertx, server) ->
              play(vertx, server, folder, demo, plays, clock, past(kept, from, demo)),
          aboutDemo(demo.site().settings().zoneId(), from, speed, kept != null));
    } finally {
      if (once != null) {
        DemoFolder.remove(once);
      }
    }
    return 0;
  }

  /** What a new demo is still to get, or one that was killed while it got it; else null. */
  private DemoFolder.Past past(DemoFolder.Kept kept, long from, Demo demo) {
    if (kept != null) {
      return kept.past();
    }
    LocalDate day =
        Instant.ofEpochMilli(from).atZone(demo.site().settings().zoneId()).toLocalDate();
    return past == 0 || beside ? null : new DemoFolder.Past(day, past);
  }

  private long from(Demo demo, DemoFolder.Kept kept) {
    long beginning = beginning(demo.site().settings().zoneId());
    if (clockBegan != null) {
      long since = ScaledClock.RealTime.MACHINE.epochMs() - clockBegan;
      return beginning + Math.round(since * speed);
    }
    return kept != null ? kept.morningClock() : beginning;
  }

  /** What the demo plays and from when, for the start print; one that was ended goes on there. */
  static String aboutDemo(ZoneId zone, long from, double speed, boolean goesOn) {
    return String.format(
        "A demo: an invented morning that %s %s, %s times as fast as real time.",
        goesOn ? "goes on where it was ended, at" : "runs from",
        DateTimeFormatter.ofPattern("HH:mm").format(Instant.ofEpochMilli(from).atZone(zone)),
        speed == Math.rint(speed) ? String.valueOf((long) speed) : String.valueOf(speed));
  }

  private long beginning(ZoneId zone) {
    LocalDate day = date != null ? date : LocalDate.now(zone);
    return day.atTime(at).atZone(zone).toInstant().toEpochMilli();
  }

  private Runnable play(
      Vertx vertx,
      SunupServer server,
      DemoFolder folder,
      Demo demo,
      long plays,
      Clock clock,
      DemoFolder.Past wanted)
      throws Exception {
    int actual = server.port();
    if (!beside) {
      new DemoDesk(actual).begin(demo.cases(), clock.morningMs());
    }
    DemoPast laying = new DemoPast(server.journal(), server::reviewNow, demo, wanted, plays);
    folder.keep(new DemoFolder.Kept(plays, clock.morningMs(), wanted));
    long keeping = vertx.setPeriodic(KEEP_MS, t -> keep(folder, plays, clock, laying));
    Player player = noRehearsal || beside ? null : rehearse(vertx, actual, demo, plays, clock);
    laying.begin();
    return () -> {
      vertx.cancelTimer(keeping);
      if (player != null) {
        player.close();
      }
      laying.close();
      keep(folder, plays, clock, laying);
    };
  }

  private static void keep(DemoFolder folder, long plays, Clock clock, DemoPast laying) {
    try {
      folder.keep(new DemoFolder.Kept(plays, clock.morningMs(), laying.left()));
    } catch (IOException e) {
      LOG.warn("the demo's clock can't be written down: {}", e.getMessage());
    }
  }

  private static Player rehearse(Vertx vertx, int actual, Demo demo, long plays, Clock clock) {
    Player player =
        new Player(
            vertx,
            ServerOptions.DEFAULT_HOST,
            actual,
            morning -> {
              try {
                return demo.script(morning.date(), plays);
              } catch (Wrong e) {
                throw new IllegalArgumentException(e.getMessage(), e);
              }
            },
            0,
            clock::monotonicMs);
    player.start().onFailure(e -> LOG.error("the rehearsal stopped: {}", e.getMessage()));
    return player;
  }

  /** Does what goes on beside the server; what it returns ends that. */
  private interface Beside {
    Runnable begin(Vertx vertx, SunupServer server) throws Exception;
  }

  private void serve(ServerOptions options, Beside beside, String about) throws Exception {
    Vertx vertx =
        Vertx.vertx(
            new VertxOptions()
                .setFileSystemOptions(
                    new FileSystemOptions()
                        .setClassPathResolvingEnabled(false)
                        .setFileCachingEnabled(false)));
    CountDownLatch stop = new CountDownLatch(1);
    CountDownLatch stopped = new CountDownLatch(1);
    Thread hook =
        new Thread(
            () -> {
              stop.countDown();
              waitFor(stopped);
            },
            "sunup-stop");
    try {
      SunupServer server = await(SunupServer.start(vertx, options));
      Runtime.getRuntime().addShutdownHook(hook);
      if (!cold) {
        server.warmUp(MadeUpSuite::warming, MadeUpSuite.now());
      }
      Runnable end = beside.begin(vertx, server);
      StartPrint.of(server, doors, about).forEach(spec.commandLine().getOut()::println);
      spec.commandLine().getOut().flush();
      stop.await();
      LOG.info("closing");
      end.run();
      await(server.close());
    } catch (BindException | UnknownHostException e) {
      throw Wrong.failed(unbound(e));
    } finally {
      await(vertx.close());
      stopped.countDown();
    }
  }

  private String unbound(IOException e) {
    boolean taken = e instanceof BindException && e.getMessage().contains("in use");
    return taken
        ? "Port " + port + " is taken by another program. Give another one with --port, or 0."
        : "This machine has no address "
            + doors.host()
            + ". Give --host one of its own, or 0.0.0.0 for all.";
  }

  private static <T> T await(Future<T> future) throws Exception {
    try {
      return future.toCompletionStage().toCompletableFuture().get(START_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IllegalArgumentException wrong) {
        throw Wrong.input(wrong.getMessage());
      }
      if (e.getCause() instanceof Exception cause) {
        throw cause;
      }
      throw e;
    } catch (TimeoutException e) {
      throw Wrong.failed("The board did not start or end within " + START_SECONDS + " s.");
    }
  }

  private static void waitFor(CountDownLatch stopped) {
    try {
      if (!stopped.await(CLOSE_SECONDS, TimeUnit.SECONDS)) {
        System.err.println("The board did not close in order within " + CLOSE_SECONDS + " s.");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
