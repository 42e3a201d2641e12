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
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.codec.Json;
import sunup.intake.SiteFile;
import sunup.live.fake.AheadClock;
import sunup.live.fake.TestScreen;
import sunup.live.fake.Waiting;
import sunup.review.learn.NextOpening;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;
import sunup.sheets.Sheets;
import sunup.wire.LearnedTime;
import sunup.wire.Part;
import sunup.wire.Part.LearnedPart;
import sunup.wire.ServerMessage;

/** What one morning teaches and the next one goes by, from the journal of a real server. */
class LearnedMorningTest {
  private static final long MINUTE = 60_000;
  private static final long DAY_MS = 24 * 60 * MINUTE;
  private static final int ROOMS = 7;

  @TempDir private Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final HttpClient http = HttpClient.newHttpClient();
  private final AheadClock clock = new AheadClock();
  private SunupServer server;
  private int sent;

  private static <T> T await(Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private void start(String site) throws Exception {
    Files.writeString(folder.resolve("site.json"), site);
    server =
        await(
            SunupServer.start(
                vertx,
                ServerOptions.of(folder.resolve("data"), folder.resolve("site.json"), 0, clock)));
  }

  private JsonNode send(HttpRequest.Builder request, String path) throws Exception {
    URI to = URI.create("http://127.0.0.1:" + server.port() + path);
    return Json.mapper()
        .readTree(http.send(request.uri(to).build(), HttpResponse.BodyHandlers.ofString()).body());
  }

  private JsonNode learned() {
    try {
      return send(HttpRequest.newBuilder().GET(), "/api/review/learned");
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  private void command(TestScreen screen, String person, String command) throws Exception {
    String id = "c-" + ++sent;
    LocalDate today =
        LocalDate.ofInstant(Instant.ofEpochMilli(clock.morningMs()), ZoneId.of("Europe/Lisbon"));
    String signed = person == null ? "" : ",\"person\":\"" + person + "\"";
    screen.sendText(
        ("{\"m\":\"send\",\"id\":\"%s\",\"morning\":\"main/%s\",\"touchedAt\":%d,\"offset\":0,"
                + "\"seen\":100000%s,\"command\":%s}")
            .formatted(id, today, clock.morningMs(), signed, command));
    ServerMessage.Answer answer =
        screen.await(ServerMessage.Answer.class, a -> a.id().value().equals(id));
    assertThat(answer.status()).as(command + " " + answer.words()).isEqualTo("done");
  }

  private TestScreen open() throws Exception {
    StringBuilder csv = new StringBuilder("case,room,start,technique\n");
    for (int room = 1; room <= ROOMS; room++) {
      csv.append("C").append(room).append(",").append(room).append(",07:30,general\n");
    }
    HttpRequest.Builder list =
        HttpRequest.newBuilder()
            .header("Content-Type", "text/csv")
            .POST(HttpRequest.BodyPublishers.ofString(csv.toString()));
    String hash = send(list, "/api/intake/preview").path("hash").asText();
    send(list, "/api/intake/take?hash=" + hash);
    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    command(desk, null, "{\"type\":\"open-morning\"}");
    return desk;
  }

  /** Work at the machine with nothing before it, of which only its hands take time. */
  private static SheetItem plain() throws Exception {
    return Sheets.standard().compose("general", List.of()).items().stream()
        .filter(i -> i.section().isSetUp() && i.belongs() == SheetItem.Belongs.ROOM)
        .filter(i -> i.evidence().kind() == EvidenceRule.Kind.TOUCH && !i.evidence().witness())
        .filter(i -> i.after().isEmpty() && i.waits() == null && i.extra() == null)
        .filter(i -> i.hands().usual() >= 1 && i.place() == null && i.evidence().undo() == null)
        .findFirst()
        .orElseThrow();
  }

  /** Every room takes twice the usual time for the item. */
  private void teach(TestScreen desk, SheetItem item) throws Exception {
    TestScreen station = TestScreen.connect(vertx, server.port()).hello("station-1", "station");
    for (int room = 1; room <= ROOMS; room++) {
      String begin = "{\"type\":\"begin\",\"item\":\"room:%d/%s\"}".formatted(room, item.key());
      command(station, "anaesthetist-" + room, begin);
    }
    clock.goOn(Math.round(2 * item.hands().usual() * MINUTE));
    for (int room = 1; room <= ROOMS; room++) {
      String good =
          "{\"type\":\"good\",\"item\":\"room:%d/%s\",\"evidence\":{\"kind\":\"touch\"}}"
              .formatted(room, item.key());
      command(station, "anaesthetist-" + room, good);
    }
    for (int room = 1; room <= ROOMS; room++) {
      for (String step : List.of("wheels-in", "induction")) {
        command(
            desk,
            null,
            "{\"type\":\"reach\",\"caseId\":\"C%d\",\"step\":\"%s\"}".formatted(room, step));
      }
    }
    command(desk, null, "{\"type\":\"close-morning\"}");
    server.reviewNow();
    Waiting.until(() -> learned().path("mornings").asInt() == 1);
    Waiting.until(() -> !learned().path("next").path("items").isEmpty());
  }

  /** The desk of a screen that has just come, once it has the morning as it is open now. */
  private TestScreen desk() throws Exception {
    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-2", "desk");
    Waiting.until(
        () ->
            desk.parts().get("suite") instanceof Part.SuitePart suite
                && suite.phase().equals("open"));
    return desk;
  }

  @Test
  void shouldGoByWhatTheMorningBeforeTaughtAndStillDoSoWithoutTheArchive() throws Exception {
    String site = SiteFile.standardText();
    start(site);
    try {
      SheetItem item = plain();
      TestScreen first = open();
      assertThat(first.parts()).as("nothing is learned yet").doesNotContainKey("learned");
      teach(first, item);
      assertThat(learned().path("used").asBoolean()).isTrue();

      clock.goOn(DAY_MS);
      open();
      Part shown = desk().parts().get("learned");
      assertThat(shown).isInstanceOf(LearnedPart.class);
      LearnedPart part = (LearnedPart) shown;
      assertThat(part.mornings()).isEqualTo(1);
      LearnedTime time =
          part.times().stream().filter(t -> t.item().equals(item.desk())).findFirst().orElseThrow();
      assertThat(time.measured()).isEqualTo(ROOMS);
      assertThat(time.sheetUsual()).isEqualTo(item.hands().usual());
      assertThat(time.usual())
          .as("towards twice the time, a quarter at the most")
          .isGreaterThan(item.hands().usual())
          .isLessThan(item.hands().usual() * NextOpening.STEP_MOST + 0.006);

      await(server.close());
      Files.delete(folder.resolve("data").resolve("review.duckdb"));
      start(site.replaceFirst("\\{", "{\"learnDurations\": false,"));
      assertThat(desk().parts().get("learned")).as("of the journal alone").isEqualTo(part);

      server.reviewNow();
      Waiting.until(() -> learned().path("mornings").asInt() == 1);
      assertThat(learned().path("used").asBoolean()).isFalse();
      assertThat(learned().path("next").path("items").isEmpty()).isFalse();
      clock.goOn(DAY_MS);
      open();
      assertThat(desk().parts()).as("the site goes by its sheets").doesNotContainKey("learned");
    } finally {
      await(server.close());
      await(vertx.close());
    }
  }
}
