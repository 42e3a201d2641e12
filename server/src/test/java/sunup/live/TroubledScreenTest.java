package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.buffer.Buffer;
import io.vertx.core.net.NetSocket;
import java.time.LocalDate;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import sunup.live.fake.ManualClock;
import sunup.live.fake.ManualLane;
import sunup.live.fake.NoteSight;
import sunup.live.fake.Rig;
import sunup.live.fake.TestScreen;
import sunup.live.fake.Waiting;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** Screens that read slowly, say nothing, or are there when the date changes. */
class TroubledScreenTest {
  private static final int SOFT = 64 * 1024;
  private static final int BEHIND_MS = 30_000;
  private static final int LONG_MS = 600_000;

  private final ManualClock clock = new ManualClock();
  private final ManualLane lane = new ManualLane(clock);
  private Rig rig;

  @AfterEach
  void end() throws Exception {
    rig.close();
  }

  private void start(Limits limits) throws Exception {
    rig = new Rig(lane, new NoteSight(), limits, clock);
  }

  private TestScreen open(String page) throws Exception {
    TestScreen screen = rig.screen().hello(page + "-1", page);
    Waiting.until(
        () -> {
          lane.drain();
          return !screen.all(ServerMessage.View.class).isEmpty();
        });
    return screen;
  }

  /** Many frames of 20 kB. */
  private void floods(int frames, TestScreen reader) {
    for (int i = 0; i < frames; i++) {
      rig.owner().say(i + "x".repeat(20_000));
      lane.pass(60);
      rig.owner().forgetOne();
      lane.pass(60);
      long seq = rig.owner().seq();
      Waiting.until(() -> reader.upTo() == seq);
    }
  }

  @Test
  void shouldLeaveFramesOutForAScreenThatReadsSlowlyAndSendItAView() throws Exception {
    start(FakeLimits.slow(SOFT, 64 * SOFT, LONG_MS));
    TestScreen slow = open("desk");
    TestScreen quick = open("desk");
    slow.socket().pause();

    floods(300, quick);
    rig.owner().say("the last word");
    lane.pass(60);
    slow.socket().resume();

    Waiting.until(
        () -> {
          lane.drain();
          return slow.upTo() == rig.owner().seq() && quick.upTo() == rig.owner().seq();
        });
    assertThat(slow.gaps()).isZero();
    assertThat(slow.parts()).isEqualTo(quick.parts());
    assertThat(slow.all(ServerMessage.Frame.class).size())
        .isLessThan(quick.all(ServerMessage.Frame.class).size());
    assertThat(slow.all(ServerMessage.View.class)).hasSizeGreaterThan(1);
    assertThat(quick.all(ServerMessage.View.class)).hasSize(1);
  }

  @Test
  void shouldCloseASocketThatLetsAnswersPileUp() throws Exception {
    start(FakeLimits.slow(SOFT, SOFT, LONG_MS));
    TestScreen slow = open("wall");
    slow.socket().pause();

    for (int i = 0; i < 60_000; i++) {
      slow.send(new ClientMessage.Tick(i));
    }

    Waiting.until(() -> rig.sockets() == 0);
  }

  @Test
  void shouldCloseASocketThatOwesItsViewForTooLong() throws Exception {
    start(FakeLimits.slow(SOFT, 64 * SOFT, BEHIND_MS));
    TestScreen slow = open("desk");
    TestScreen quick = open("desk");
    slow.socket().pause();
    floods(200, quick);
    assertThat(rig.sockets()).isEqualTo(2);

    clock.pass(BEHIND_MS + 1);

    Waiting.until(() -> rig.sockets() == 1);
    quick.barrier(1);
  }

  @Test
  void shouldCloseASocketThatSaysNoHello() throws Exception {
    start(FakeLimits.quickTimers(20, 600_000));

    assertThat(rig.screen().closeCode()).isEqualTo(1008);
  }

  @Test
  void shouldCloseASocketWhosePeerIsGone() throws Exception {
    start(FakeLimits.quickTimers(600_000, 20));
    NetSocket dead =
        rig.vertx
            .createNetClient()
            .connect(rig.port(), "127.0.0.1")
            .toCompletionStage()
            .toCompletableFuture()
            .get(20, TimeUnit.SECONDS);
    dead.write(
        Buffer.buffer(
            String.join(
                "\r\n",
                "GET /live HTTP/1.1",
                "Host: localhost",
                "Connection: Upgrade",
                "Upgrade: websocket",
                "Sec-WebSocket-Key: MDEyMzQ1Njc4OWFiY2RlZg==",
                "Sec-WebSocket-Version: 13",
                "Sec-WebSocket-Protocol: sunup.1",
                "",
                "")));
    Waiting.until(() -> rig.sockets() == 1);

    clock.pass(Limits.DEFAULT.silentMs() + 1);

    Waiting.until(() -> rig.sockets() == 0);
  }

  @Test
  void shouldShowTheNextMorningWhenTheDateChanges() throws Exception {
    start(Limits.DEFAULT);
    rig.owner().say("of the first day");
    TestScreen desk = open("desk");

    clock.jump(24 * 3_600_000L);
    lane.pass(1_100);
    desk.barrier(1);

    ServerMessage.View next =
        desk.await(ServerMessage.View.class, v -> v.morning().toString().equals("main/2026-11-26"));
    assertThat(next.upTo()).isZero();
    desk.send(noteFor("2026-11-25")).send(noteFor("2026-11-26")).send(noteFor("2026-11-01"));
    Waiting.until(() -> desk.all(ServerMessage.Answer.class).size() == 3);
    assertThat(rig.owner().decided()).hasSize(1);
    assertThat(rig.owner(LocalDate.of(2026, 11, 26)).decided()).hasSize(1);
    assertThat(desk.all(ServerMessage.Answer.class))
        .filteredOn(a -> a.id().value().equals("2026-11-01"))
        .singleElement()
        .satisfies(a -> assertThat(a.code()).isEqualTo("morning-closed"));
  }

  private static ClientMessage.Send noteFor(String date) {
    return new ClientMessage.Send(
        new sunup.board.CommandId(date),
        sunup.board.MorningId.parse("main/" + date),
        null,
        0,
        0,
        null,
        new sunup.board.Command.AddNote(null, null));
  }
}
