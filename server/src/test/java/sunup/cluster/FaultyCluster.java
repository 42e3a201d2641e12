package sunup.cluster;

import io.vertx.core.Vertx;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sunup.journal.PostgresAddress;
import sunup.journal.PostgresServer;

/**
 * Three nodes and a PostgreSQL, each at a place of its own in a {@link Network}, and a proxy before
 * them as {@code ops/cluster} has it. A node listens on its own loopback only; a forwarder beside
 * it brings it to the network, and says at once when the node does not listen, as its machine would
 * if it listened itself.
 */
final class FaultyCluster {
  static final int NODES = 3;
  private static final int HTTP = 7450;
  private static final int FORWARDED = 80;
  private static final int PLACES = 1 + NODES;
  private static final int DATABASE_PORT = 5432;

  private final Path folder;
  private final Network network;
  private final PostgresServer server;
  private final PostgresAddress database;
  private final List<String> addresses;
  private final List<NodeProcess> nodes = new ArrayList<>();

  /** Starts all of it, and a morning that is open. */
  FaultyCluster(Path folder, Vertx vertx) throws Exception {
    this.folder = folder;
    this.network = new Network(PLACES);
    this.server = PostgresServer.begin(network.at(0), Network.address(0), DATABASE_PORT);
    this.database = server.address(server.schema());
    this.addresses =
        IntStream.rangeClosed(1, NODES).mapToObj(at -> Network.address(at) + ":7460").toList();
    for (int place = 1; place <= NODES; place++) {
      forward(place);
      nodes.add(null);
    }
    for (int place = 1; place <= NODES; place++) {
      begin(place);
      if (place == 1) {
        // The first one is there before the others join: members that begin at once wait long.
        Nodes.until(() -> Nodes.up(beside(1)), "the first node");
      }
    }
    proxy();
    Nodes.until(this::whole, "three nodes that hear each other and one owner");
    Nodes.begin(vertx, beside(1));
  }

  Network network() {
    return network;
  }

  PostgresServer server() {
    return server;
  }

  PostgresAddress database() {
    return database;
  }

  /** Where the proxy listens. */
  String front() {
    return "127.0.0.1:" + HTTP;
  }

  /** The node by the line that is never cut. */
  String beside(int place) {
    return Network.beside(place) + ":" + FORWARDED;
  }

  NodeProcess node(int place) {
    return nodes.get(place - 1);
  }

  /** Starts the node of a place, anew if it was there before. */
  void begin(int place) throws Exception {
    NodeProcess made =
        new NodeProcess(folder, network.at(place), HTTP, database, addresses, place - 1);
    nodes.set(place - 1, made);
  }

  boolean heardByAll() {
    return IntStream.rangeClosed(1, NODES).allMatch(p -> Nodes.heard(beside(p)) == NODES);
  }

  /** True if all nodes are up and hear each other, and one owns the morning. */
  boolean whole() {
    return IntStream.rangeClosed(1, NODES).allMatch(p -> Nodes.up(beside(p)))
        && heardByAll()
        && places().filter(p -> Nodes.owns(beside(p))).count() == 1;
  }

  private static Stream<Integer> places() {
    return IntStream.rangeClosed(1, NODES).boxed();
  }

  Optional<Integer> owner() {
    return places().filter(p -> Nodes.owns(beside(p))).findFirst();
  }

  private void forward(int place) throws IOException {
    proxy(
        "forward-" + place,
        network.at(place),
        """
        frontend all
          bind *:%d
          http-request set-header Host localhost
          http-request del-header Origin
          default_backend node
        backend node
          retries 0
          server node 127.0.0.1:%d
        """
            .formatted(FORWARDED, HTTP));
  }

  private void proxy() throws IOException {
    StringBuilder servers = new StringBuilder();
    for (int place = 1; place <= NODES; place++) {
      servers.append("  server node%d %s:%d%n".formatted(place, Network.address(place), FORWARDED));
    }
    proxy(
        "proxy",
        List.of(),
        """
        frontend board
          bind 127.0.0.1:%d
          default_backend nodes
        backend nodes
          balance leastconn
          option httpchk GET /health/ready
          default-server check inter 500ms fall 3 rise 3 on-marked-down shutdown-sessions
        """
                .formatted(HTTP)
            + servers);
  }

  private void proxy(String name, List<String> within, String what) throws IOException {
    Path file = folder.resolve(name + ".cfg");
    Files.writeString(
        file,
        """
        defaults
          mode http
          timeout connect 1s
          timeout client 90s
          timeout server 90s
          timeout tunnel 1h
          option redispatch 1
          retry-on conn-failure 503
          retries 3
        """
            + what);
    List<String> line = new ArrayList<>(within);
    line.addAll(List.of("haproxy", "-db", "-f", file.toString()));
    new ProcessBuilder(line)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve(name + ".log").toFile())
        .start();
  }
}
