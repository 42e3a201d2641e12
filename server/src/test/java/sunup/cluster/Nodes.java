package sunup.cluster;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Future;
import io.vertx.core.Vertx;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import sunup.board.Command;
import sunup.codec.Json;
import sunup.http.ServerOptions;
import sunup.http.SunupServer;
import sunup.intake.SiteFile;
import sunup.journal.EventTypes;
import sunup.journal.PostgresAddress;
import sunup.live.fake.TickingClock;
import sunup.suites.Clock;
import sunup.wire.ServerMessage;

/** Addresses and the ways of a test's cluster: nodes of this process, or of their own. */
final class Nodes {
  static final String CSV =
      """
      room,start,technique,size,options,procedure,service,surgeon,age_group,case
      1,07:30,general,adult,,Knee,orthopaedics,surgeon-1,,c1
      """;
  private static final long LIMIT_S = 150;
  private static final Duration ASK = Duration.ofSeconds(2);
  private static final Duration TAKE = Duration.ofSeconds(20);
  private static final HttpClient HTTP =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  private Nodes() {}

  /** As many addresses as asked for; of each the next port is free, too. */
  static List<String> addresses(int count) {
    List<String> all = new ArrayList<>();
    while (all.size() < count) {
      int port = free(0);
      if (port > 0 && free(port + 1) > 0) {
        all.add("127.0.0.1:" + port);
      }
    }
    return all;
  }

  /** The port if it is free, else 0; any free one for 0. */
  private static int free(int port) {
    try (ServerSocket socket = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    } catch (IOException | IllegalArgumentException taken) {
      return 0;
    }
  }

  static ClusterOptions cluster(List<String> all, int me) {
    String[] mine = all.get(me).split(":", 2);
    int port = Integer.parseInt(mine[1]);
    return new ClusterOptions("test-" + all.get(0), mine[0], port, all, false, null, null);
  }

  static ServerOptions options(
      Path folder, PostgresAddress database, ClusterOptions cluster, Clock clock)
      throws IOException {
    return options(folder, 0, database, cluster, clock);
  }

  static ServerOptions options(
      Path folder, int httpPort, PostgresAddress database, ClusterOptions cluster, Clock clock)
      throws IOException {
    Path site = folder.resolve("site.json");
    if (!Files.exists(site)) {
      Files.writeString(site, SiteFile.standardText());
    }
    return ServerOptions.of(folder, site, httpPort, clock).on(database, cluster);
  }

  /** A node of a program that knows other types of events. */
  static SunupServer start(
      Vertx vertx, Path folder, PostgresAddress db, ClusterOptions cluster, EventTypes types)
      throws Exception {
    ServerOptions usual = options(folder, db, cluster, new TickingClock());
    ServerOptions other =
        new ServerOptions(
            usual.dataFolder(),
            usual.database(),
            usual.cluster(),
            usual.siteFiles(),
            usual.host(),
            usual.port(),
            usual.clock(),
            usual.origins(),
            usual.limits(),
            usual.pace(),
            usual.spareShare(),
            types,
            null,
            usual.doors());
    return get(SunupServer.start(vertx, other));
  }

  static SunupServer start(
      Vertx vertx, Path folder, PostgresAddress database, ClusterOptions cluster) throws Exception {
    return start(vertx, folder, 0, database, cluster, new TickingClock());
  }

  static SunupServer start(
      Vertx vertx,
      Path folder,
      int httpPort,
      PostgresAddress database,
      ClusterOptions cluster,
      Clock clock)
      throws Exception {
    return get(SunupServer.start(vertx, options(folder, httpPort, database, cluster, clock)));
  }

  static <T> T get(Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(LIMIT_S, TimeUnit.SECONDS);
  }

  /** Waits for it, for longer than a cluster may take. */
  static void until(BooleanSupplier condition, String what) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(LIMIT_S);
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("waited " + LIMIT_S + " s in vain for " + what);
      }
      LockSupport.parkNanos(10_000_000);
    }
  }

  static JsonNode ask(int port, String path, String csv) {
    return ask("127.0.0.1:" + port, path, csv);
  }

  static JsonNode ask(String at, String path, String csv) {
    try {
      HttpRequest.Builder request =
          HttpRequest.newBuilder(URI.create("http://" + at + path))
              .timeout(csv == null ? ASK : TAKE);
      if (csv != null) {
        request.header("Content-Type", "text/csv").POST(HttpRequest.BodyPublishers.ofString(csv));
      }
      HttpResponse<String> got = HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
      return Json.mapper().readTree(got.body());
    } catch (IOException e) {
      return Json.mapper().createObjectNode();
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  static boolean up(int port) {
    return up("127.0.0.1:" + port);
  }

  static boolean up(String at) {
    return ask(at, "/health/ready", null).path("status").asText().equals("up");
  }

  /** The nodes that this one hears, itself too. */
  static int heard(int port) {
    return heard("127.0.0.1:" + port);
  }

  static int heard(String at) {
    return ask(at, "/health/ready", null).path("cluster").path("nodes").size();
  }

  /** True if the node owns the morning. */
  static boolean owns(int port) {
    return owns("127.0.0.1:" + port);
  }

  static boolean owns(String at) {
    for (JsonNode node : ask(at, "/health/ready", null).path("cluster").path("nodes")) {
      if (node.path("self").asBoolean()) {
        return node.path("mornings").asInt() > 0;
      }
    }
    return false;
  }

  /** Takes a case list and opens the morning, by any node. */
  static void begin(Vertx vertx, int port) throws Exception {
    begin(vertx, "127.0.0.1:" + port);
  }

  static void begin(Vertx vertx, String at) throws Exception {
    String hash = ask(at, "/api/intake/preview", CSV).path("hash").asText();
    JsonNode taken = ask(at, "/api/intake/take?hash=" + hash, CSV);
    if (!taken.has("upTo")) {
      throw new AssertionError("the list was not taken: " + taken);
    }
    try (Client desk = new Client(vertx, "desk-0", "desk", List.of(at))) {
      ServerMessage.Answer answer = desk.give(new Command.OpenMorning());
      if (!answer.status().equals("done")) {
        throw new AssertionError("the morning was not opened: " + answer);
      }
    }
  }
}
