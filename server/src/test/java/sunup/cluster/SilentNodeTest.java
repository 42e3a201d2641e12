package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.Command;
import sunup.board.Private;
import sunup.http.SunupServer;
import sunup.journal.EventTypes;
import sunup.journal.PostgresAddress;
import sunup.journal.PostgresServer;
import sunup.live.fake.TickingClock;
import sunup.wire.ServerMessage;

/**
 * A node that is started while another one, which it has never heard, is named and silent: that
 * one's machine has lost its power, and the grid has not noticed yet.
 */
class SilentNodeTest {
  private static final String NEW = "noted";

  @TempDir Path folder;
  private final Vertx vertx = Vertx.vertx();
  private SunupServer node;

  @AfterEach
  void end() throws Exception {
    if (node != null) {
      Nodes.get(node.close());
    }
    Nodes.get(vertx.close());
  }

  @Test
  void shouldNotKeepNewKindsOfCommandsWaitingForANodeThatIsKnownToReadThem() throws Exception {
    Set<String> settled = new HashSet<>(EventTypes.ofProgram().reads());
    settled.remove(NEW);
    EventTypes types = new EventTypes(EventTypes.ofProgram().reads(), settled);
    PostgresServer server = PostgresServer.shared();
    PostgresAddress database = server.address(server.schema());
    List<String> addresses = Nodes.addresses(2);
    ClusterOptions dead = Nodes.cluster(addresses, 0);
    Node named = new Node("dead", dead.host(), dead.port() + 1, types.reads());
    try (ServerSocket bus = new ServerSocket(named.port(), 50, InetAddress.getLoopbackAddress());
        HazelcastMembers grid = new HazelcastMembers(dead, named, new TickingClock())) {
      node = Nodes.start(vertx, folder, database, Nodes.cluster(addresses, 1), types);
      Nodes.until(() -> Nodes.owns(node.port()), "the one that lives");
      Nodes.begin(vertx, node.port());
      assertThat(grid.nodes()).as("both are named").hasSize(2);

      Client desk = new Client(vertx, "desk-1", node.port());
      ServerMessage.Answer answer = desk.give(new Command.AddNote(null, Private.of("new")));
      desk.close();

      assertThat(answer.status()).as(answer.words()).isEqualTo("done");
      assertThat(bus.isClosed()).isFalse();
    }
  }
}
