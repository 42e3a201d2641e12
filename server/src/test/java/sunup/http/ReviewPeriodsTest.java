package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.codec.Json;
import sunup.intake.SiteFile;
import sunup.live.fake.TickingClock;

/** Two periods beside each other, over HTTP, from a year of history with a slow winter. */
class ReviewPeriodsTest {
  @TempDir private static Path folder;
  private static final Vertx VERTX = Vertx.vertx();
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static SunupServer server;

  @BeforeAll
  static void start() throws Exception {
    Files.writeString(folder.resolve("site.json"), SiteFile.standardText());
    server =
        await(
            SunupServer.start(
                VERTX,
                ServerOptions.of(
                    folder.resolve("data"), folder.resolve("site.json"), 0, new TickingClock())));
    assertThat(ask("history", history()).statusCode()).isEqualTo(200);
  }

  @AfterAll
  static void end() throws Exception {
    await(server.close());
    await(VERTX.close());
  }

  private static <T> T await(Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private static HttpResponse<String> ask(String path, String csv) throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(
            URI.create("http://127.0.0.1:" + server.port() + "/api/review/" + path));
    if (csv != null) {
      request.header("Content-Type", "text/csv").POST(HttpRequest.BodyPublishers.ofString(csv));
    }
    return CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  private static JsonNode get(String path) throws Exception {
    HttpResponse<String> got = ask(path, null);
    assertThat(got.statusCode()).as(got.body()).isEqualTo(200);
    return Json.mapper().readTree(got.body());
  }

  private static String refused(String path) throws Exception {
    HttpResponse<String> got = ask(path, null);
    assertThat(got.statusCode()).as(got.body()).isEqualTo(400);
    return Json.mapper().readTree(got.body()).path("words").asText();
  }

  /** Three rooms from April on; in the first quarter rooms 2 and 3 wait 12 minutes for drugs. */
  private static String history() {
    StringBuilder csv = new StringBuilder("date,room,booked,started,service,reason\n");
    LocalDate date = LocalDate.of(2025, 4, 1);
    for (int d = 0; date.isBefore(LocalDate.of(2026, 7, 1)); d++, date = date.plusDays(1)) {
      if (date.getDayOfWeek().getValue() > 5) {
        continue;
      }
      boolean slow = date.getYear() == 2026 && date.getMonthValue() < 4;
      for (int room = 1; room <= 3; room++) {
        int surgeon = (d * 7 + room * 5) % 9;
        int late = slow && room > 1 ? surgeon + 12 : surgeon;
        csv.append(date).append(',').append(room).append(",07:30,07:").append(30 + late);
        csv.append(room == 1 ? ",bones," : ",eyes,");
        csv.append(late == 0 ? "" : slow && room > 1 ? "equipment" : "surgeon").append('\n');
      }
    }
    return csv.toString();
  }

  private static final String WINTER = "first-from=2026-01-01&first-to=2026-03-31";
  private static final String SPRING = "&second-from=2026-04-01&second-to=2026-06-30";
  private static final String LAST_WINTER_LEFT = "&second-from=2025-04-01&second-to=2025-06-30";

  @Test
  void shouldCompareTwoPeriodsThatDoNotTouch() throws Exception {
    JsonNode all = get("compare?" + WINTER + LAST_WINTER_LEFT);
    assertThat(all.path("comparisons")).hasSize(1);
    JsonNode one = all.path("comparisons").get(0);
    assertThat(one.path("first").asText()).isEqualTo("2026-01-01 to 2026-03-31");
    assertThat(one.path("second").asText()).isEqualTo("2025-04-01 to 2025-06-30");
    assertThat(one.path("design").asText()).isEqualTo("BETWEEN_MORNINGS");
    assertThat(one.path("firstStarts").asInt()).isEqualTo(64 * 3);
    assertThat(one.path("secondStarts").asInt()).isEqualTo(65 * 3);
    JsonNode minutes = one.path("minutes");
    assertThat(minutes.path("value").asDouble()).isCloseTo(8, within(0.3));
    assertThat(minutes.path("verdict").asText()).isEqualTo("DIFFERS");
    assertThat(minutes.path("adjusted").asDouble())
        .as("two figures are looked at")
        .isGreaterThanOrEqualTo(minutes.path("p").asDouble());
  }

  @Test
  void shouldHoldTheOtherFiltersForBothPeriods() throws Exception {
    JsonNode bones =
        get("compare?room=1&weekday=monday&" + WINTER + SPRING).path("comparisons").get(0);
    assertThat(bones.path("firstStarts").asInt()).isEqualTo(13);
    assertThat(bones.path("minutes").path("verdict").asText()).isEqualTo("NONE_SEEN");
    JsonNode few =
        get("compare?room=1&" + WINTER + "&second-from=2026-04-01&second-to=2026-04-09")
            .path("comparisons")
            .get(0);
    assertThat(few.path("secondStarts").asInt()).isEqualTo(7);
    assertThat(few.path("minutes").path("verdict").asText()).isEqualTo("TOO_FEW");
    assertThat(few.path("minutes").has("value")).isFalse();
  }

  @Test
  void shouldSayWhatToDoWhereTheyAreNotTwoPeriods() throws Exception {
    assertThat(refused("compare?" + WINTER + "&second-from=2026-03-02&second-to=2026-06-30"))
        .isEqualTo(
            "The two periods overlap: 2026-03-02 to 2026-03-31 lie in both. A morning can count"
                + " on one side only: let one period end before 2026-03-02 or begin after"
                + " 2026-03-31.");
    assertThat(refused("compare?" + WINTER + "&second-from=2026-03-31&second-to=2026-06-30"))
        .contains("2026-03-31 lies in both");
    assertThat(refused("compare?" + WINTER + "&second-from=2026-04-01")).contains("second-to");
    assertThat(refused("compare?first-from=2026-03-31&first-to=2026-01-01" + SPRING))
        .contains("first period ends before it begins");
    assertThat(refused("compare?from=2026-01-01&" + WINTER + SPRING)).contains("Leave out from");
    assertThat(refused("compare?at=2026-04-01&" + WINTER + SPRING)).contains("not both");
    assertThat(refused("compare?first-from=January&" + WINTER)).contains("first-from as 2026");
    assertThat(refused("compare?at=-999999999-01-01")).contains("at as 2026");
    assertThat(ask("measures?from=0202-01-01", null).statusCode()).as("typed").isEqualTo(200);
    assertThat(refused("shares?change=2026-02-30")).contains("change as 2026");
  }

  @Test
  void shouldNameTheCauseThatAPeriodCostMoreThanAnother() throws Exception {
    String causes = "causes-compared?by=reported&";
    JsonNode winter = get(causes + WINTER + SPRING).path("causes");
    assertThat(winter.path("first").path("name").asText()).isEqualTo("2026-01-01 to 2026-03-31");
    assertThat(winter.path("first").path("starts").asInt()).isEqualTo(64 * 3);
    // Two of three rooms, and all late minutes of a start go to its one reason: 12 and about 4.
    JsonNode equipment = winter.path("rows").get(0);
    assertThat(equipment.path("label").asText()).isEqualTo("equipment");
    assertThat(equipment.path("second").asDouble()).isZero();
    JsonNode more = equipment.path("difference");
    assertThat(more.path("value").asDouble()).isCloseTo(10.7, within(0.5));
    assertThat(more.path("interval").path("lower").asDouble()).isBetween(9.5, 10.7);
    assertThat(more.path("verdict").asText()).isEqualTo("DIFFERS");
    assertThat(winter.path("all").path("value").asDouble()).isCloseTo(8, within(0.3));

    JsonNode cut = get(causes + "at=2026-04-01&from=2026-01-01").path("causes");
    assertThat(cut.path("first").path("name").asText()).isEqualTo("from 2026-04-01");
    assertThat(cut.path("rows").get(0).path("difference").path("value").asDouble())
        .isCloseTo(-more.path("value").asDouble(), within(1e-9));
    JsonNode few =
        get(causes + WINTER + "&second-from=2026-04-01&second-to=2026-04-03").path("causes");
    assertThat(few.path("second").path("starts").asInt()).isEqualTo(9);
    assertThat(few.has("rows") || few.has("all")).as("withheld").isFalse();
    assertThat(refused(causes + "by=section")).contains("both periods");
    assertThat(refused(causes + WINTER + "&second-from=2026-03-31&second-to=2026-06-30"))
        .contains("overlap");
  }
}
