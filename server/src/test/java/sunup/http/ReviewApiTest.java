package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Vertx;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.archive.ForecastLog;
import sunup.board.MorningId;
import sunup.codec.Json;
import sunup.intake.SiteFile;
import sunup.journal.SideDatabase;
import sunup.live.fake.ManualClock;
import sunup.live.fake.TestScreen;
import sunup.live.fake.TickingClock;
import sunup.live.fake.Waiting;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.NotesDue;
import sunup.wire.ServerMessage;

/** The review over HTTP: history that a site brings, and mornings that were closed here. */
class ReviewApiTest {
  @TempDir private Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final HttpClient client = HttpClient.newHttpClient();
  private SunupServer server;

  @BeforeEach
  void start() throws Exception {
    Files.writeString(folder.resolve("site.json"), SiteFile.standardText());
    server =
        await(
            SunupServer.start(
                vertx,
                ServerOptions.of(
                    folder.resolve("data"), folder.resolve("site.json"), 0, new TickingClock())));
  }

  @AfterEach
  void end() throws Exception {
    await(server.close());
    await(vertx.close());
  }

  private static <T> T await(io.vertx.core.Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private HttpResponse<String> ask(String path, String csv) throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + path));
    if (csv != null) {
      request.header("Content-Type", "text/csv").POST(HttpRequest.BodyPublishers.ofString(csv));
    }
    return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  private JsonNode get(String path) throws Exception {
    HttpResponse<String> got = ask("/api/review/" + path, null);
    assertThat(got.statusCode()).as(got.body()).isEqualTo(200);
    return Json.mapper().readTree(got.body());
  }

  private int cases() {
    try {
      return get("choices").path("cases").asInt();
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  /** Two rooms on working days; room 2 is late every Monday. */
  private static String history() {
    return history(40);
  }

  private static String history(int days) {
    StringBuilder csv = new StringBuilder("date,room,booked,started,service,reason\n");
    LocalDate date = LocalDate.of(2025, 9, 1);
    for (int d = 0; d < days; d++) {
      boolean monday = date.getDayOfWeek().getValue() == 1;
      csv.append(date).append(",1,07:30,07:30,=bones,\n");
      csv.append(date).append(",2,07:30,").append(monday ? "07:52" : "07:31");
      csv.append(",\"eyes, left\",").append(monday ? "surgeon" : "").append('\n');
      date = date.plusDays(date.getDayOfWeek().getValue() == 5 ? 3 : 1);
    }
    return csv.toString();
  }

  @Test
  void shouldAnswerEveryQuestionOfThePageFromHistory() throws Exception {
    JsonNode taken = Json.mapper().readTree(ask("/api/review/history", history()).body());
    assertThat(taken.path("rows").asInt()).as(taken.toString()).isEqualTo(80);

    JsonNode measures = get("measures?price=12.50&currency=EUR&source=finance");
    JsonNode figures = measures.path("measures").path("figures");
    assertThat(figures.path("onTime").path("n").asInt()).isEqualTo(80);
    assertThat(figures.path("onTime").path("interval").path("upper").asDouble()).isPositive();
    assertThat(figures.path("minutes").path("total").asDouble()).isEqualTo(8 * 22 + 32);
    JsonNode late = figures.path("minutes").path("intervals");
    assertThat(late.path("meanOverAll").path("lower").asDouble()).isBetween(0.1, 2.6);
    assertThat(late.path("meanOverAll").path("upper").asDouble()).isBetween(2.6, 8.0);
    assertThat(late.path("median").path("upper").asDouble()).isEqualTo(1);
    assertThat(late.path("ninth").path("upper").asDouble()).isEqualTo(22);
    assertThat(late.has("perMorning") && late.has("meanOverLate")).isTrue();
    assertThat(measures.path("cost").path("amount").asDouble()).isEqualTo(208 * 12.5);
    assertThat(get("shares?period=week").path("chart").path("points")).hasSize(8);
    assertThat(get("minutes?period=four-weeks").path("chart").path("points").size()).isPositive();
    assertThat(get("groups?split=weekday").path("groups")).hasSize(5);
    assertThat(get("rooms").path("cells")).hasSize(10);
    assertThat(get("lateness?room=2").path("bins").size()).isPositive();
    assertThat(get("causes?by=reported").path("causes").path("rows").get(0).path("label").asText())
        .isEqualTo("surgeon");
    JsonNode days = get("causes-apart?split=weekday&by=reported").path("groups");
    assertThat(days).hasSize(5);
    assertThat(days.get(0).path("name").asText()).isEqualTo("1 Monday");
    assertThat(days.get(0).path("starts").asInt()).isEqualTo(16);
    assertThat(get("causes-apart?split=weekday&weekday=friday").path("groups")).hasSize(1);
    String mondays = "by=reported&room=2&weekday=monday";
    assertThat(get("causes?" + mondays).path("causes").toString()).isEqualTo("{\"starts\":8}");
    assertThat(get("causes-apart?split=weekday&" + mondays).path("groups").get(0).toString())
        .isEqualTo("{\"name\":\"1 Monday\",\"starts\":8}");
    assertThat(get("choices").path("rooms")).hasSize(2);
    assertThat(get("trial?before=20").path("forecasts").asInt()).isZero();
    JsonNode rooms = get("compare?split=room").path("comparisons");
    assertThat(rooms.get(0).path("onTime").path("verdict").asText()).isEqualTo("DIFFERS");
    assertThat(get("compare?at=2025-09-22").path("comparisons")).hasSize(1);
    assertThat(get("measures?weekday=monday&room=2").path("measures").has("figures")).isFalse();
  }

  /** Of 130 mornings 26 are Mondays: too few for sums, enough to be dealt. */
  @Test
  void shouldCompareWeekdaysOfHalfAYear() throws Exception {
    ask("/api/review/history", history(130));
    JsonNode monday = get("compare?split=weekday").path("comparisons").get(0);
    assertThat(monday.path("first").asText()).isEqualTo("1 Monday");
    assertThat(monday.path("minutes").path("verdict").asText()).isEqualTo("DIFFERS");
    JsonNode change = get("compare?at=2026-02-16").path("comparisons").get(0);
    assertThat(change.path("minutes").path("verdict").asText()).isEqualTo("NONE_SEEN");
  }

  @Test
  void shouldExportRowsWithHarmlessCellsAndNoneOfFewStarts() throws Exception {
    ask("/api/review/history", history());
    HttpResponse<String> rows = ask("/api/review/rows?from=2025-09-01&to=2025-09-12", null);
    assertThat(rows.headers().firstValue("content-disposition").orElse("")).contains(".csv");
    assertThat(rows.body().lines()).hasSize(21);
    assertThat(rows.body()).contains(",'=bones,").contains("\"eyes, left\"");
    assertThat(ask("/api/review/rows?to=2025-09-02", null).statusCode()).isEqualTo(422);
  }

  @Test
  void shouldSayWhatIsWrongInAQuestionAndInAFile() throws Exception {
    assertThat(ask("/api/review/measures?from=yesterday", null).body()).contains("2026-11-25");
    assertThat(ask("/api/review/shares?period=year", null).body()).contains("four-weeks");
    assertThat(ask("/api/review/trial?before=21", null).statusCode()).isEqualTo(400);
    JsonNode wrong = Json.mapper().readTree(ask("/api/review/history", "date,room\n").body());
    assertThat(wrong.path("rows").asInt()).isZero();
    assertThat(wrong.path("problems").get(0).path("field").asText()).isEqualTo("booked");
  }

  /** Takes a list of two rooms that start an hour after the clock's begin. */
  private void plan() throws Exception {
    LocalTime start =
        Instant.ofEpochMilli(ManualClock.START)
            .atZone(SiteFile.standard().settings().zoneId())
            .toLocalTime()
            .plusHours(1);
    String csv = "room,start,technique\n1," + start + ",general\n2," + start + ",general\n";
    String hash =
        Json.mapper().readTree(ask("/api/intake/preview", csv).body()).path("hash").asText();
    ask("/api/intake/take?hash=" + hash, csv);
  }

  private static void done(TestScreen desk, String id, String command) throws Exception {
    desk.sendText(
        "{\"m\":\"send\",\"id\":\""
            + id
            + "\",\"touchedAt\":0,\"offset\":0,\"command\":"
            + command
            + "}");
    ServerMessage.Answer answer =
        desk.await(ServerMessage.Answer.class, a -> a.id().value().equals(id));
    assertThat(answer.status()).as(answer.words()).isEqualTo("done");
  }

  private List<ForecastNote> said() throws Exception {
    try (ForecastLog log =
        new ForecastLog(() -> SideDatabase.sqlite(folder.resolve("data"), ForecastLog.PART))) {
      LocalDate date =
          Instant.ofEpochMilli(ManualClock.START)
              .atZone(SiteFile.standard().settings().zoneId())
              .toLocalDate();
      return log.of(new MorningId(SiteFile.standard().suite(), date));
    }
  }

  @Test
  void shouldJudgeTheBoardByWhatItSaidThenAndKeepThatOnce() throws Exception {
    plan();
    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    done(desk, "open", "{\"type\":\"open-morning\"}");
    Waiting.until(() -> Files.exists(folder.resolve("data").resolve("forecasts.db")));
    await(server.close());
    List<ForecastNote> first = said();
    assertThat(first)
        .hasSize(2)
        .allMatch(n -> n.origin() == ForecastNote.Origin.LOGGED)
        .allMatch(n -> NotesDue.Key.of(n).minutesBefore() == 60)
        .allMatch(n -> n.trials() > 0 && n.start90() >= n.start50());

    start();
    desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    for (ForecastNote note : first) {
      String id = note.caseId().value();
      for (String step : List.of("wheels-in", "induction", "incision")) {
        done(
            desk,
            step + note.room().value(),
            "{\"type\":\"reach\",\"caseId\":\"" + id + "\",\"step\":\"" + step + "\"}");
      }
    }
    done(desk, "close", "{\"type\":\"close-morning\"}");
    ask("/api/review/remake", "");
    Waiting.until(() -> cases() == 2);
    assertThat(get("trial?before=60").path("forecasts").asInt()).isEqualTo(2);
    assertThat(get("trial?before=60").path("recomputed").asInt()).isZero();
    await(server.close());
    assertThat(said()).as("a new owner says nothing twice").isEqualTo(first);
    start();
  }

  @Test
  void shouldCountTheFirstCasesOfAMorningWhenItWasClosed() throws Exception {
    String csv = "room,start,technique\n1,07:30,general\n2,07:30,general\n";
    String hash =
        Json.mapper().readTree(ask("/api/intake/preview", csv).body()).path("hash").asText();
    ask("/api/intake/take?hash=" + hash, csv);
    TestScreen desk = TestScreen.connect(vertx, server.port()).hello("desk-1", "desk");
    for (String type : new String[] {"open-morning", "close-morning"}) {
      desk.sendText(
          "{\"m\":\"send\",\"id\":\""
              + type
              + "\",\"touchedAt\":0,\"offset\":0,\"command\":{\"type\":\""
              + type
              + "\"}}");
      ServerMessage.Answer answer =
          desk.await(ServerMessage.Answer.class, a -> a.id().value().equals(type));
      assertThat(answer.status()).as(answer.words()).isEqualTo("done");
    }

    ask("/api/review/remake", "");

    Waiting.until(() -> cases() == 2);
    assertThat(get("measures").path("measures").path("untold").asInt()).isEqualTo(2);
    assertThat(get("archive").path("unreadable").asInt()).isZero();
    JsonNode learned = get("learned");
    assertThat(learned.path("mornings").asInt()).isEqualTo(1);
    assertThat(learned.path("items").size()).isGreaterThan(5);
    assertThat(learned.path("items").get(0).path("weight").asText()).isEqualTo("NOTHING");
  }
}
