package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.CommandId;
import sunup.journal.PostgresAddress;
import sunup.journal.PostgresServer;

/** Three nodes in processes of their own; the owner is killed while people write. */
class NodeKillTest {
  private static final int NODES = 3;

  @TempDir Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final List<NodeProcess> nodes = new ArrayList<>();

  @AfterEach
  void end() throws Exception {
    for (NodeProcess node : nodes) {
      node.kill();
    }
    Nodes.get(vertx.close());
  }

  @Test
  void shouldGoOnWithAllThatWasAcknowledgedWhenTheOwnersProcessIsKilled() throws Exception {
    PostgresServer server = PostgresServer.shared();
    PostgresAddress database = server.address(server.schema());
    List<String> addresses = Nodes.addresses(NODES);
    for (int me = 0; me < NODES; me++) {
      nodes.add(new NodeProcess(folder, database, addresses, me));
      // The first one is there before the others join: members that begin at once wait for another.
      nodes.get(0).port();
    }
    List<Integer> ports = nodes.stream().map(NodeProcess::port).toList();
    Nodes.until(
        () -> ports.stream().allMatch(port -> Nodes.up(port) && Nodes.heard(port) == NODES),
        "three nodes that hear each other");
    Nodes.until(() -> ports.stream().filter(Nodes::owns).count() == 1, "one owner");
    int owner = ports.indexOf(ports.stream().filter(Nodes::owns).findFirst().orElseThrow());
    Nodes.begin(vertx, ports.get((owner + 1) % NODES));
    List<Client> clients = new ArrayList<>();
    for (int at = 0; at < NODES; at++) {
      clients.add(new Client(vertx, "desk-" + at, Client.ports(ports, at)).begin());
    }
    clients.forEach(client -> client.awaitMore(8));

    long before = System.nanoTime();
    nodes.get(owner).kill();
    clients.forEach(client -> client.awaitMore(1));
    long backMs = (System.nanoTime() - before) / 1_000_000;
    clients.forEach(client -> client.awaitMore(8));

    List<CommandId> all = new ArrayList<>();
    for (Client client : clients) {
      client.end();
      all.addAll(client.acknowledged());
    }
    System.out.println(
        "owner killed: all write again after "
            + backMs
            + " ms; longest silences "
            + clients.stream().map(Client::longestSilence).toList()
            + " ms; "
            + all.size()
            + " commands acknowledged");
    assertThat(clients.get(owner).timesBack()).isPositive();
    Client one = clients.get(0);
    Nodes.until(
        () -> clients.stream().allMatch(c -> c.screen().n() == one.screen().n()), "all alike");
    clients.forEach(c -> assertThat(c.screen().parts()).isEqualTo(one.screen().parts()));
    Kept.check(database, all);
  }
}
