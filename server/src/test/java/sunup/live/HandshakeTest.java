package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.http.UpgradeRejectedException;
import io.vertx.core.http.WebSocketConnectOptions;
import java.util.concurrent.ExecutionException;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.live.fake.ManualClock;
import sunup.live.fake.NoteSight;
import sunup.live.fake.Rig;
import sunup.live.fake.TestScreen;
import sunup.live.fake.Waiting;
import sunup.wire.ServerMessage;

class HandshakeTest {
  private static final int FEW = 3;

  private final ThreadLane lane = new ThreadLane("test-live");
  private Rig rig;

  @BeforeEach
  void start() throws Exception {
    rig = new Rig(lane, new NoteSight(), FakeLimits.sockets(FEW), new ManualClock());
  }

  @AfterEach
  void end() throws Exception {
    rig.close();
    lane.close();
  }

  private WebSocketConnectOptions options() {
    return TestScreen.options(rig.port());
  }

  private int refused(WebSocketConnectOptions options) {
    Throwable e = Assertions.catchThrowable(() -> TestScreen.connect(rig.vertx, options));
    assertThat(e).isInstanceOf(ExecutionException.class);
    assertThat(e.getCause()).isInstanceOf(UpgradeRejectedException.class);
    return ((UpgradeRejectedException) e.getCause()).getStatus();
  }

  private void taken(WebSocketConnectOptions options) throws Exception {
    TestScreen screen = TestScreen.connect(rig.vertx, options);
    screen.hello("wall-1", "wall").await(ServerMessage.View.class, v -> true);
    screen.close();
  }

  @Test
  void shouldRefuseAPageOfAnotherOrigin() {
    assertThat(refused(options().addHeader("Origin", "http://elsewhere.example"))).isEqualTo(403);
    assertThat(refused(options().addHeader("Origin", "null"))).isEqualTo(403);
    assertThat(refused(options().addHeader("Origin", "http://127.0.0.1:1"))).isEqualTo(403);
  }

  @Test
  void shouldTakePagesOfItsOwnAndOfListedOriginsAndProgramsWithoutOne() throws Exception {
    taken(options().addHeader("Origin", "http://127.0.0.1:" + rig.port()));
    taken(options().addHeader("Origin", Rig.ALLOWED_ORIGIN));
    taken(options());
  }

  @Test
  void shouldRefuseAnotherHostsName() {
    WebSocketConnectOptions rebound =
        options()
            .putHeader("Host", "evil.example:" + rig.port())
            .putHeader("Origin", "http://evil.example:" + rig.port());

    assertThat(refused(rebound)).isEqualTo(421);
  }

  @Test
  void shouldRefuseAnotherPathAndAnotherProtocol() {
    assertThat(refused(options().setURI("/elsewhere"))).isEqualTo(404);
    WebSocketConnectOptions plain =
        new WebSocketConnectOptions()
            .setHost("127.0.0.1")
            .setPort(rig.port())
            .setURI(LiveEndpoint.PATH);
    assertThat(refused(plain)).isEqualTo(400);
  }

  @Test
  void shouldRefuseSocketsBeyondTheCapOfAnAddressUntilOneIsClosed() throws Exception {
    TestScreen first = rig.screen();
    for (int i = 1; i < FEW; i++) {
      rig.screen();
    }
    Waiting.until(() -> rig.sockets() == FEW);

    assertThat(refused(options())).isEqualTo(503);
    first.close();
    Waiting.until(() -> rig.sockets() == FEW - 1);
    taken(options());
  }
}
