package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Future;
import io.vertx.core.Vertx;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.codec.Json;
import sunup.intake.SiteFile;
import sunup.live.fake.AheadClock;
import sunup.live.fake.TestScreen;
import sunup.wire.ServerMessage;

/** The machine's readings of eight mornings, from the journal of a real server. */
class ReadingsApiTest {
  private static final long DAY_MS = 86_400_000;
  private static final String CSV = "room,start,technique\n1,07:30,general\n2,07:30,general\n";

  @TempDir private Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final HttpClient http = HttpClient.newHttpClient();
  private final AheadClock clock = new AheadClock();
  private SunupServer server;
  private int sent;

  private static <T> T await(Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private JsonNode send(HttpRequest.Builder request, String path) throws Exception {
    URI to = URI.create("http://127.0.0.1:" + server.port() + path);
    return Json.mapper()
        .readTree(http.send(request.uri(to).build(), HttpResponse.BodyHandlers.ofString()).body());
  }

  private JsonNode readings(String query) throws Exception {
    return send(HttpRequest.newBuilder().GET(), "/api/readings" + query).path("series");
  }

  private void command(String page, String command) throws Exception {
    TestScreen screen = TestScreen.connect(vertx, server.port()).hello(page + "-1", page);
    String id = "c-" + ++sent;
    LocalDate today =
        LocalDate.ofInstant(Instant.ofEpochMilli(clock.morningMs()), ZoneId.of("Europe/Lisbon"));
    String signed = page.equals("station") ? ",\"person\":\"technician-1\"" : "";
    screen.sendText(
        ("{\"m\":\"send\",\"id\":\"%s\",\"morning\":\"main/%s\",\"touchedAt\":%d,\"offset\":0,"
                + "\"seen\":1000%s,\"command\":%s}")
            .formatted(id, today, clock.morningMs(), signed, command));
    ServerMessage.Answer answer =
        screen.await(ServerMessage.Answer.class, a -> a.id().value().equals(id));
    assertThat(answer.status()).as(command + " " + answer.words()).isEqualTo("done");
  }

  private void open() throws Exception {
    HttpRequest.Builder list =
        HttpRequest.newBuilder()
            .header("Content-Type", "text/csv")
            .POST(HttpRequest.BodyPublishers.ofString(CSV));
    String hash = send(list, "/api/intake/preview").path("hash").asText();
    send(list, "/api/intake/take?hash=" + hash);
    command("desk", "{\"type\":\"open-morning\"}");
  }

  private void read(String room, int psi) throws Exception {
    command(
        "station",
        ("{\"type\":\"good\",\"item\":\"room:%s/machine.cylinder\",\"evidence\":"
                + "{\"kind\":\"number\",\"value\":%d,\"unit\":\"psi\",\"undone\":true}}")
            .formatted(room, psi));
  }

  @Test
  void shouldShowEarlierReadingsOnlyAfterTodaysAndTellTheOneThatFallsSlowly() throws Exception {
    Files.writeString(folder.resolve("site.json"), SiteFile.standardText());
    server =
        await(
            SunupServer.start(
                vertx,
                ServerOptions.of(folder.resolve("data"), folder.resolve("site.json"), 0, clock)));
    try {
      int[] leaking = {1900, 1870, 1850, 1820, 1790, 1760, 1740};
      for (int psi : leaking) {
        open();
        read("1", psi);
        read("2", 1900 + psi % 20);
        command("desk", "{\"type\":\"close-morning\"}");
        clock.goOn(DAY_MS);
      }
      open();
      assertThat(readings("?room=1")).as("today's is not entered").isEmpty();
      assertThat(readings("")).isEmpty();
      read("1", 1710);
      read("2", 1900);

      JsonNode cylinder = readings("?room=1").path(0);
      assertThat(cylinder.path("item").asText()).isEqualTo("machine.cylinder");
      assertThat(cylinder.path("days")).hasSize(8);
      assertThat(cylinder.path("days").path(0).path("value").asInt()).isEqualTo(1900);
      assertThat(cylinder.path("days").path(7).path("value").asInt()).isEqualTo(1710);
      assertThat(cylinder.path("slow").path("perMorning").asDouble()).isBetween(-30.0, -24.0);
      assertThat(readings("?room=2").path(0).has("slow")).isFalse();
      assertThat(readings("")).hasSize(1);
      assertThat(readings("").path(0).path("room").asText()).isEqualTo("1");
    } finally {
      await(server.close());
      await(vertx.close());
    }
  }
}
