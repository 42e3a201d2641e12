package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.live.fake.FakeOwner;
import sunup.live.fake.ManualClock;
import sunup.live.fake.ManualLane;
import sunup.live.fake.NoteSight;
import sunup.live.fake.Unkept;
import sunup.outlook.Foretold;
import sunup.wire.Audience;

/** How often a morning is drawn whose drawing takes a while. */
class FramePaceTest {
  private static final int DRAWING_MS = 20;

  private final ManualClock clock = new ManualClock();
  private final ManualLane lane = new ManualLane(clock);
  private final FakeOwner owner =
      new FakeOwner(new MorningId(new SuiteId("main"), LocalDate.of(2026, 11, 25)), clock);
  private final List<Long> begun = new ArrayList<>();

  /** Takes its time. */
  private final class Slow implements Sight {
    private final NoteSight under = new NoteSight();

    @Override
    public Figuring figuring(Morning state, long now, int trialsMost) {
      return under.figuring(state, now, trialsMost);
    }

    @Override
    public Seen see(MorningId morning, Object before, Morning state, Foretold figures, long now) {
      begun.add(clock.monotonicMs());
      clock.pass(DRAWING_MS);
      return under.see(morning, before, state, figures, now);
    }
  }

  @Test
  void shouldBeginAFrameEach50MsHoweverLongDrawingTakes() {
    MorningChannel channel =
        new MorningChannel(
            owner,
            new MorningChannel.Tools(
                clock, lane, new Slow(), work -> {}, Pace.DEFAULT, Unkept.LOG, Nudges.NONE),
            Map.of());
    channel.open();
    lane.drain();
    channel.join(new Kept(Audience.DESK), null);
    lane.pass(200);
    begun.clear();

    for (int at = 0; at < 40; at++) {
      owner.say("change " + at);
      lane.pass(10);
    }

    assertThat(begun).hasSizeGreaterThan(5);
    for (int at = 1; at < begun.size(); at++) {
      assertThat(begun.get(at) - begun.get(at - 1)).isBetween(50L, 60L);
    }
  }
}
