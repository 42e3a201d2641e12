package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.net.NetClient;
import io.vertx.core.net.NetSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;
import sunup.access.Access;
import sunup.access.KeyHolder;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.SuiteId;
import sunup.codec.Json;
import sunup.journal.Journal;
import sunup.journal.PostgresAddress;
import sunup.journal.PostgresJournal;
import sunup.journal.PostgresServer;
import sunup.journal.SecretFile;
import sunup.journal.SideDatabase;
import sunup.live.fake.TickingClock;
import sunup.push.Pushes;
import sunup.suites.Seal;
import sunup.suites.Submission;
import sunup.wire.AccessAsk;
import sunup.wire.AccessList;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/**
 * Two nodes, each a process of its own, where screens are paired and people sign on: what one node
 * was told counts at the other, and a command goes from node to node under the board's seal only.
 */
class PairedClusterTest {
  private static final String PIN = "480915";
  private static final String OTHER_PIN = "739164";
  private static final int POLICY = 1008;
  private static final Actor ANYBODY = new Actor(Role.DESK, null, "desk-1");

  @TempDir Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final List<NodeProcess> nodes = new ArrayList<>();
  private PostgresAddress database;
  private List<String> addresses;

  @AfterEach
  void end() throws Exception {
    for (NodeProcess node : nodes) {
      node.kill();
    }
    Nodes.get(vertx.close());
  }

  private void begin() throws Exception {
    PostgresServer server = PostgresServer.shared();
    database = server.address(server.schema());
    addresses = Nodes.addresses(2);
    byte[] pepper = "invented for this test and long enough".getBytes(StandardCharsets.UTF_8);
    SecretFile.write(NodeProcess.pepper(folder), pepper);
    for (int me = 0; me < 2; me++) {
      nodes.add(new NodeProcess(folder, database, addresses, me));
      nodes.get(me).port();
    }
    Nodes.until(
        () -> nodes.stream().allMatch(n -> Nodes.up(n.port()) && Nodes.heard(n.port()) == 2),
        "two nodes that hear each other");
    Nodes.until(() -> nodes.stream().filter(n -> Nodes.owns(n.port())).count() == 1, "one owner");
  }

  @Test
  @EnabledIfEnvironmentVariable(named = "SUNUP_LONG", matches = "1")
  void shouldKnowScreensAndPeopleAtBothNodesAndHearCommandsUnderTheSealOnly() throws Exception {
    begin();
    int owner = Nodes.owns(nodes.get(0).port()) ? 0 : 1;
    int there = nodes.get(owner).port();
    int here = nodes.get(1 - owner).port();
    // The newest link counts.
    KeyHolder desk = new KeyHolder(vertx, here).first(nodes.get(1).link(), "K1", PIN);
    planned(desk, here);
    done(desk, new CommandId("open"), new Command.OpenMorning());

    KeyHolder station = new KeyHolder(vertx, there).open("station");
    told(desk.ask(new AccessAsk.Pair(station.code(), "station", null, new RoomId("1"))));
    assertThat(station.paired().screen()).isEqualTo("station-1");
    told(desk.ask(new AccessAsk.SetPerson("N4", OTHER_PIN, List.of(Role.CIRCULATING))));
    Nodes.until(() -> signsOn(station), "a person who was made known at the other node");

    ServerMessage.Answer note = note(desk, "said-here", "the tray is with room 1");
    station.socket().await(ServerMessage.Frame.class, f -> f.upTo() >= note.upTo());
    note(station, "said-there", "thank you");

    forged(owner);

    String id = screen(desk, "station-1");
    told(desk.ask(new AccessAsk.Revoke(id)));
    assertThat(station.socket().closeCode()).isEqualTo(POLICY);

    // Given as the owner dies, it is carried through by who is left.
    note(desk, "before", "before");
    nodes.get(owner).kill();
    note(desk, "after", "after");
    Kept.check(
        database,
        List.of("open", "said-here", "said-there", "sealed", "before", "after").stream()
            .map(CommandId::new)
            .toList());
    Kept.Found found = found();
    assertThat(found.times(new CommandId("unsealed"))).isZero();
    assertThat(found.times(new CommandId("otherwise"))).isZero();
  }

  private Kept.Found found() throws Exception {
    try (Journal journal = PostgresJournal.open(database)) {
      return Kept.find(journal);
    }
  }

  /** Who reaches the bus of a node and not the database is not heard; who has the seal is. */
  private void forged(int owner) throws Exception {
    MorningId morning = found().morning();
    String[] at = addresses.get(owner).split(":", 2);
    // Kept: Vert.x closes a client that nobody refers to.
    NetClient client = vertx.createNetClient();
    NetSocket line = Nodes.get(client.connect(Integer.parseInt(at[1]) + 1, at[0]));
    String cluster = Nodes.cluster(addresses, owner).name();
    Nodes.get(line.write(new BusFrame(new BusMessage.Hello("stranger", cluster), null).bytes()));
    Seal seal = seal();
    Submission wanted = submission("sealed");
    Nodes.get(line.write(ask(1, morning, submission("unsealed"), null)));
    Nodes.get(line.write(ask(2, morning, submission("otherwise"), seal.of(morning, wanted))));
    Nodes.get(line.write(ask(3, morning, wanted, seal.of(morning, wanted))));
    Nodes.until(
        () -> {
          try {
            return found().times(wanted.id()) == 1;
          } catch (Exception e) {
            throw new IllegalStateException(e);
          }
        },
        "the command that is sealed");
    assertThat(found().times(new CommandId("unsealed"))).isZero();
    Nodes.get(line.close());
    Nodes.get(client.close());
  }

  private static Buffer ask(long id, MorningId morning, Submission given, String seal) {
    return new BusFrame(new BusMessage.Ask(id, morning, given).sealed(seal), null).bytes();
  }

  private static Submission submission(String id) {
    Command note = new Command.AddNote(null, Private.of(id));
    return new Submission(new CommandId(id), note, ANYBODY, null, System.currentTimeMillis(), 0);
  }

  private Seal seal() throws Exception {
    Map<SuiteId, Set<RoomId>> suites = Map.of(new SuiteId("main"), Set.of());
    SideDatabase beside = SideDatabase.beside(folder, database, "access");
    try (Access access =
        Access.open(
            beside,
            NodeProcess.pepper(folder),
            false,
            false,
            null,
            new TickingClock(),
            suites,
            Pushes.NONE)) {
      return access.seal();
    }
  }

  private static boolean signsOn(KeyHolder station) {
    try {
      return station.signOn("N4", OTHER_PIN).done();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private static String screen(KeyHolder desk, String name) throws Exception {
    return desk.ask(new AccessAsk.Look()).list().screens().stream()
        .filter(s -> s.name().equals(name))
        .map(AccessList.ScreenRow::screen)
        .findFirst()
        .orElseThrow();
  }

  private static void told(ServerMessage.Told told) {
    assertThat(told.done()).as(told.words()).isTrue();
  }

  private static ServerMessage.Answer note(KeyHolder at, String id, String text) throws Exception {
    return done(at, new CommandId(id), new Command.AddNote(null, Private.of(text)));
  }

  /** Sends it until it is answered with more than "not now", as a page does. */
  private static ServerMessage.Answer done(KeyHolder at, CommandId id, Command command)
      throws Exception {
    ServerMessage.Answer[] last = new ServerMessage.Answer[1];
    Nodes.until(
        () -> {
          try {
            at.socket().forgetMessages();
            long now = System.currentTimeMillis();
            at.socket().send(new ClientMessage.Send(id, null, null, now, 0, null, command));
            last[0] = at.socket().await(ServerMessage.Answer.class, a -> a.id().equals(id));
            return !last[0].status().equals("later");
          } catch (Exception e) {
            throw new IllegalStateException(e);
          }
        },
        "an answer to " + id);
    assertThat(last[0].status()).as(last[0].words()).isEqualTo("done");
    return last[0];
  }

  private static void planned(KeyHolder desk, int port) throws Exception {
    JsonNode preview = posted(desk, port, "/api/intake/preview");
    JsonNode taken = posted(desk, port, "/api/intake/take?hash=" + preview.path("hash").asText());
    assertThat(taken.has("upTo")).as("%s", taken).isTrue();
  }

  private static JsonNode posted(KeyHolder desk, int port, String path) throws Exception {
    HttpRequest asked =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
            .header("Content-Type", "text/csv")
            .header("Sunup-Pass", desk.pass())
            .POST(HttpRequest.BodyPublishers.ofString(Nodes.CSV))
            .build();
    HttpClient client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    return Json.mapper().readTree(client.send(asked, HttpResponse.BodyHandlers.ofString()).body());
  }
}
