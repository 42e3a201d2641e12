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
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.codec.Json;
import sunup.intake.SiteFile;
import sunup.live.fake.TestScreen;
import sunup.live.fake.TickingClock;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** A suite's sheets over HTTP: draft, look, publish; and what a morning is planned with. */
class SheetsApiTest {
  private static final String SLOWER =
      "{\"does\":\"change\",\"sheet\":\"general\",\"key\":\"airway.tubes\","
          + "\"fields\":{\"hands\":{\"usual\":4,\"oneInTen\":7}}}";
  private static final String CSV = "room,start,technique,options,case\n1,07:30,general,,A1\n";
  private static final String BOTH = CSV + "2,07:45,general,block,A2\n";

  @TempDir private Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final HttpClient http =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
  private SunupServer server;

  private record Got(int status, JsonNode body) {
    String words() {
      return body.path("words").asText();
    }
  }

  @BeforeEach
  void start() throws Exception {
    Path site = folder.resolve("site.json");
    Files.writeString(
        site,
        SiteFile.standardText().replaceFirst("\\{", "{\"english\": \"american\", \"clock\": 12,"));
    server =
        await(
            SunupServer.start(
                vertx, ServerOptions.of(folder.resolve("data"), site, 0, new TickingClock())));
  }

  @AfterEach
  void end() throws Exception {
    await(server.close());
    await(vertx.close());
  }

  private static <T> T await(Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private Got send(HttpRequest.Builder request, String path) throws Exception {
    URI to = URI.create("http://127.0.0.1:" + server.port() + path);
    HttpResponse<String> got =
        http.send(request.uri(to).build(), HttpResponse.BodyHandlers.ofString());
    return new Got(got.statusCode(), Json.mapper().readTree(got.body()));
  }

  private Got post(String path, String type, String body) throws Exception {
    return send(
        HttpRequest.newBuilder()
            .header("Content-Type", type)
            .POST(HttpRequest.BodyPublishers.ofString(body)),
        path);
  }

  private Got get(String path) throws Exception {
    return send(HttpRequest.newBuilder().GET(), path);
  }

  private Got check(int on, String sheet, String... edits) throws Exception {
    return post(
        "/api/sheets/check",
        "application/json",
        "{\"on\":"
            + on
            + ",\"sheet\":\""
            + sheet
            + "\",\"edits\":["
            + String.join(",", edits)
            + "]}");
  }

  private Got publish(int on, String draft, String... edits) throws Exception {
    return post(
        "/api/sheets/publish",
        "application/json",
        "{\"on\":"
            + on
            + ",\"draft\":\""
            + draft
            + "\",\"note\":\"tubes take longer here\","
            + "\"edits\":["
            + String.join(",", edits)
            + "]}");
  }

  private String today() throws Exception {
    return get("/api/site").body().path("date").asText();
  }

  /** Takes a list for a date and tells what the preview said. */
  private JsonNode take(String date, String csv) throws Exception {
    Got preview = post("/api/intake/preview?date=" + date, "text/csv", csv);
    assertThat(preview.body().path("problems")).isEmpty();
    String hash = preview.body().path("hash").asText();
    Got taken = post("/api/intake/take?date=" + date + "&hash=" + hash, "text/csv", csv);
    assertThat(taken.status()).as(taken.words()).isEqualTo(200);
    return preview.body();
  }

  private void open(String date) throws Exception {
    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    desk.await(ServerMessage.View.class, v -> true);
    CommandId id = new CommandId("open-1");
    MorningId morning = new MorningId(new SuiteId("main"), LocalDate.parse(date));
    desk.send(new ClientMessage.Send(id, morning, null, 0, 0, null, new Command.OpenMorning()));
    desk.await(ServerMessage.Answer.class, a -> a.id().equals(id) && a.status().equals("done"));
    desk.close();
  }

  private static List<String> texts(JsonNode list) {
    List<String> all = new ArrayList<>();
    list.forEach(one -> all.add(one.asText()));
    return all;
  }

  @Test
  void shouldShowMinutesAndTheNextCasesBeforeAnythingIsPublished() throws Exception {
    take(today(), BOTH);

    JsonNode sheets = get("/api/sheets").body();
    assertThat(sheets.path("edition").asInt()).isZero();
    assertThat(sheets.at("/style/english").asText()).isEqualTo("american");
    assertThat(sheets.at("/style/clock").asInt()).isEqualTo(12);
    assertThat(sheets.path("sheets")).hasSize(22);
    JsonNode seen = check(0, "general", SLOWER).body();

    assertThat(seen.path("ready").asBoolean()).isTrue();
    assertThat(texts(seen.path("changes")))
        .containsExactly("general, airway.tubes: hands 2 (3.5), now 4 (7)");
    double before = seen.at("/sheet/before/all/handsUsual").asDouble();
    assertThat(seen.at("/sheet/after/all/handsUsual").asDouble() - before).isEqualTo(2);
    assertThat(seen.path("coming")).hasSize(2);
    JsonNode first = seen.at("/coming/0");
    assertThat(first.path("room").asText()).isEqualTo("1");
    assertThat(first.path("start").asText()).isEqualTo("07:30");
    assertThat(first.path("minutes").asDouble()).isEqualTo(2);
    assertThat(first.path("changed").get(0).asText()).endsWith("hands 2 (3.5), now 4 (7)");
    assertThat(get("/api/sheets").body().path("edition").asInt()).isZero();
  }

  @Test
  void shouldRefuseToPublishWithoutSuctionAndSayWhereAndWhy() throws Exception {
    String gone = "{\"does\":\"leave-out\",\"sheet\":\"general\",\"key\":\"suction.strong\"}";

    JsonNode seen = check(0, "general", gone).body();
    Got refused = publish(0, "draft-0001", gone);

    assertThat(seen.path("ready").asBoolean()).isFalse();
    assertThat(seen.path("problems").toString()).contains("suction may never be left out");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.words()).contains("Nothing was published", "suction.strong");
    assertThat(get("/api/sheets").body().path("editions")).isEmpty();
  }

  @Test
  void shouldRefuseTheSecondDeskWithWhatChangedAndTakeItsDraftOnTheNewEdition() throws Exception {
    String words =
        "{\"does\":\"change\",\"sheet\":\"general\",\"key\":\"airway.tubes\","
            + "\"fields\":{\"desk\":\"tubes laid out\"}}";

    Got first = publish(0, "draft-0001", SLOWER);
    Got again = publish(0, "draft-0001", SLOWER);
    Got second = publish(0, "draft-0002", words);
    JsonNode seen = check(0, "general", words).body();
    Got after = publish(1, "draft-0002", words);

    assertThat(first.body().path("edition").asInt()).as(first.words()).isEqualTo(1);
    assertThat(again.body().path("edition").asInt()).isEqualTo(1);
    assertThat(second.status()).isEqualTo(409);
    assertThat(second.words())
        .contains("edition 1 was published meanwhile")
        .contains("general, airway.tubes: hands 2 (3.5), now 4 (7)")
        .contains("Both are at work on general/airway.tubes");
    assertThat(seen.path("ready").asBoolean()).isFalse();
    assertThat(texts(seen.at("/since/both"))).containsExactly("general/airway.tubes");
    assertThat(after.body().path("edition").asInt()).as(after.words()).isEqualTo(2);
    JsonNode newest = get("/api/sheets").body().at("/editions/0");
    assertThat(newest.path("note").asText()).isEqualTo("tubes take longer here");
    assertThat(newest.path("role").asText()).isEqualTo("desk");
    assertThat(newest.path("screen").asText()).isEqualTo("desk-sheets");
  }

  @Test
  void shouldKeepAnOpenMorningsEditionAndPlanTheNextOneWithTheNewest() throws Exception {
    String today = today();
    String tomorrow = LocalDate.parse(today).plusDays(1).toString();
    take(today, CSV);
    take(tomorrow, CSV);
    open(today);
    publish(0, "draft-0001", SLOWER);

    Got same = post("/api/intake/preview?date=" + today, "text/csv", CSV);
    take(today, BOTH);
    Got draft = post("/api/intake/preview?date=" + tomorrow, "text/csv", CSV);
    take(tomorrow, CSV);
    JsonNode coming = check(1, "general").body().path("coming");

    assertThat(same.body().path("changed")).isEmpty();
    assertThat(draft.body().at("/changed/0/changes/0").asText())
        .isEqualTo("sheet has another edition");
    assertThat(coming).hasSize(3);
    assertThat(coming.get(0).path("open").asBoolean()).isTrue();
    assertThat(coming.get(0).path("keeps").asInt()).isZero();
    assertThat(coming.get(1).path("keeps").asInt()).isZero();
    assertThat(coming.get(2).path("open").asBoolean()).isFalse();
    assertThat(coming.get(2).path("keeps").asInt()).isEqualTo(1);
  }

  @Test
  void shouldGoBackToAnEarlierEditionByPublishingItAgain() throws Exception {
    publish(0, "draft-0001", SLOWER);
    Got back = publish(1, "draft-0002", "{\"does\":\"as-in\",\"edition\":0}");

    assertThat(back.body().path("edition").asInt()).as(back.words()).isEqualTo(2);
    JsonNode editions = get("/api/sheets").body().path("editions");
    assertThat(editions.get(0).path("changes").get(0).asText())
        .isEqualTo("general, airway.tubes: hands 4 (7), now 2 (3.5)");
    Got nothing = publish(2, "draft-0003", "{\"does\":\"as-in\",\"edition\":2}");
    assertThat(nothing.status()).isEqualTo(422);
    assertThat(nothing.words()).contains("changes nothing");
  }

  @Test
  void shouldSayWhatIsWrongWithARequest() throws Exception {
    assertThat(check(7, "general").status()).isEqualTo(404);
    assertThat(check(0, "generel").words()).contains("no sheet of this name");
    assertThat(check(0, "general", "{\"does\":\"burn\"}").status()).isEqualTo(400);
    assertThat(check(0, "general", "null").status()).isEqualTo(400);
    assertThat(publish(0, "x", SLOWER).words()).contains("draft is an id");
    assertThat(post("/api/sheets/check", "text/plain", "{}").status()).isEqualTo(415);
    String perfusion =
        "{\"does\":\"change\",\"sheet\":\"general\",\"key\":\"airway.tubes\","
            + "\"fields\":{\"place\":\"workshop\"}}";
    take(today(), CSV);
    assertThat(check(0, "general", perfusion).body().at("/coming/0/problems/0/message").asText())
        .contains("room 1 would need place workshop");
  }

  @Test
  void shouldNotLetASheetGoThatBookedCasesNeedAndNameThem() throws Exception {
    String tomorrow = LocalDate.parse(today()).plusDays(1).toString();
    String gone = "{\"does\":\"remove-sheet\",\"sheet\":\"NAME\"}";
    take(tomorrow, BOTH);
    String needed = gone.replace("NAME", "block");

    JsonNode seen = check(0, "general", needed).body();
    Got refused = publish(0, "draft-0001", needed);
    Got named = publish(0, "draft-0002", gone.replace("NAME", "epidural"));
    Got free = publish(0, "draft-0003", gone.replace("NAME", "mri"));

    assertThat(seen.path("problems").toString())
        .contains("can't go: " + tomorrow + " room 2, 07:45 is booked with it");
    assertThat(refused.status()).isEqualTo(422);
    // The site's drug list says which cases each is for.
    assertThat(named.words()).contains("site.json, drugs").contains("'epidural' is not known");
    assertThat(free.status()).as(free.words()).isEqualTo(200);
  }

  @Test
  void shouldComeBackAfterTheBoardWasStartedAnew() throws Exception {
    publish(0, "draft-0001", SLOWER);
    await(server.close());
    server =
        await(
            SunupServer.start(
                vertx,
                ServerOptions.of(
                    folder.resolve("data"), folder.resolve("site.json"), 0, new TickingClock())));

    assertThat(get("/api/sheets").body().path("edition").asInt()).isEqualTo(1);
    take(today(), CSV);
    assertThat(check(1, "general").body().at("/coming/0/keeps").asInt()).isEqualTo(1);
  }
}
