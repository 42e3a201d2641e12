package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.intake.CaseList;
import sunup.intake.SiteFile;
import sunup.live.fake.TestScreen;
import sunup.live.fake.TickingClock;
import sunup.live.fake.Waiting;
import sunup.wire.Audience;
import sunup.wire.ServerMessage;

/** Tried as an attacker would, on the whole server over real sockets. SECURITY.md lists each. */
class AttacksTest {
  private static final String HOST = "Host: localhost";

  /** Short, so that a test can wait for them. */
  private static final int WHOLE_MS = 400;

  private static final int STILL_MS = 700;
  private static final int CONNECTIONS = 12;

  @TempDir private Path folder;
  private final Vertx vertx = Vertx.vertx();
  private SunupServer server;

  @BeforeEach
  void start() throws Exception {
    begin(Doors.PLAIN.limited(20_000, 75_000, 100, CONNECTIONS).beside(0, "127.0.0.1"));
  }

  private void begin(Doors doors) throws Exception {
    Files.writeString(folder.resolve("site.json"), SiteFile.standardText());
    ServerOptions options =
        ServerOptions.of(folder.resolve("data"), folder.resolve("site.json"), 0, new TickingClock())
            .through(doors);
    server =
        SunupServer.start(vertx, options)
            .toCompletionStage()
            .toCompletableFuture()
            .get(30, TimeUnit.SECONDS);
  }

  private void close() throws Exception {
    server.close().toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  @AfterEach
  void end() throws Exception {
    close();
    vertx.close().toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private int status(String... lines) throws IOException {
    return RawHttp.status(server.port(), lines);
  }

  private String side(String path) throws Exception {
    URI at = URI.create("http://127.0.0.1:" + server.sidePort() + path);
    return HttpClient.newHttpClient()
        .send(HttpRequest.newBuilder(at).build(), HttpResponse.BodyHandlers.ofString())
        .body();
  }

  private double refused(String reason) throws Exception {
    String name = "sunup_refused_total{reason=\"" + reason + "\"} ";
    return side("/metrics")
        .lines()
        .filter(line -> line.startsWith(name))
        .mapToDouble(line -> Double.parseDouble(line.substring(name.length())))
        .sum();
  }

  @Test
  void shouldRefuseABodyThatIsTooLargeBeforeItIsRead() throws Exception {
    int tooLong = CaseList.MAX_BYTES + 1;
    assertThat(
            status(
                "POST /api/intake/preview HTTP/1.1",
                HOST,
                "Content-Type: text/csv",
                "Content-Length: " + tooLong))
        .isEqualTo(413);
    StringBuilder chunked = new StringBuilder();
    chunked.append("POST /api/intake/preview HTTP/1.1\r\n").append(HOST);
    chunked.append("\r\nContent-Type: text/csv\r\nTransfer-Encoding: chunked\r\n\r\n");
    String chunk = "x".repeat(4096);
    for (int i = 0; i <= CaseList.MAX_BYTES / 4096 + 1; i++) {
      chunked.append("1000\r\n").append(chunk).append("\r\n");
    }
    assertThat(RawHttp.answer(server.port(), chunked.toString())).contains(" 413 ");
    assertThat(
            status("POST /api/site HTTP/1.1", HOST, "Content-Type: text/csv", "Content-Length: 9"))
        .isEqualTo(405);
  }

  @Test
  void shouldNotWaitForABodyThatComesByteByByteNorForWhoAsksNothing() throws Exception {
    close();
    begin(Doors.PLAIN.limited(WHOLE_MS, STILL_MS, 100, CONNECTIONS).beside(0, "127.0.0.1"));
    try (RawHttp slow = new RawHttp(server.port());
        RawHttp silent = new RawHttp(server.port())) {
      slow.send(
          "POST /api/intake/preview HTTP/1.1\r\n"
              + HOST
              + "\r\nContent-Type: text/csv\r\nContent-Length: 1000\r\n\r\nroom");
      silent.send("GET /health/live HTTP/1.1\r\n" + HOST + "\r\n\r\n");
      assertThat(silent.line()).contains(" 200 ");
      long began = System.nanoTime();
      Waiting.until(
          () -> {
            try {
              slow.send("x");
              return refused("a slow body") >= 1 && refused("nothing asked") >= 1;
            } catch (Exception e) {
              throw new AssertionError(e);
            }
          });
      assertThat(TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began)).isLessThan(15_000);
      assertThat(slow.rest()).doesNotContain(" 200 ");
      silent.rest();
    }
  }

  @Test
  void shouldGiveNoAddressMoreConnectionsThanItsShareAndGiveThemBack() throws Exception {
    List<RawHttp> held = new ArrayList<>();
    try {
      for (int i = 0; i < CONNECTIONS; i++) {
        held.add(new RawHttp(server.port()).send("GET /health/live HTTP/1.1\r\n" + HOST + "\r\n"));
        held.get(i).send("\r\n");
        assertThat(held.get(i).line()).contains(" 200 ");
      }
      assertThat(status("GET /health/live HTTP/1.1", HOST)).isZero();
      assertThat(refused("too many connections")).isPositive();
    } finally {
      for (RawHttp each : held) {
        each.close();
      }
    }
    Waiting.until(() -> works());
  }

  private boolean works() {
    try {
      return status("GET /health/live HTTP/1.1", HOST) == 200;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void shouldServeNoFileOutsideThePagesHoweverThePathIsWritten() throws Exception {
    for (String path :
        new String[] {
          "/../../etc/passwd",
          "/assets/../../../etc/passwd",
          "/assets/..%2f..%2f..%2fetc%2fpasswd",
          "/assets/%2e%2e/%2e%2e/logback.xml",
          "/assets/..%5c..%5clogback.xml",
          "/assets/%252e%252e%252flogback.xml",
          "/assets//etc/passwd",
          "//etc/passwd",
          "/logback.xml",
          "/%00.html",
          "/wall%00.html",
          "/sunup/http/SunupServer.class",
          "/META-INF/MANIFEST.MF",
          "/journal.db",
          "/assets/" + "a".repeat(300) + ".js",
          "/api/site/../../journal.db"
        }) {
      assertThat(status("GET " + path + " HTTP/1.1", HOST)).as(path).isBetween(400, 421);
    }
    assertThat(status("GET /" + "a".repeat(8_000) + " HTTP/1.1", HOST)).isEqualTo(414);
  }

  @Test
  void shouldRefuseHeadersThatTryToMeanTwoThings() throws Exception {
    assertThat(status("GET /api/site HTTP/1.1", HOST, "X-Big: " + "x".repeat(9_000)))
        .isEqualTo(431);
    assertThat(status("GET /api/site HTTP/1.1")).isBetween(400, 421);
    assertThat(status("GET /api/site HTTP/1.1", "Host: evil.example")).isEqualTo(421);
    assertThat(status("GET /api/site HTTP/1.1", HOST, "Host: evil.example"))
        .as("two hosts")
        .isIn(0, 400, 421);
    assertThat(status("GET /api/site HTTP/1.1", "Host: localhost.evil.example")).isEqualTo(421);
    assertThat(status("GET /api/site HTTP/1.1", "Host: localhost@evil.example")).isIn(400, 421);
    assertThat(
            status("GET /api/site HTTP/1.1", "Host: evil.example", "X-Forwarded-Host: localhost"))
        .isEqualTo(421);
    // Two lengths, and a length beside chunks: the ways to smuggle a request past a proxy.
    assertThat(
            status(
                "POST /api/intake/preview HTTP/1.1",
                HOST,
                "Content-Type: text/csv",
                "Content-Length: 3",
                "Content-Length: 40"))
        .isIn(0, 400);
    String both =
        "POST /api/intake/preview HTTP/1.1\r\n"
            + HOST
            + "\r\nContent-Type: text/csv\r\nContent-Length: 4\r\nTransfer-Encoding: chunked"
            + "\r\n\r\n"
            + "0\r\n\r\nGET /api/suites HTTP/1.1\r\n"
            + HOST
            + "\r\n\r\n";
    try (RawHttp smuggler = new RawHttp(server.port())) {
      assertThat(smuggler.send(both).line()).contains(" 400 ");
    }
    assertThat(status("GET /api/site HTTP/1.1", HOST, "X-Bad\u0000: 1")).isIn(0, 400);
    assertThat(status("GET /api/site HTTP/1.1", HOST, "X: a\rSet-Cookie: b=c")).isIn(0, 200, 400);
    assertThat(status("TRACE / HTTP/1.1", HOST)).isNotEqualTo(200);
    assertThat(status("CONNECT evil.example:443 HTTP/1.1", HOST)).isNotEqualTo(200);
  }

  @Test
  void shouldOpenNoSocketForAPageFromElsewhere() throws Exception {
    for (String origin :
        new String[] {
          "http://evil.example",
          "null",
          "http://localhost.evil.example:" + server.port(),
          "https://localhost:" + server.port(),
          "http://localhost",
          "file://"
        }) {
      int status =
          status(
              "GET /live HTTP/1.1",
              "Host: localhost:" + server.port(),
              "Connection: Upgrade",
              "Upgrade: websocket",
              "Sec-WebSocket-Key: MDEyMzQ1Njc4OWFiY2RlZg==",
              "Sec-WebSocket-Version: 13",
              "Sec-WebSocket-Protocol: sunup.1",
              "Origin: " + origin);
      assertThat(status).as(origin).isEqualTo(403);
      assertThat(
              status(
                  "POST /api/intake/take HTTP/1.1",
                  "Host: localhost:" + server.port(),
                  "Content-Type: text/csv",
                  "Content-Length: 0",
                  "Origin: " + origin))
          .as(origin)
          .isEqualTo(403);
    }
    assertThat(refused("another origin")).isEqualTo(12);
    assertThat(server.sockets()).isZero();
  }

  /** A morning of two rooms, as the desk takes it from a list. */
  private void plan() throws Exception {
    String list = "room,start,technique\n1,07:30,general\n2,07:30,general\n";
    String preview = post("/api/intake/preview", list);
    String hash = preview.replaceFirst("(?s).*\"hash\":\"([^\"]+)\".*", "$1");
    assertThat(post("/api/intake/take?hash=" + hash, list)).contains("is taken");
  }

  private String post(String path, String csv) throws Exception {
    URI at = URI.create("http://127.0.0.1:" + server.port() + path);
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(at)
                .header("Content-Type", "text/csv")
                .POST(HttpRequest.BodyPublishers.ofString(csv))
                .build(),
            HttpResponse.BodyHandlers.ofString())
        .body();
  }

  @Test
  void shouldTellADisplayNothingThatIsForStaffHoweverItAsks() throws Exception {
    plan();
    TestScreen wall = TestScreen.connect(vertx, server.port()).hello("wall-1", "wall");
    wall.await(ServerMessage.View.class, v -> true);
    wall.sendText("{\"m\":\"hello\",\"page\":\"desk\",\"screen\":\"wall-1\"}");
    assertThat(wall.await(ServerMessage.Trouble.class, t -> true).code()).isEqualTo("hello-twice");
    wall.sendText("{\"m\":\"view\",\"audience\":\"desk\",\"page\":\"desk\"}");
    wall.sendText(
        "{\"m\":\"send\",\"id\":\"a1\",\"touchedAt\":0,\"offset\":0,\"role\":\"desk\","
            + "\"command\":{\"type\":\"open-morning\"}}");
    wall.sendText(
        "{\"m\":\"send\",\"id\":\"a2\",\"touchedAt\":0,\"offset\":0,\"person\":\"k1\","
            + "\"command\":{\"type\":\"open-morning\"}}");
    ServerMessage.Answer answer =
        wall.await(ServerMessage.Answer.class, a -> a.id().value().equals("a2"));
    assertThat(answer.status()).isEqualTo("refused");
    assertThat(answer.code()).isEqualTo("not-allowed");
    assertThat(wall.parts().values()).allMatch(part -> part.audience() == Audience.WALL);
    assertThat(wall.all(ServerMessage.Answer.class)).noneMatch(a -> a.status().equals("done"));
  }

  @Test
  void shouldTakeNoFrameThatOnlyAServerMaySendAndAReplayedCommandOnce() throws Exception {
    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    desk.await(ServerMessage.View.class, v -> true);
    TestScreen wall = TestScreen.connect(vertx, server.port()).hello("wall-1", "wall");
    long n = wall.await(ServerMessage.View.class, v -> true).n();
    for (String forged :
        new String[] {
          "{\"m\":\"frame\",\"morning\":\"main/2026-11-25\",\"epoch\":99,\"n\":1,\"upTo\":1,"
              + "\"set\":[],\"gone\":[\"suite\"]}",
          "{\"m\":\"beat\",\"epoch\":99,\"n\":0,\"upTo\":0}",
          "{\"m\":\"answer\",\"id\":\"a1\",\"status\":\"done\"}",
          "{\"m\":\"nothing\"}",
          "[]",
          "\"hello\"",
          "{\"m\":\"send\",\"id\":\"" + "x".repeat(9_000) + "\"}"
        }) {
      desk.sendText(forged);
    }
    Waiting.until(
        () ->
            desk.all(ServerMessage.Trouble.class).size()
                    + desk.all(ServerMessage.Answer.class).size()
                >= 7);
    String open =
        "{\"m\":\"send\",\"id\":\"r1\",\"touchedAt\":0,\"offset\":0,"
            + "\"command\":{\"type\":\"add-note\",\"room\":\"1\",\"text\":\"once\"}}";
    desk.sendText(open);
    ServerMessage.Answer first =
        desk.await(ServerMessage.Answer.class, a -> a.id().value().equals("r1"));
    TestScreen replay = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    replay.await(ServerMessage.View.class, v -> true);
    replay.sendText(open);
    ServerMessage.Answer again =
        replay.await(ServerMessage.Answer.class, a -> a.id().value().equals("r1"));
    assertThat(again).isEqualTo(first);
    replay.sendText(open.replace("once", "twice"));
    Waiting.until(() -> replay.all(ServerMessage.Answer.class).size() == 2);
    assertThat(replay.all(ServerMessage.Answer.class).get(1).code()).isEqualTo("id-reused");
    assertThat(wall.all(ServerMessage.View.class)).hasSize(1);
    assertThat(n).isGreaterThanOrEqualTo(0);
  }

  @Test
  void shouldCloseASocketThatSendsTooMuchAtOnceOrFarTooOften() throws Exception {
    TestScreen large = TestScreen.connect(vertx, server.port()).hello("wall-1", "wall");
    large.sendText("{\"m\":\"" + "x".repeat(20 * 1024) + "\"}");
    assertThat(large.closeCode()).isEqualTo(1009);
    TestScreen often = TestScreen.connect(vertx, server.port()).hello("wall-2", "wall");
    for (int i = 0; i < 400; i++) {
      often.sendText("{\"m\":\"tick\",\"sentAt\":1}");
    }
    assertThat(often.closeCode()).isEqualTo(1008);
  }

  @Test
  void shouldTellMetricsAndDetailOnTheSecondPortOnly() throws Exception {
    String main = "http://127.0.0.1:" + server.port();
    HttpClient client = HttpClient.newHttpClient();
    HttpResponse<String> health =
        client.send(
            HttpRequest.newBuilder(URI.create(main + "/health")).build(),
            HttpResponse.BodyHandlers.ofString());
    assertThat(health.body()).isIn("{\"status\":\"up\"}", "{\"status\":\"down\"}");
    assertThat(status("GET /metrics HTTP/1.1", HOST)).isEqualTo(404);
    assertThat(side("/metrics"))
        .contains("# TYPE sunup_sockets gauge", "sunup_suites 1", "sunup_heap_bytes ")
        .doesNotContain("NaN");
    assertThat(side("/health")).contains("\"journal\"", "\"suites\":1");
    assertThat(RawHttp.status(server.sidePort(), "GET /metrics HTTP/1.1", "Host: evil.example"))
        .isEqualTo(421);
    assertThat(RawHttp.status(server.sidePort(), "GET /desk HTTP/1.1", HOST)).isEqualTo(404);
  }
}
