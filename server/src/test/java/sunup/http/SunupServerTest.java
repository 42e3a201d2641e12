package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpClient;
import io.vertx.core.http.HttpClientResponse;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.RequestOptions;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.codec.Json;
import sunup.forecast.ForecastInput;
import sunup.intake.SiteFile;
import sunup.live.fake.TestScreen;
import sunup.live.fake.TickingClock;
import sunup.wire.ClientMessage;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/** The whole server over real sockets and a real journal. */
class SunupServerTest {
  private static final String CSV = "room,start,technique\n1,07:30,general\n2,07:30,general\n";

  @TempDir private Path folder;
  private final Vertx vertx = Vertx.vertx();
  private HttpClient client;
  private SunupServer server;

  /** What came back. */
  private record Got(int status, Map<String, String> headers, String text) {
    JsonNode json() throws IOException {
      return Json.mapper().readTree(text);
    }
  }

  @BeforeEach
  void start() throws Exception {
    Files.writeString(folder.resolve("site.json"), SiteFile.standardText());
    client = vertx.createHttpClient();
    server = await(SunupServer.start(vertx, options("127.0.0.1")));
  }

  private ServerOptions options(String host) {
    ServerOptions usual =
        ServerOptions.of(
            folder.resolve("data"), folder.resolve("site.json"), 0, new TickingClock());
    return new ServerOptions(
        usual.dataFolder(),
        usual.database(),
        usual.cluster(),
        usual.siteFiles(),
        host,
        0,
        usual.clock(),
        usual.origins(),
        usual.limits(),
        usual.pace(),
        usual.spareShare(),
        usual.types(),
        null,
        usual.doors());
  }

  @AfterEach
  void end() throws Exception {
    if (server != null) {
      await(server.close());
    }
    await(vertx.close());
  }

  private static <T> T await(io.vertx.core.Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private Got ask(HttpMethod method, String path, Map<String, String> headers, String body)
      throws Exception {
    RequestOptions request =
        new RequestOptions()
            .setMethod(method)
            .setHost("127.0.0.1")
            .setPort(server.port())
            .setURI(path);
    headers.forEach(request::putHeader);
    return await(
        client
            .request(request)
            // Nested: a handler that this thread adds after the answer came would miss its body.
            .compose(
                r ->
                    (body == null ? r.send() : r.send(Buffer.buffer(body)))
                        .compose(SunupServerTest::whole)));
  }

  private static io.vertx.core.Future<Got> whole(HttpClientResponse response) {
    return response
        .body()
        .map(
            body -> {
              Map<String, String> headers = new java.util.TreeMap<>(String.CASE_INSENSITIVE_ORDER);
              response.headers().forEach(h -> headers.put(h.getKey(), h.getValue()));
              return new Got(response.statusCode(), headers, body.toString());
            });
  }

  private Got get(String path) throws Exception {
    return ask(HttpMethod.GET, path, Map.of(), null);
  }

  private Got post(String path, String type, String body) throws Exception {
    return ask(HttpMethod.POST, path, Map.of("Content-Type", type), body);
  }

  @Test
  void shouldShowNothingPlannedThenTheRoomsOfATakenListAndATouch() throws Exception {
    TestScreen wall = TestScreen.connect(vertx, server.port()).hello("wall-1", "wall");
    ServerMessage.View view = wall.await(ServerMessage.View.class, v -> true);
    assertThat(((Part.SuitePart) view.parts().get(0)).phase()).isEqualTo("none");

    Got preview = post("/api/intake/preview", "text/csv; charset=utf-8", CSV);
    assertThat(preview.status()).as(preview.text()).isEqualTo(200);
    assertThat(preview.json().path("added")).hasSize(2);
    String take = "/api/intake/take?hash=" + preview.json().path("hash").asText();
    assertThat(post(take + "0", "text/csv", CSV).status()).isEqualTo(409);
    Got taken = post(take, "text/csv", CSV);
    assertThat(taken.status()).as(taken.text()).isEqualTo(200);
    long upTo = taken.json().path("upTo").asLong();
    Got again = post(take, "text/csv", CSV);
    assertThat(again.status()).as(again.text()).isEqualTo(200);
    assertThat(again.json().path("commands").asInt()).isZero();
    assertThat(again.json().path("upTo").asLong()).isEqualTo(upTo);
    assertThat(again.json().path("words").asText()).contains("has this list already");
    wall.await(ServerMessage.Frame.class, f -> f.upTo() >= upTo);
    assertThat(wall.parts()).containsKey("room/1").containsKey("room/2");

    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    desk.sendText(
        "{\"m\":\"send\",\"id\":\"open-1\",\"touchedAt\":0,\"offset\":0,"
            + "\"command\":{\"type\":\"open-morning\"}}");
    ServerMessage.Answer answer = desk.await(ServerMessage.Answer.class, a -> true);
    assertThat(answer.status()).as(answer.words()).isEqualTo("done");
    wall.await(ServerMessage.Frame.class, f -> f.upTo() >= answer.upTo());
    assertThat(((Part.SuitePart) wall.parts().get("suite")).phase()).isEqualTo("open");
    desk.await(
        ServerMessage.Frame.class,
        f -> f.set().stream().anyMatch(Part.ChancePart.class::isInstance));
  }

  /** Rows of the journal's tables and the heads of its mornings, as they lie in the file. */
  private String journal() throws Exception {
    StringBuilder found = new StringBuilder();
    String file = "jdbc:sqlite:" + folder.resolve("data").resolve("journal.db");
    try (Connection connection = DriverManager.getConnection(file);
        Statement statement = connection.createStatement()) {
      for (String what :
          new String[] {
            "SELECT morning || ' ' || epoch || ' ' || seq || ' ' || hex(chain) FROM head",
            "SELECT count(*) FROM event",
            "SELECT count(*) FROM receipt",
            "SELECT count(*) FROM private"
          }) {
        try (ResultSet rows = statement.executeQuery(what)) {
          while (rows.next()) {
            found.append(rows.getString(1)).append('\n');
          }
        }
      }
    }
    return found.toString();
  }

  @Test
  void shouldShowACopyBesideTheMorningAndRecordNothing() throws Exception {
    String hash = post("/api/intake/preview", "text/csv", CSV).json().path("hash").asText();
    assertThat(post("/api/intake/take?hash=" + hash, "text/csv", CSV).status()).isEqualTo(200);
    String before = journal();

    Got got =
        post(
            "/api/try",
            "application/json",
            "{\"changes\":[{\"change\":\"swap\",\"one\":\"1\",\"other\":\"2\"},"
                + "{\"change\":\"one-more-person\",\"role\":\"technician\"}]}");

    assertThat(got.status()).as(got.text()).isEqualTo(200);
    assertThat(got.json().path("rooms")).hasSize(2);
    assertThat(got.json().path("trials").asInt()).isPositive();
    assertThat(before).contains("2026-11-25 ");
    assertThat(journal()).isEqualTo(before);
    for (String wrong :
        new String[] {
          "{\"changes\":[]}",
          "{\"changes\":[null]}",
          "{}",
          "null",
          "{\"changes\":[{\"change\":\"swap\",\"one\":\"1\"}]}",
          "{\"changes\":[{\"change\":\"swap\",\"one\":\"1\",\"other\":\"77\"}]}",
          "{\"changes\":[{\"change\":\"fewer-checks\"}]}"
        }) {
      Got refused = post("/api/try", "application/json", wrong);
      assertThat(refused.status()).as(wrong + refused.text()).isIn(400, 422);
      assertThat(refused.json().path("words").asText()).as(wrong + refused.text()).isNotBlank();
      assertThat(refused.text()).doesNotContain("Exception").doesNotContain("sunup.");
    }
    assertThat(journal()).isEqualTo(before);
  }

  @Test
  void shouldComeBackTheSameWhenItIsStartedAgain() throws Exception {
    String hash = post("/api/intake/preview", "text/csv", CSV).json().path("hash").asText();
    Got taken = post("/api/intake/take?hash=" + hash, "text/csv", CSV);
    assertThat(taken.status()).as(taken.text()).isEqualTo(200);
    long upTo = taken.json().path("upTo").asLong();
    TestScreen before = TestScreen.connect(vertx, server.port()).hello("station-1", "station");
    ServerMessage.View view = before.await(ServerMessage.View.class, v -> true);
    if (view.upTo() < upTo) {
      before.await(ServerMessage.Frame.class, f -> f.upTo() >= upTo);
    }

    await(server.close());
    server = await(SunupServer.start(vertx, options("127.0.0.1")));

    TestScreen after =
        TestScreen.connect(vertx, server.port()).resume(before, "station-1", "station");
    ServerMessage.View again = after.await(ServerMessage.View.class, v -> true);
    assertThat(again.epoch()).isGreaterThan(view.epoch());
    assertThat(again.upTo()).isEqualTo(upTo);
    assertThat(after.parts().keySet()).isEqualTo(before.parts().keySet());
  }

  @Test
  void shouldBeatOverARealJournal() throws Exception {
    TestScreen wall = TestScreen.connect(vertx, server.port()).hello("wall-1", "wall");

    ServerMessage.Beat beat = wall.await(ServerMessage.Beat.class, b -> true);

    assertThat(beat.readOnly()).isFalse();
    assertThat(get("/health/ready").json().path("status").asText()).isEqualTo("up");
    assertThat(get("/health/live").status()).isEqualTo(200);
  }

  @Test
  void shouldForecastAMorningThatIsSentWhole() throws Exception {
    ForecastInput empty = new ForecastInput(1, 1_000_000, 7, 256, null, null, null, null, null);

    Got got = post("/api/forecast", "application/json", Json.write(empty));

    assertThat(got.status()).as(got.text()).isEqualTo(200);
    assertThat(got.json().path("trials").asInt()).isEqualTo(256);
  }

  @Test
  void shouldGiveTheSameBitsOnAnyNode() throws Exception {
    String morning =
        Files.readString(Path.of("../shared-model/src/test/resources/forecast/silence.json"));
    ServerOptions other =
        ServerOptions.of(
            folder.resolve("other"), folder.resolve("site.json"), 0, new TickingClock());
    SunupServer here = server;
    Got first = post("/api/forecast", "application/json", morning);
    server = await(SunupServer.start(vertx, other));
    Got second = post("/api/forecast", "application/json", morning);
    await(here.close());
    assertThat(first.status()).isEqualTo(200);
    assertThat(first.json().get("rooms").get(0).get("start50").asLong()).isPositive();
    assertThat(second.text()).isEqualTo(first.text());
  }

  @Test
  void shouldExplainAMorningThatIsSentWhole() throws Exception {
    ForecastInput empty = new ForecastInput(1, 1_000_000, 7, 256, null, null, null, null, null);

    Got got = post("/api/as-run", "application/json", Json.write(empty));

    assertThat(got.status()).as(got.text()).isEqualTo(200);
    assertThat(got.json().path("rooms").isArray()).isTrue();
  }

  @Test
  void shouldTellWhatIsWrongWithoutItsInside() throws Exception {
    for (Got got :
        new Got[] {
          get("/nowhere"),
          get("/assets/../../logback.xml"),
          post("/api/forecast", "application/json", "{\"rooms\":7}"),
          post("/api/forecast", "application/json", "x".repeat(ForecastApi.BODY_BYTES_MAX + 1)),
          post("/api/forecast", "text/plain", "{}"),
          post("/api/as-run", "application/json", "{\"rooms\":7}"),
          post("/api/as-run", "application/json", "null"),
          post("/api/intake/preview?date=tomorrow", "text/csv", CSV),
          post("/api/intake/preview?date=1999-01-01", "text/csv", CSV),
          ask(HttpMethod.DELETE, "/api/site", Map.of(), null)
        }) {
      assertThat(got.status()).as(got.text()).isBetween(400, 422);
      assertThat(got.headers()).containsEntry("Content-Type", "application/problem+json");
      assertThat(got.json().path("detail").asText()).isNotBlank();
      assertThat(got.text()).doesNotContain("Exception").doesNotContain("at sunup.");
    }
  }

  @Test
  void shouldListTheMistakesOfACaseListInItsPreview() throws Exception {
    Got got = post("/api/intake/preview", "text/csv", "room,start,technique\n99,7 pm,magic\n");

    assertThat(got.status()).isEqualTo(200);
    assertThat(got.json().path("problems")).isNotEmpty();
    assertThat(got.json().path("problems").get(0).path("line").asInt()).isEqualTo(2);
  }

  @Test
  void shouldSendSecurityHeadersWithEverything() throws Exception {
    for (String path : new String[] {"/", "/api/site", "/health", "/nowhere"}) {
      Map<String, String> headers = get(path).headers();
      assertThat(headers.get("Content-Security-Policy"))
          .contains("default-src 'none'", "frame-ancestors 'none'")
          .doesNotContain("unsafe");
      assertThat(headers)
          .containsEntry("X-Content-Type-Options", "nosniff")
          .containsEntry("Referrer-Policy", "no-referrer");
    }
  }

  @Test
  void shouldRefuseOtherHostsAndPagesOfOtherOrigins() throws Exception {
    assertThat(ask(HttpMethod.GET, "/", Map.of("Host", "evil.example"), null).status())
        .isEqualTo(421);
    Got foreign =
        ask(
            HttpMethod.POST,
            "/api/intake/preview",
            Map.of("Content-Type", "text/csv", "Origin", "http://evil.example"),
            CSV);
    assertThat(foreign.status()).isEqualTo(403);
  }

  @Test
  void shouldRefuseToListenWhereOthersCouldConnect() {
    assertThatThrownBy(() -> await(SunupServer.start(vertx, options("0.0.0.0"))))
        .isInstanceOf(ExecutionException.class)
        .hasRootCauseInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("this machine only");
  }

  @Test
  void shouldSayWhatIsWrongInTheSitesFile() throws Exception {
    Files.writeString(folder.resolve("site.json"), "{\"suite\": 7}");

    assertThatThrownBy(() -> await(SunupServer.start(vertx, options("127.0.0.1"))))
        .hasMessageContaining("site.json");
  }

  @Test
  void shouldDocumentEachRouteAndNoOther() throws Exception {
    JsonNode paths = get("/protocol/openapi.json").json().path("paths");

    Set<String> documented = new TreeSet<>();
    paths
        .fieldNames()
        .forEachRemaining(
            path ->
                paths
                    .path(path)
                    .fieldNames()
                    .forEachRemaining(
                        m -> documented.add(m.toUpperCase(Locale.ROOT) + " " + path)));
    assertThat(server.documentedRoutes()).isEqualTo(documented);
    // More than 64 KiB: read by a client that waits for all of it.
    URI live = URI.create("http://127.0.0.1:" + server.port() + "/protocol/asyncapi.json");
    String told =
        java.net.http.HttpClient.newBuilder()
            .version(java.net.http.HttpClient.Version.HTTP_1_1)
            .build()
            .send(HttpRequest.newBuilder(live).build(), HttpResponse.BodyHandlers.ofString())
            .body();
    assertThat(Json.mapper().readTree(told).path("asyncapi").asText()).isEqualTo("3.0.0");
  }

  @Test
  void shouldTellTheSite() throws Exception {
    JsonNode site = get("/api/site").json();

    assertThat(site.path("rooms")).isNotEmpty();
    assertThat(site.path("techniques").get(0).path("name").asText()).isNotBlank();
  }

  @Test
  void shouldRefuseACommandThatLacksSomething() throws Exception {
    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    desk.await(ServerMessage.View.class, v -> true);
    for (String command : new String[] {"begin", "good", "plan", "add-case", "reach", "claim"}) {
      desk.sendText(
          ("{\"m\":\"send\",\"id\":\"%s\",\"touchedAt\":0,\"offset\":0,"
                  + "\"command\":{\"type\":\"%s\"}}")
              .formatted(command, command));

      ServerMessage.Answer answer =
          desk.await(ServerMessage.Answer.class, a -> a.id().value().equals(command));
      assertThat(answer.code()).as(answer.toString()).isEqualTo("bad-command");
    }
  }

  @Test
  void shouldKeepASocketOpenForWhoSendsATick() throws Exception {
    TestScreen wall = TestScreen.connect(vertx, server.port()).hello("wall-1", "wall");
    wall.await(ServerMessage.View.class, v -> true);
    wall.send(new ClientMessage.Tick(3));

    assertThat(wall.await(ServerMessage.Tock.class, t -> true).rate()).isEqualTo(1);
  }
}
