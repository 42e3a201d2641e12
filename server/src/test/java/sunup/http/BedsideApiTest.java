package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Future;
import io.vertx.core.Vertx;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import sunup.bedside.BedsideFigures;
import sunup.bedside.BedsideSettings;
import sunup.bedside.Release;
import sunup.codec.Json;
import sunup.intake.ReleaseWriter;
import sunup.intake.SiteFile;
import sunup.live.fake.TestScreen;
import sunup.live.fake.TickingClock;
import sunup.wire.ServerMessage;

/** Bedside figures over HTTP, for the cases of a real morning. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BedsideApiTest {
  private static final String CSV =
      "room,start,technique,case\n1,07:30,general,A1\n2,07:30,general,A2\n3,07:30,general,A3\n";
  private static final String LIPID =
      "{\"figure\":\"lipid\",\"room\":\"1\",\"caseId\":\"%s\",\"revision\":7,\"patient\":{%s}}";
  private static final String AGE = "\"age\":{\"text\":\"40\",\"unit\":\"years\"}";

  @TempDir private static Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final HttpClient http = HttpClient.newHttpClient();
  private SunupServer server;

  @BeforeAll
  void start() throws Exception {
    List<Release> releases =
        new BedsideFigures(BedsideSettings.first())
            .list(LocalDate.EPOCH).stream()
                .filter(f -> !f.card().name().equals("mac"))
                .map(f -> new Release(f.card().name(), f.fingerprint(), "B. Doe", LocalDate.EPOCH))
                .toList();
    Path site = folder.resolve("site.json");
    Files.writeString(site, ReleaseWriter.write(SiteFile.standardText(), releases));
    server =
        await(
            SunupServer.start(
                vertx, ServerOptions.of(folder.resolve("data"), site, 0, new TickingClock())));
    String hash = post("/api/intake/preview", "text/csv", CSV).path("hash").asText();
    post("/api/intake/take?hash=" + hash, "text/csv", CSV);
  }

  @AfterAll
  void end() throws Exception {
    await(server.close());
    await(vertx.close());
  }

  private static <T> T await(Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private JsonNode send(HttpRequest.Builder request, String path) throws Exception {
    URI to = URI.create("http://127.0.0.1:" + server.port() + path);
    HttpResponse<String> got =
        http.send(request.uri(to).build(), HttpResponse.BodyHandlers.ofString());
    return json(got.body());
  }

  private static JsonNode json(String text) throws IOException {
    return Json.mapper().readTree(text);
  }

  private JsonNode post(String path, String type, String body) throws Exception {
    return send(
        HttpRequest.newBuilder()
            .header("Content-Type", type)
            .POST(HttpRequest.BodyPublishers.ofString(body)),
        path);
  }

  private JsonNode lipid(String caseId, String patient) throws Exception {
    return post("/api/bedside/work", "application/json", LIPID.formatted(caseId, patient));
  }

  private static String weight(String text, String unit) {
    return AGE + ",\"weight\":{\"text\":\"" + text + "\",\"unit\":\"" + unit + "\"}";
  }

  private static String first(JsonNode answer) {
    return answer.path("answer").path("reasons").path(0).path("message").asText();
  }

  @Test
  void shouldListEveryFigureWithItsFingerprintAndTheReasonOfThoseThatAreOff() throws Exception {
    JsonNode figures = send(HttpRequest.newBuilder().GET(), "/api/bedside").path("figures");
    assertThat(figures).hasSizeGreaterThan(15);
    for (JsonNode one : figures) {
      boolean mac = one.path("card").path("name").asText().equals("mac");
      assertThat(one.path("fingerprint").asText()).hasSize(12);
      assertThat(one.has("off")).isEqualTo(mac);
      assertThat(one.path("released").path("by").asText()).isEqualTo(mac ? "" : "B. Doe");
    }
    JsonNode off =
        post(
            "/api/bedside/work",
            "application/json",
            "{\"figure\":\"mac\",\"room\":\"1\",\"caseId\":\"A1\",\"revision\":0}");
    assertThat(off.path("answer").path("answer").asText()).isEqualTo("off");
    assertThat(off.path("answer").path("why").asText()).contains("pharmacy releases it");
  }

  @Test
  void shouldWorkAFigureForTheCaseInTheRoomAndSayForWhichFactsItHolds() throws Exception {
    JsonNode worked = lipid("A1", weight("80", "kg"));
    assertThat(worked.path("answer").path("answer").asText())
        .as(worked.toString())
        .isEqualTo("worked");
    assertThat(worked.path("caseId").asText()).isEqualTo("A1");
    assertThat(worked.path("revision").asLong()).isEqualTo(7);
    assertThat(worked.path("answer").path("given").toString())
        .contains("80 kg")
        .contains("176.4 lb");
  }

  @Test
  void shouldRefuseAWrongUnitAWrongDecimalAndAnUnusualWeightEachWithWhatToDo() throws Exception {
    assertThat(first(lipid("A1", weight("80", "cm"))))
        .contains("can't be in this unit; choose kg or lb");
    assertThat(first(lipid("A1", weight("7,5", "kg")))).contains("has a comma");
    assertThat(first(lipid("A1", weight(".8", "kg")))).contains("zero before the point");
    JsonNode slipped = lipid("A1", weight("8", "kg"));
    assertThat(slipped.path("answer").path("answer").asText()).isEqualTo("asked-again");
    assertThat(first(slipped)).contains("unusual at 40 years");
    JsonNode both = lipid("A1", "");
    assertThat(both.path("answer").path("reasons")).hasSize(2);
  }

  @Test
  void shouldRefuseFactsOfAnotherCaseAndOfTheCaseThatWasHereBeforeASwap() throws Exception {
    assertThat(first(lipid("A2", weight("80", "kg")))).contains("those of another case");
    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    swap(desk, "swap-1");
    assertThat(first(lipid("A1", weight("80", "kg")))).contains("those of another case");
    assertThat(lipid("A2", weight("80", "kg")).path("answer").path("answer").asText())
        .isEqualTo("worked");
    swap(desk, "swap-2");
  }

  @Test
  void shouldWorkFiguresForTheNextCaseOnceItIsSetUp() throws Exception {
    assertThat(first(inThree("3.2"))).contains("those of another case");
    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    tell(desk, "open-1", "{\"type\":\"open-morning\"}");
    tell(desk, "go-1", "{\"type\":\"reach\",\"caseId\":\"A3\",\"step\":\"incision\"}");
    tell(desk, "next-1", "{\"type\":\"set-up-next\",\"room\":\"3\",\"like\":\"A3\"}");
    for (String here : List.of("3.2", "A3")) {
      assertThat(inThree(here).path("answer").path("answer").asText()).isEqualTo("worked");
    }
    assertThat(first(inThree("A2"))).contains("those of another case");
    tell(
        desk,
        "touch-1",
        "{\"type\":\"fault\",\"item\":\"case:3.2/machine.bag\",\"what\":\"torn\"}");
    tell(
        desk,
        "next-2",
        "{\"type\":\"set-up-next\",\"room\":\"3\",\"like\":\"A3\",\"after\":\"3.2\"}");
    // One screen begins the third while another is still at the second, or at the first.
    for (String here : List.of("3.3", "3.2", "A3")) {
      assertThat(inThree(here).path("answer").path("answer").asText()).isEqualTo("worked");
    }
  }

  private JsonNode inThree(String caseId) throws Exception {
    String asked = LIPID.formatted(caseId, weight("80", "kg"));
    return post("/api/bedside/work", "application/json", asked.replace("\"1\"", "\"3\""));
  }

  private static void tell(TestScreen desk, String id, String command) throws Exception {
    desk.sendText(
        "{\"m\":\"send\",\"id\":\"%s\",\"touchedAt\":0,\"offset\":0,\"command\":%s}"
            .formatted(id, command));
    ServerMessage.Answer answer =
        desk.await(ServerMessage.Answer.class, a -> a.id().value().equals(id));
    assertThat(answer.status()).as(answer.words()).isEqualTo("done");
  }

  private static void swap(TestScreen desk, String id) throws Exception {
    desk.sendText(
        "{\"m\":\"send\",\"id\":\""
            + id
            + "\",\"touchedAt\":0,\"offset\":0,\"seen\":1000,\"command\":"
            + "{\"type\":\"swap-cases\",\"one\":\"A1\",\"other\":\"A2\"}}");
    ServerMessage.Answer answer =
        desk.await(ServerMessage.Answer.class, a -> a.id().value().equals(id));
    assertThat(answer.status()).as(answer.words()).isEqualTo("done");
  }

  @Test
  void shouldSayWhatIsWrongWithAQuestionThatCanNotBeAnswered() throws Exception {
    String work = "/api/bedside/work";
    assertThat(post(work, "application/json", "null").path("status").asInt()).isEqualTo(400);
    assertThat(post(work, "application/json", "{\"figures\":1}").path("detail").asText())
        .contains("field");
    assertThat(lipid("", "").path("status").asInt()).isEqualTo(400);
    assertThat(lipid("A1", "\"age\":null").path("detail").asText()).contains("no text");
    JsonNode room =
        post(work, "application/json", LIPID.formatted("A1", "").replace("\"1\"", "\"99\""));
    assertThat(room.path("detail").asText()).contains("no case in this room");
  }

  @Test
  void shouldBeOffAtOnceWhenThePharmacyTakesAFigureBackAndOnAgainWhenItReleasesIt()
      throws Exception {
    Path site = folder.resolve("site.json");
    String released = Files.readString(site);
    try {
      Files.writeString(site, ReleaseWriter.write(released, List.of()));
      JsonNode off = lipid("A1", weight("80", "kg"));
      assertThat(off.path("answer").path("answer").asText()).isEqualTo("off");
      Files.writeString(site, "{");
      JsonNode broken = lipid("A1", weight("80", "kg"));
      assertThat(broken.path("status").asInt()).isEqualTo(503);
      assertThat(broken.path("words").asText() + broken.path("detail").asText())
          .contains("All bedside figures are off");
    } finally {
      Files.writeString(site, released);
    }
    assertThat(lipid("A1", weight("80", "kg")).path("answer").path("answer").asText())
        .isEqualTo("worked");
  }

  @Test
  void shouldKeepNothingOfWhatWasEntered() throws Exception {
    lipid("A1", weight("83.25", "kg"));
    try (var files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        assertThat(
                new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1))
            .as(file.toString())
            .doesNotContain("83.25");
      }
    }
  }
}
