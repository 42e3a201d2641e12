package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Private;
import sunup.http.SunupServer;
import sunup.journal.PostgresAddress;
import sunup.journal.PostgresServer;
import sunup.live.fake.TestScreen;
import sunup.wire.ServerMessage;

/** Two nodes over real sockets, on a real PostgreSQL. */
class ClusterTest {
  /** A page calls itself stale after so long without a heartbeat. */
  private static final long STALE_MS = 5_000;

  @TempDir Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final List<SunupServer> nodes = new ArrayList<>();
  private List<String> addresses;
  private PostgresAddress database;

  @BeforeEach
  void begin() throws Exception {
    PostgresServer server = PostgresServer.shared();
    database = server.address(server.schema());
    addresses = Nodes.addresses(2);
    add(0);
    add(1);
    Nodes.until(() -> nodes.stream().allMatch(n -> Nodes.up(n.port())), "two nodes");
  }

  private void add(int me) throws Exception {
    nodes.add(Nodes.start(vertx, folder, database, Nodes.cluster(addresses, me)));
  }

  @AfterEach
  void end() throws Exception {
    for (SunupServer node : nodes) {
      Nodes.get(node.close());
    }
    Nodes.get(vertx.close());
  }

  private SunupServer owner() {
    return which(true);
  }

  private SunupServer other() {
    return which(false);
  }

  private SunupServer which(boolean owning) {
    Nodes.until(() -> nodes.stream().filter(n -> Nodes.owns(n.port())).count() == 1, "one owner");
    return nodes.stream()
        .filter(n -> Nodes.owns(n.port()) == owning)
        .findFirst()
        .orElseThrow(() -> new AssertionError("the morning moved just now"));
  }

  private TestScreen screen(SunupServer node, String name, String page) throws Exception {
    return TestScreen.connect(vertx, node.port()).hello(name, page);
  }

  private static Command note(String text) {
    return new Command.AddNote(null, Private.of(text));
  }

  @Test
  void shouldShowATouchAtOneNodeOnTheScreensOfTheOther() throws Exception {
    Nodes.begin(vertx, other().port());
    TestScreen there = screen(other(), "desk-1", "desk");
    TestScreen here = screen(owner(), "desk-2", "desk");
    TestScreen wall = screen(other(), "wall-1", "wall");
    for (TestScreen screen : List.of(there, here, wall)) {
      screen.await(ServerMessage.View.class, v -> v.parts().size() > 1);
      assertThat(screen.await(ServerMessage.Beat.class, b -> true).readOnly()).isFalse();
    }
    Client desk = new Client(vertx, "desk-4", other().port());
    ServerMessage.Answer answer = desk.give(note("ultrasound is with room 4"));
    assertThat(answer.status()).as(answer.words()).isEqualTo("done");
    for (TestScreen screen : List.of(there, here, wall)) {
      screen.await(ServerMessage.Frame.class, f -> f.upTo() >= answer.upTo());
      assertThat(screen.gaps()).isZero();
    }
    assertThat(there.rawText()).contains("ultrasound is with room 4");
    assertThat(wall.rawText()).doesNotContain("ultrasound is with room 4");
    TestScreen late = screen(other(), "desk-3", "desk");
    late.await(ServerMessage.View.class, v -> true);
    Nodes.until(() -> late.n() == here.n(), "a screen that came late");
    assertThat(late.parts()).isEqualTo(here.parts());
  }

  @Test
  void shouldHandItsMorningOverWhenItIsShutDownWithoutAStaleScreenOrALostCommand()
      throws Exception {
    Nodes.begin(vertx, owner().port());
    SunupServer goes = owner();
    SunupServer stays = other();
    Client there = new Client(vertx, "desk-1", stays.port()).begin();
    Client here = new Client(vertx, "desk-2", goes.port(), stays.port()).begin();
    there.awaitMore(10);
    Nodes.get(goes.close());
    nodes.remove(goes);
    there.awaitMore(10);
    here.awaitMore(10);
    there.end();
    here.end();
    assertThat(here.timesBack()).isEqualTo(1);
    assertThat(there.timesBack()).isZero();
    System.out.println(
        "longest silence at a hand-over: "
            + there.longestSilence()
            + " and "
            + here.longestSilence()
            + " ms");
    assertThat(there.longestSilence()).isLessThan(STALE_MS);
    assertThat(here.longestSilence()).isLessThan(STALE_MS);
    Nodes.until(() -> here.screen().n() == there.screen().n(), "both screens alike");
    assertThat(here.screen().parts()).isEqualTo(there.screen().parts());
    List<CommandId> all = new ArrayList<>(there.acknowledged());
    all.addAll(here.acknowledged());
    Kept.check(database, all);
  }
}
