package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import io.vertx.ext.web.Router;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.cluster.Routing;
import sunup.cluster.States;
import sunup.live.Mornings;
import sunup.live.MorningsBySuite;
import sunup.live.Nudges;
import sunup.live.Pace;
import sunup.live.fake.FakeOwner;
import sunup.live.fake.ManualClock;
import sunup.live.fake.ManualLane;
import sunup.live.fake.NoteSight;
import sunup.live.fake.Unkept;

/** Who is sent screens by a proxy, and who is not. */
class HealthTest {
  private static final Routing.State WELL = States.of(false, true, false, 3);
  private static final long SILENT_MS = Pace.DEFAULT.confirmedMs() + 100L;

  private final ManualClock clock = new ManualClock();
  private final ManualLane lane = new ManualLane(clock);
  private final Map<SuiteId, FakeOwner> owners = new HashMap<>();
  private final MorningsBySuite suites =
      new MorningsBySuite(List.of(mornings("east"), mornings("west")));
  private Routing.State nodes = WELL;
  private boolean warming;
  private Health health = new Health(suites, true, () -> nodes, () -> warming);

  private Mornings mornings(String name) {
    Mornings made =
        new Mornings(
            new SuiteId(name),
            ZoneOffset.UTC,
            this::owner,
            clock,
            lane,
            new NoteSight(),
            work -> {},
            Runnable::run,
            Pace.DEFAULT,
            Unkept.LOG,
            Nudges.NONE);
    made.open();
    return made;
  }

  private FakeOwner owner(MorningId morning) {
    return owners.computeIfAbsent(morning.suite(), suite -> new FakeOwner(morning, clock));
  }

  @BeforeEach
  void begin() {
    lane.drain();
    confirm("east", "west");
  }

  private void confirm(String... names) {
    for (String name : names) {
      owners.get(new SuiteId(name)).confirm();
    }
    lane.drain();
  }

  /** The owner of one suite's morning is heard no more. */
  private void westFallsSilent() {
    lane.pass(SILENT_MS);
    confirm("east");
  }

  private boolean up() {
    return health.status().status().equals("up");
  }

  @Test
  void shouldBeUpWhileAllMorningsAreTold() {
    assertThat(up()).isTrue();
    assertThat(health.status().told()).isEqualTo(2);
  }

  @Test
  void shouldBeDownOnOneNodeAloneWhileAMorningIsNotTold() {
    nodes = null;
    assertThat(up()).isTrue();
    westFallsSilent();
    assertThat(up()).isFalse();
    assertThat(health.status())
        .satisfies(told -> assertThat(told.told()).isEqualTo(1))
        .satisfies(told -> assertThat(told.morning()).startsWith("west/"))
        .satisfies(told -> assertThat(told.journal()).isEqualTo("silent"));
    confirm("west");
    assertThat(up()).isTrue();
  }

  @Test
  void shouldKeepItsScreensWhileNoOtherNodeCouldTellThemMore() {
    assertThat(up()).isTrue();
    westFallsSilent();
    assertThat(up()).isTrue();
    nodes = States.of(false, false, false, 3);
    assertThat(up()).as("others hear more").isFalse();
    nodes = States.of(false, true, true, 3);
    assertThat(up()).as("others read what it can't").isFalse();
  }

  @Test
  void shouldTakeNoScreensBeforeItHasToldAllOnce() {
    westFallsSilent();
    assertThat(up()).as("it has just joined").isFalse();
    confirm("west");
    assertThat(up()).isTrue();
    westFallsSilent();
    assertThat(up()).isTrue();
  }

  @Test
  void shouldBeDownWhileItLeavesWhateverItTells() {
    nodes = States.of(true, true, false, 3);
    assertThat(up()).isFalse();
  }

  @Test
  void shouldLeaveScreensToOthersWhileItsCodeIsColdIfThereAreOthers() {
    warming = true;
    assertThat(up()).isFalse();
    nodes = States.of(false, true, false, 1);
    assertThat(up()).as("nobody else is there").isTrue();
    nodes = null;
    assertThat(up()).as("one node alone").isTrue();
  }

  @Test
  void shouldAnswerThatItLivesAlsoWhileItIsDownAndTellStrangersTheStatusAlone() throws Exception {
    nodes = States.of(true, false, true, 3);
    Vertx vertx = Vertx.vertx();
    try {
      Router router = Router.router(vertx);
      health.mount(router, false);
      HttpServer server = vertx.createHttpServer().requestHandler(router);
      server
          .listen(0, "127.0.0.1")
          .toCompletionStage()
          .toCompletableFuture()
          .get(20, TimeUnit.SECONDS);
      String root = "http://127.0.0.1:" + server.actualPort();

      assertThat(get(root + "/health/live").statusCode()).isEqualTo(200);
      assertThat(get(root + "/health/ready").statusCode()).isEqualTo(503);
      assertThat(get(root + "/health/ready").body()).isEqualTo("{\"status\":\"down\"}");
      nodes = WELL;
      assertThat(get(root + "/health/ready").statusCode()).isEqualTo(200);
      assertThat(get(root + "/health").body()).isEqualTo("{\"status\":\"up\"}");
    } finally {
      vertx.close().toCompletionStage().toCompletableFuture().get(20, TimeUnit.SECONDS);
    }
  }

  private static HttpResponse<String> get(String url) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(url)).version(HttpClient.Version.HTTP_1_1).build();
    return HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
  }
}
