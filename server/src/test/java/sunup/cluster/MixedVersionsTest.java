package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Vertx;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Private;
import sunup.codec.Json;
import sunup.http.SunupServer;
import sunup.journal.EventTypes;
import sunup.journal.PostgresAddress;
import sunup.journal.PostgresServer;
import sunup.live.fake.ManualClock;
import sunup.live.fake.TestScreen;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** A node of a version that has notes, beside one of a version that has none yet. */
class MixedVersionsTest {
  private static final String NEW = "noted";

  @TempDir Path folder;
  private final Vertx vertx = Vertx.vertx();
  private SunupServer newer;
  private SunupServer older;

  @AfterEach
  void end() throws Exception {
    for (SunupServer node : new SunupServer[] {older, newer}) {
      if (node != null) {
        Nodes.get(node.close());
      }
    }
    Nodes.get(vertx.close());
  }

  @Test
  void shouldWriteANewKindOfEventOnlyWhenAllNodesReadItAndLeaveItToThoseWhoDo() throws Exception {
    Set<String> known = new HashSet<>(EventTypes.ofProgram().reads());
    known.remove(NEW);
    EventTypes few = new EventTypes(known, known);
    EventTypes all = new EventTypes(EventTypes.ofProgram().reads(), known);
    PostgresServer server = PostgresServer.shared();
    PostgresAddress database = server.address(server.schema());
    List<String> addresses = Nodes.addresses(2);
    newer = Nodes.start(vertx, folder, database, Nodes.cluster(addresses, 0), all);
    older = Nodes.start(vertx, folder, database, Nodes.cluster(addresses, 1), few);
    Nodes.until(() -> Nodes.up(newer.port()) && Nodes.up(older.port()), "two nodes");
    Nodes.begin(vertx, older.port());

    for (SunupServer node : List.of(newer, older)) {
      ServerMessage.Answer answer = note(node);
      assertThat(answer.status()).as(answer.words()).isEqualTo("later");
      assertThat(answer.words()).contains("up to date");
    }
    Nodes.get(older.close());
    Nodes.until(() -> Nodes.owns(newer.port()), "the newer one alone");
    Client desk = new Client(vertx, "desk-1", newer.port());
    assertThat(desk.give(new Command.AddNote(null, Private.of("new"))).status()).isEqualTo("done");
    desk.close();

    older = Nodes.start(vertx, folder, database, Nodes.cluster(addresses, 1), few);
    Nodes.until(() -> Nodes.up(older.port()), "the older one, by the frames of the newer");
    Nodes.get(newer.close());
    newer = null;
    Nodes.until(() -> !unread(older).isEmpty(), "the older one to say that it can't read");
    assertThat(unread(older).get(0).path("why").asText()).contains("'" + NEW + "'");
    assertThat(Nodes.up(older.port())).isFalse();
    assertThat(Nodes.owns(older.port())).isFalse();

    newer = Nodes.start(vertx, folder, database, Nodes.cluster(addresses, 0), all);
    Nodes.until(() -> Nodes.owns(newer.port()) && Nodes.up(older.port()), "one who can read it");
  }

  private static JsonNode unread(SunupServer node) {
    return Nodes.ask(node.port(), "/health/ready", null).path("cluster").path("unread");
  }

  private ServerMessage.Answer note(SunupServer node) throws Exception {
    TestScreen screen = TestScreen.connect(vertx, node.port()).hello("desk-2", "desk");
    CommandId id = new CommandId("n-" + node.port());
    Command note = new Command.AddNote(null, Private.of("too early"));
    screen.await(ServerMessage.Beat.class, beat -> true);
    screen.send(new ClientMessage.Send(id, null, null, ManualClock.START, 0, null, note));
    return screen.await(ServerMessage.Answer.class, answer -> answer.id().equals(id));
  }

  @Test
  void shouldReadWhatANodeOfALaterVersionSaysAndLeaveOutWhatItDoesNotKnow() throws Exception {
    assertThat(read("{'b':'hello','from':'a','cluster':'c','mood':'good'}"))
        .isEqualTo(new BusMessage.Hello("a", "c"));
    assertThat(read("{'b':'song','words':['la']}")).isEqualTo(new BusMessage.FromLater());
    BusMessage.Pulse pulse =
        (BusMessage.Pulse)
            read(
                "{'b':'pulse','at':1,'heldMs':0,'realMs':2,'stays':true,'screens':0,"
                    + "'claims':[],'unfit':[]}");
    assertThat(pulse.reads()).as("an earlier version says nothing of it").isNull();
  }

  private static BusMessage read(String json) throws Exception {
    byte[] bytes = json.replace('\'', '"').getBytes(StandardCharsets.UTF_8);
    return Json.read(bytes, BusMessage.class);
  }
}
