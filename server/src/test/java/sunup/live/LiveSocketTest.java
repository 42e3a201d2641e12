package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.live.fake.ManualClock;
import sunup.live.fake.NoteSight;
import sunup.live.fake.Rig;
import sunup.live.fake.TestScreen;
import sunup.wire.ServerMessage;

class LiveSocketTest {
  private final ThreadLane lane = new ThreadLane("test-live");
  private Rig rig;

  @BeforeEach
  void start() throws Exception {
    rig = new Rig(lane, new NoteSight(), Limits.DEFAULT, new ManualClock());
  }

  @AfterEach
  void end() throws Exception {
    rig.close();
    lane.close();
  }

  @Test
  void shouldSendAViewAndThenFramesThatFollowIt() throws Exception {
    TestScreen desk = rig.screen().hello("desk-1", "desk");
    ServerMessage.View view = desk.await(ServerMessage.View.class, v -> true);

    rig.clock.pass(1_000);
    rig.owner().say("ultrasound is on its way");
    ServerMessage.Frame frame = desk.await(ServerMessage.Frame.class, f -> f.upTo() == 1);

    assertThat(frame.n()).isGreaterThan(view.n());
    assertThat(desk.gaps()).isZero();
    assertThat(desk.parts()).containsKey("note/0");
  }

  @Test
  void shouldShowATouchOnAnotherScreen() throws Exception {
    TestScreen wall = rig.screen().hello("wall-1", "wall");
    wall.await(ServerMessage.View.class, v -> true);
    TestScreen station = rig.screen().hello("station-7", "station");
    station.await(ServerMessage.View.class, v -> true);

    rig.clock.pass(1_000);
    station.note("c1", "leak test failed");
    ServerMessage.Answer answer = station.await(ServerMessage.Answer.class, a -> true);
    wall.await(ServerMessage.Frame.class, f -> f.upTo() >= answer.upTo());

    assertThat(answer.status()).isEqualTo("done");
    assertThat(wall.parts()).containsKey("room/0");
  }

  static void waitFor(BooleanSupplier condition) {
    long until = System.nanoTime() + 20_000_000_000L;
    while (!condition.getAsBoolean()) {
      assertThat(System.nanoTime()).as("waited too long").isLessThan(until);
      Thread.onSpinWait();
    }
  }
}
