package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Vertx;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Private;
import sunup.http.SunupServer;
import sunup.journal.CutLine;
import sunup.journal.PostgresAddress;
import sunup.journal.PostgresServer;
import sunup.live.fake.TestScreen;
import sunup.live.fake.TickingClock;
import sunup.suites.Clock;
import sunup.wire.ServerMessage;

/** Three nodes over real sockets; the one that has the morning is not well. */
class NodeTroubleTest {
  private static final int NODES = 3;
  private static final long OFF_MS = 40_000;

  @TempDir Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final List<SunupServer> nodes = new ArrayList<>();
  private final List<SetClock> clocks = new ArrayList<>();
  private final List<CutLine> lines = new ArrayList<>();

  /** A clock whose hands can be set. */
  private static final class SetClock implements Clock {
    private final Clock right = new TickingClock();
    volatile long off;

    @Override
    public long realMs() {
      return right.realMs() + off;
    }

    @Override
    public long monotonicMs() {
      return right.monotonicMs();
    }

    @Override
    public long morningMs() {
      return right.morningMs();
    }

    @Override
    public double rate() {
      return right.rate();
    }
  }

  @AfterEach
  void end() throws Exception {
    for (SunupServer node : nodes) {
      Nodes.get(node.close());
    }
    for (CutLine line : lines) {
      line.close();
    }
    Nodes.get(vertx.close());
  }

  @Test
  void shouldGiveUpTheMorningWhenItsClockIsOffOrItLosesTheJournalAndSaySo() throws Exception {
    PostgresServer server = PostgresServer.shared();
    String schema = server.schema();
    List<String> addresses = Nodes.addresses(NODES);
    for (int me = 0; me < NODES; me++) {
      clocks.add(new SetClock());
      lines.add(new CutLine(server.port()));
      PostgresAddress by = server.address("127.0.0.1:" + lines.get(me).port(), schema);
      ClusterOptions cluster = Nodes.cluster(addresses, me);
      nodes.add(
          Nodes.get(SunupServer.start(vertx, Nodes.options(folder, by, cluster, clocks.get(me)))));
    }
    Nodes.until(
        () -> nodes.stream().allMatch(n -> Nodes.up(n.port()) && Nodes.heard(n.port()) == NODES),
        "three nodes that hear each other");
    Nodes.begin(vertx, nodes.get(0).port());

    int off = owner(-1);
    clocks.get(off).off = OFF_MS;
    Nodes.until(() -> clockOff(off), "the node to say that its clock is off");
    int next = owner(off);
    List<CommandId> all = new ArrayList<>(note(off, "by a node whose clock is off"));
    clocks.get(off).off = 0;
    Nodes.until(() -> !clockOff(off), "the clock to be right again");

    TestScreen wall = TestScreen.connect(vertx, nodes.get(next).port()).hello("wall-1", "wall");
    wall.await(ServerMessage.Beat.class, beat -> !beat.readOnly());
    lines.get(next).away(true);
    wall.await(ServerMessage.Beat.class, ServerMessage.Beat::readOnly);
    owner(next);
    all.addAll(note(next, "by a node without the journal"));
    wall.await(ServerMessage.Beat.class, beat -> !beat.readOnly());
    for (CutLine line : lines) {
      line.away(true);
    }
    wall.await(ServerMessage.Beat.class, ServerMessage.Beat::readOnly);
    Nodes.until(
        () -> nodes.stream().noneMatch(node -> told(node)), "all nodes to miss the journal");
    assertThat(nodes).as("a proxy leaves them their screens").allMatch(n -> Nodes.up(n.port()));
    for (CutLine line : lines) {
      line.away(false);
    }
    wall.await(ServerMessage.Beat.class, beat -> !beat.readOnly());
    assertThat(all).hasSize(2);
    Kept.check(server.address(schema), all);
  }

  /** The one that owns the morning and is not this one. */
  private int owner(int but) {
    int[] found = {-1};
    Nodes.until(
        () -> {
          for (int at = 0; at < NODES; at++) {
            if (at != but && Nodes.owns(nodes.get(at).port())) {
              found[0] = at;
            }
          }
          return found[0] >= 0 && (but < 0 || !Nodes.owns(nodes.get(but).port()));
        },
        "an owner");
    return found[0];
  }

  private static boolean told(SunupServer node) {
    return Nodes.ask(node.port(), "/health/ready", null).path("told").asInt() > 0;
  }

  private boolean clockOff(int node) {
    JsonNode cluster = Nodes.ask(nodes.get(node).port(), "/health/ready", null).path("cluster");
    return cluster.path("clockOff").asBoolean();
  }

  private List<CommandId> note(int node, String text) throws Exception {
    try (Client desk = new Client(vertx, "desk-1", nodes.get(node).port())) {
      desk.give(new Command.AddNote(null, Private.of(text)));
      return desk.acknowledged();
    }
  }
}
