package sunup.ops;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.vertx.core.Vertx;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.RoomId;
import sunup.ops.rehearsal.Player;
import sunup.ops.rehearsal.Script;
import sunup.wire.ClientMessage;

/** The demo's morning from the command line to the screens, fast, and with the plug pulled. */
class WholeMorningTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Lisbon");

  /** The demo's room that reports once, 15 minutes before its target of 07:30. */
  private static final String SILENT = "9";

  private static final LocalTime FIRST_TOUCH = LocalTime.of(7, 5);

  /** What depends on the clock or on figures, and may have moved on while the board was down. */
  private static final Set<String> NOT_KEPT = Set.of("lapsesAt", "stillGoing", "waitedFor");

  /** The demo's clock stands while the board is down: no more than what start and load take. */
  private static final long CLOCK_GOES_ON_MS = 10 * 60_000;

  @TempDir Path folder;
  private Vertx vertx;

  @BeforeEach
  void begin() {
    vertx = Vertx.vertx();
  }

  @AfterEach
  void end() throws Exception {
    vertx.close().toCompletionStage().toCompletableFuture().get(20, TimeUnit.SECONDS);
  }

  @Test
  void shouldShowALivingWallAndComeBackTheSameWhenThePlugIsPulled() throws Exception {
    Path log = folder.resolve("board.log");
    String data = folder.resolve("data").toString();
    Map<String, JsonNode> before;
    long stood;
    String note = UUID.randomUUID().toString();
    try (BoardProcess board =
        BoardProcess.start(
            log, "--data", data, "--no-rehearsal", "--speed", "60", "--at", "06:50")) {
      TestScreen wall = TestScreen.open(board.port(), "wall", true);
      TestScreen desk = TestScreen.open(board.port(), "desk", false);
      Player player = player(board.port());
      player.start();
      wall.await(s -> s.part("room/" + SILENT).has("lastWordAt"));
      player.close();
      say(desk, note);
      desk.await(s -> s.answer(note) != null);
      assertThat(desk.answer(note).path("status").asText()).isEqualTo("done");
      long upTo = desk.answer(note).path("upTo").asLong();
      desk.await(s -> s.upTo() >= upTo);
      before = lasting(desk);
      stood = desk.clock();
      assertThat(wall.rooms()).extracting(r -> r.path("room").asText()).contains("1", "12");
      checkTheSilentRoom(wall.rooms());
      checkThatTheWallKnowsNobody(wall);
      board.kill();
    }
    try (BoardProcess again =
        BoardProcess.start(log, "--data", data, "--no-rehearsal", "--speed", "1")) {
      TestScreen desk = TestScreen.open(again.port(), "desk", false);
      assertThat(lasting(desk)).isEqualTo(before);
      assertThat(Math.abs(desk.clock() - stood)).isLessThan(CLOCK_GOES_ON_MS);
      assertThat(again.end()).isIn(0, 143);
    }
  }

  private void checkTheSilentRoom(List<JsonNode> shown) {
    List<JsonNode> silent =
        shown.stream()
            .filter(r -> r.path("room").asText().equals(SILENT))
            .filter(r -> !r.has("lastWordAt"))
            .toList();
    assertThat(silent).isNotEmpty();
    assertThat(silent)
        .extracting(r -> r.path("standing").asText())
        .doesNotContain("late", "stuck", "ready")
        .contains("unheard");
    List<JsonNode> heard =
        shown.stream()
            .filter(r -> r.path("room").asText().equals(SILENT) && r.has("lastWordAt"))
            .toList();
    assertThat(heard).isNotEmpty();
    assertThat(local(heard.get(0).path("lastWordAt").asLong())).isAfterOrEqualTo(FIRST_TOUCH);
  }

  private void checkThatTheWallKnowsNobody(TestScreen wall) throws Exception {
    assertThat(wall.parts().values())
        .extracting(p -> p.path("part").asText())
        .containsOnly("suite", "room", "need");
    List<String> never =
        DemoFolder.resource("demo/cases.csv")
            .lines()
            .skip(1)
            .flatMap(row -> List.of(row.split(",", -1)).stream().skip(4))
            .filter(cell -> !cell.isBlank())
            .toList();
    assertThat(never).contains("gallbladder removal", "Su1");
    for (String text : wall.heard()) {
      assertThat(never).noneMatch(word -> text.contains("\"" + word + "\""));
      assertThat(text).doesNotContain("anaesthetist-").doesNotContain("circulating-");
    }
  }

  private Player player(int port) {
    return new Player(
        vertx, "127.0.0.1", port, this::script, 0, ScaledClock.RealTime.MACHINE::monotonicMs);
  }

  private Script script(MorningId morning) {
    try {
      Demo demo = Demo.in(new DemoFolder(folder.resolve("rehearsal")));
      return demo.script(morning.date(), RunCommand.DEFAULT_SEED);
    } catch (Exception e) {
      throw new IllegalArgumentException(e);
    }
  }

  private static void say(TestScreen desk, String id) {
    desk.send(
        new ClientMessage.Send(
            new CommandId(id),
            null,
            null,
            desk.clock(),
            0,
            null,
            new Command.AddNote(new RoomId("2"), Private.of("rang the ward"))));
  }

  /** What must be the same after a restart: all but the figures, which move with time. */
  private static Map<String, JsonNode> lasting(TestScreen desk) {
    Map<String, JsonNode> kept = new TreeMap<>();
    for (Map.Entry<String, JsonNode> e : desk.parts().entrySet()) {
      String kind = e.getValue().path("part").asText();
      if (Set.of("case", "item", "person", "unit", "place", "note").contains(kind)) {
        ObjectNode part = e.getValue().deepCopy();
        part.remove(NOT_KEPT);
        if (part.path("state").asText().equals("lapsed")) {
          part.put("state", "good"); // derived from the clock, which went on meanwhile
        }
        kept.put(e.getKey(), part);
      }
    }
    assertThat(kept).hasSizeGreaterThan(400);
    return kept;
  }

  private static LocalTime local(long at) {
    return Instant.ofEpochMilli(at).atZone(ZONE).toLocalTime();
  }
}
