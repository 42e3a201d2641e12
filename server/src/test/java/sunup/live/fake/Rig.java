package sunup.live.fake;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import sunup.access.Connections;
import sunup.access.Refusals;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.live.Lane;
import sunup.live.Limits;
import sunup.live.LiveEndpoint;
import sunup.live.Mornings;
import sunup.live.MorningsBySuite;
import sunup.live.Nudges;
import sunup.live.Pace;
import sunup.live.Sight;

/** The live endpoint on a free port of loopback, over fakes. */
public final class Rig {
  public static final String ALLOWED_ORIGIN = "http://allowed.example";
  private static final SuiteId SUITE = new SuiteId("main");

  public final ManualClock clock;
  public final Vertx vertx = Vertx.vertx();
  private final Map<MorningId, FakeOwner> owners = new ConcurrentHashMap<>();
  private final LiveEndpoint endpoint;
  private final HttpServer server;

  public Rig(Lane lane, Sight sight, Limits limits, ManualClock clock) throws Exception {
    this(lane, sight, limits, Pace.DEFAULT, clock);
  }

  public Rig(Lane lane, Sight sight, Limits limits, Pace pace, ManualClock clock) throws Exception {
    this.clock = clock;
    Executor direct = Runnable::run;
    Mornings mornings =
        new Mornings(
            SUITE,
            ZoneOffset.UTC,
            id -> owners.computeIfAbsent(id, made -> new FakeOwner(made, clock)),
            clock,
            lane,
            sight,
            Runnable::run,
            direct,
            pace,
            Unkept.LOG,
            Nudges.NONE);
    endpoint =
        new LiveEndpoint(
            vertx,
            new MorningsBySuite(List.of(mornings)),
            clock,
            new Connections(List.of(ALLOWED_ORIGIN)),
            limits,
            new Refusals(),
            null);
    server = vertx.createHttpServer(LiveEndpoint.options(limits).setHost("127.0.0.1").setPort(0));
    endpoint.mount(server, peer -> {});
    mornings.open();
    server.listen().toCompletionStage().toCompletableFuture().get(20, TimeUnit.SECONDS);
  }

  public int port() {
    return server.actualPort();
  }

  public int sockets() {
    return endpoint.count();
  }

  /** The owner of the morning of the clock's first date. */
  public FakeOwner owner() {
    return owner(LocalDate.of(2026, 11, 25));
  }

  public FakeOwner owner(LocalDate date) {
    return owners.computeIfAbsent(new MorningId(SUITE, date), made -> new FakeOwner(made, clock));
  }

  public TestScreen screen() throws Exception {
    return TestScreen.connect(vertx, port());
  }

  public void close() throws Exception {
    vertx.close().toCompletionStage().toCompletableFuture().get(20, TimeUnit.SECONDS);
  }
}
