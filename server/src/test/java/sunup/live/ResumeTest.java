package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import sunup.live.fake.ManualClock;
import sunup.live.fake.ManualLane;
import sunup.live.fake.NoteSight;
import sunup.live.fake.Rig;
import sunup.live.fake.TestScreen;
import sunup.live.fake.Waiting;
import sunup.wire.ServerMessage;

/** A screen that comes back ends with exactly what a new one gets. */
class ResumeTest {
  private static final int HISTORIES = 25;
  private static final int STEPS = 40;
  private static final int NOTES_MAX = 15;
  private static final String[] PAGES = {"wall", "station", "desk"};

  private final ManualClock clock = new ManualClock();
  private final ManualLane lane = new ManualLane(clock);
  private Rig rig;
  private long epoch = 1;
  private int resumedByFrames;
  private int resumedByView;

  @AfterEach
  void end() throws Exception {
    rig.close();
  }

  @Test
  void shouldEndWithTheStateOfAFreshScreenWhateverHappenedBetween() throws Exception {
    rig = new Rig(lane, new NoteSight(), FakeLimits.patient(), clock);
    for (int seed = 0; seed < HISTORIES; seed++) {
      history(seed);
    }
    // The generator must reach both ways, or the test shows nothing.
    assertThat(resumedByFrames).isGreaterThan(20);
    assertThat(resumedByView).isGreaterThan(20);
  }

  private void history(int seed) throws Exception {
    Random random = new Random(seed);
    String page = PAGES[random.nextInt(PAGES.length)];
    TestScreen screen = rig.screen().hello("screen-1", page);
    settle(screen);
    for (int step = 0; step < STEPS; step++) {
      int dice = random.nextInt(20);
      if (dice < 9 && rig.owner().notes() < NOTES_MAX) {
        rig.owner().say("note " + random.nextInt(6) + "x".repeat(random.nextInt(40)));
      } else if (dice < 12) {
        rig.owner().forgetOne();
      } else if (dice < 16) {
        lane.pass(random.nextInt(200));
      } else if (dice == 16) {
        lane.pass(30_000 + random.nextInt(60_000));
      } else if (dice == 17) {
        rig.owner().epoch(++epoch);
      } else {
        screen = again(screen, page, random);
      }
      lane.drain();
    }
    screen = again(screen, page, random);
    lane.pass(100);
    settle(screen);
    TestScreen fresh = rig.screen().hello("fresh-1", page);
    settle(fresh);
    // A frame may still be on its way to either: equal now is not equal for good.
    screen.barrier(seed);
    fresh.barrier(seed);
    assertThat(screen.parts()).as("history %d of a %s", seed, page).isEqualTo(fresh.parts());
    assertThat(screen.n()).isEqualTo(fresh.n());
    assertThat(screen.upTo()).isEqualTo(fresh.upTo());
    assertThat(screen.gaps()).isZero();
    screen.close();
    fresh.close();
  }

  /** Loses the socket, misses something, comes back. */
  private TestScreen again(TestScreen before, String page, Random random) throws Exception {
    settle(before);
    before.close();
    for (int i = random.nextInt(4); i > 0; i--) {
      rig.owner().forgetOne();
      rig.owner().say("missed " + random.nextInt(100));
      lane.pass(60);
    }
    int away = random.nextInt(6);
    if (away == 0) {
      rig.owner().epoch(++epoch);
      lane.drain();
    } else if (away == 1) {
      lane.pass(Pace.DEFAULT.ringMs() + 1_000);
      rig.owner().say(null);
      lane.drain();
    }
    TestScreen back = rig.screen().resume(before, "screen-1", page);
    settle(back);
    if (back.all(ServerMessage.View.class).isEmpty()) {
      resumedByFrames++;
    } else {
      resumedByView++;
    }
    return back;
  }

  /** Waits until the screen has joined and has all that was sent. Time passes by one second. */
  private void settle(TestScreen screen) {
    rig.owner().confirm();
    Waiting.until(
        () -> {
          lane.drain();
          return !screen.all(ServerMessage.Beat.class).isEmpty();
        });
    long mark = clock.morningMs();
    rig.owner().confirm();
    lane.pass(1_000);
    Waiting.until(
        () ->
            screen.all(ServerMessage.Beat.class).stream()
                .anyMatch(b -> b.morningClock() > mark && screen.n() >= b.n()));
  }
}
