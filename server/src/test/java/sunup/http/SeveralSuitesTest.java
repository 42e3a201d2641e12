package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Future;
import io.vertx.core.Vertx;
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
import sunup.codec.Json;
import sunup.intake.SiteFile;
import sunup.live.fake.TestScreen;
import sunup.live.fake.TickingClock;
import sunup.wire.ClientMessage;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/** One server for the suites of several site files. */
class SeveralSuitesTest {
  private static final String CSV =
      """
      room,start,technique,size,options,procedure,service,surgeon,age_group,case
      1,07:30,general,adult,,Knee,orthopaedics,surgeon-1,,c1
      """;

  @TempDir Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final HttpClient http =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
  private SunupServer server;

  @BeforeEach
  void start() throws Exception {
    server = await(SunupServer.start(vertx, options("main", "east")));
  }

  @AfterEach
  void end() throws Exception {
    if (server != null) {
      await(server.close());
    }
    await(vertx.close());
  }

  private ServerOptions options(String... suites) throws Exception {
    List<Path> files = new ArrayList<>();
    for (String suite : suites) {
      Path file = folder.resolve("site-" + files.size() + ".json");
      String text = SiteFile.standardText();
      assertThat(text).contains("\"suite\": \"main\"");
      Files.writeString(file, text.replace("\"suite\": \"main\"", "\"suite\": \"" + suite + "\""));
      files.add(file);
    }
    return ServerOptions.of(folder.resolve("data"), files, 0, new TickingClock());
  }

  private static <T> T await(Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private HttpResponse<String> send(HttpRequest.Builder request, String path) throws Exception {
    URI at = URI.create("http://127.0.0.1:" + server.port() + path);
    return http.send(request.uri(at).build(), HttpResponse.BodyHandlers.ofString());
  }

  private JsonNode post(String path) throws Exception {
    HttpResponse<String> got =
        send(
            HttpRequest.newBuilder()
                .header("Content-Type", "text/csv")
                .POST(HttpRequest.BodyPublishers.ofString(CSV)),
            path);
    assertThat(got.statusCode()).as(got.body()).isEqualTo(200);
    return Json.mapper().readTree(got.body());
  }

  private TestScreen screen(String page, String suite) throws Exception {
    ClientMessage.Hello hello =
        new ClientMessage.Hello(page + "-1", page, null, null, null, null, suite);
    return TestScreen.connect(vertx, server.port()).send(hello);
  }

  private static String phase(ServerMessage.View view) {
    return ((Part.SuitePart) view.parts().get(0)).phase();
  }

  @Test
  void shouldTakeAListForTheSuiteNamedAndShowItThereOnly() throws Exception {
    TestScreen first = screen("wall", null);
    TestScreen east = screen("wall", "east");
    assertThat(phase(first.await(ServerMessage.View.class, v -> true))).isEqualTo("none");
    assertThat(east.await(ServerMessage.View.class, v -> true).morning().suite().value())
        .isEqualTo("east");

    String hash = post("/api/intake/preview?suite=east").path("hash").asText();
    post("/api/intake/take?suite=east&hash=" + hash);

    east.await(
        ServerMessage.Frame.class,
        f -> f.set().stream().anyMatch(p -> p instanceof Part.RoomPart r && r.room().equals("1")));
    TestScreen later = screen("desk", null);
    ServerMessage.View other = later.await(ServerMessage.View.class, v -> true);
    assertThat(other.morning().suite().value()).isEqualTo("main");
    assertThat(phase(other)).isEqualTo("none");
    assertThat(first.parts()).doesNotContainKey("room/1");
  }

  @Test
  void shouldTellItsSuitesAndRefuseOthersByName() throws Exception {
    JsonNode suites =
        Json.mapper().readTree(send(HttpRequest.newBuilder(), "/api/suites").body()).path("suites");
    assertThat(suites).extracting(s -> s.path("suite").asText()).containsExactly("main", "east");

    HttpResponse<String> none = send(HttpRequest.newBuilder(), "/api/site?suite=north");
    assertThat(none.statusCode()).isEqualTo(404);
    assertThat(none.body()).contains("main, east");

    ServerMessage.Trouble trouble =
        screen("wall", "north").await(ServerMessage.Trouble.class, t -> true);
    assertThat(trouble.code()).isEqualTo("unknown-suite");
  }

  @Test
  void shouldNotStartWithOneSuiteInTwoFiles() {
    assertThatThrownBy(() -> await(SunupServer.start(vertx, options("west", "west"))))
        .hasRootCauseMessage(
            "The suite west is in "
                + folder.resolve("site-0.json")
                + " and in "
                + folder.resolve("site-1.json")
                + ": rename one.");
  }
}
