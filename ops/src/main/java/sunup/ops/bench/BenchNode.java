package sunup.ops.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sunup.codec.Json;
import sunup.journal.PostgresAddress;

/** A node in a process of its own, as {@code ops/run} would start it, and what it costs. */
final class BenchNode {
  private static final HttpClient HTTP =
      HttpClient.newBuilder()
          .version(HttpClient.Version.HTTP_1_1)
          .connectTimeout(Duration.ofSeconds(5))
          .build();
  private static final Pattern LIVE = Pattern.compile("(?m)used (\\d+)K");

  /** Several nodes share one machine here. */
  private static final String SPARE = "0.1";

  private static final long START_S = 180;
  private static final long END_S = 30;

  private final Process process;
  private final Path log;
  private final int port;

  private BenchNode(Process process, Path log, int port) {
    this.process = process;
    this.log = log;
    this.port = port;
  }

  /**
   * Starts one and does not wait for it.
   *
   * @param nodes all member addresses, or empty for one node alone
   */
  static BenchNode start(
      Path folder, Path sites, PostgresAddress database, List<String> nodes, int me, String memory)
      throws IOException {
    Path mine = Files.createDirectories(folder.resolve("node-" + (me + 1)));
    Path log = mine.resolve("log");
    int port = freePort();
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.add("-Xmx" + memory);
    line.addAll(List.of("-cp", System.getProperty("java.class.path"), "sunup.ops.Main", "run"));
    line.addAll(List.of("--empty", "--port", "" + port, "--data", mine.toString()));
    line.addAll(List.of("--site", sites.toString()));
    line.addAll(List.of("--spare", SPARE));
    if (database != null) {
      line.addAll(List.of("--database", database.url(), "--database-user", database.user()));
      line.addAll(List.of("--database-password-file", database.passwordFile().toString()));
    }
    if (!nodes.isEmpty()) {
      line.addAll(List.of("--node", nodes.get(me), "--nodes", String.join(",", nodes)));
      line.addAll(List.of("--cluster", "bench-" + nodes.get(0).replace(':', '-')));
    }
    ProcessBuilder made = new ProcessBuilder(line).redirectErrorStream(true);
    return new BenchNode(made.redirectOutput(log.toFile()).start(), log, port);
  }

  /** Member addresses of this machine; of each the next port is free, too. */
  static List<String> addresses(int count) throws IOException {
    List<String> all = new ArrayList<>();
    while (all.size() < count) {
      int port = freePort();
      try (ServerSocket next = new ServerSocket(port + 1)) {
        all.add("127.0.0.1:" + (next.getLocalPort() - 1));
      } catch (IOException taken) {
        // Another pair, then.
      }
    }
    return all;
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0)) {
      return free.getLocalPort();
    }
  }

  int port() {
    return port;
  }

  /** What the node says of itself and the others; null while it does not answer. */
  JsonNode health() throws InterruptedException {
    try {
      URI at = URI.create("http://127.0.0.1:" + port + "/health");
      HttpRequest request = HttpRequest.newBuilder(at).timeout(Duration.ofSeconds(5)).build();
      return Json.mapper()
          .readTree(HTTP.send(request, HttpResponse.BodyHandlers.ofString()).body());
    } catch (IOException e) {
      return null;
    }
  }

  /** Waits until all suites are told here. */
  void awaitReady() throws InterruptedException, IOException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(START_S);
    JsonNode last = null;
    while (System.nanoTime() < end && process.isAlive()) {
      last = health();
      if (last != null && last.path("status").asText().equals("up")) {
        return;
      }
      Pacing.rest(200, TimeUnit.MILLISECONDS);
    }
    throw new IllegalStateException("A node is not ready: " + last + "\n" + Files.readString(log));
  }

  /** Mornings that it owns. */
  int mornings() throws InterruptedException {
    JsonNode health = health();
    if (health != null) {
      for (JsonNode node : health.path("cluster").path("nodes")) {
        if (node.path("self").asBoolean()) {
          return node.path("mornings").asInt();
        }
      }
    }
    return 0;
  }

  /** Processor time so far, seconds. */
  double processorSeconds() {
    return process.info().totalCpuDuration().map(d -> d.toMillis() / 1e3).orElse(Double.NaN);
  }

  /** Memory in use after a collection, MiB, from the JDK's own tool. */
  double liveMiB() throws IOException, InterruptedException {
    jcmd("GC.run");
    Matcher used = LIVE.matcher(jcmd("GC.heap_info"));
    return used.find() ? Long.parseLong(used.group(1)) / 1024.0 : Double.NaN;
  }

  /** What the machine keeps in memory for it, MiB. */
  double residentMiB() throws IOException {
    for (String line : Files.readAllLines(Path.of("/proc/" + process.pid() + "/status"))) {
      if (line.startsWith("VmRSS:")) {
        return Long.parseLong(line.replaceAll("\\D", "")) / 1024.0;
      }
    }
    return Double.NaN;
  }

  private String jcmd(String what) throws IOException, InterruptedException {
    Path tool = Path.of(System.getProperty("java.home"), "bin", "jcmd");
    Process asked =
        new ProcessBuilder(tool.toString(), "" + process.pid(), what)
            .redirectErrorStream(true)
            .start();
    String said = new String(asked.getInputStream().readAllBytes(), UTF_8);
    asked.waitFor(END_S, TimeUnit.SECONDS);
    return said;
  }

  /** kill -9. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor(END_S, TimeUnit.SECONDS);
  }

  /** SIGTERM, and waits for its end. */
  void end() throws InterruptedException {
    process.destroy();
    if (!process.waitFor(END_S, TimeUnit.SECONDS)) {
      kill();
    }
  }
}
