package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.live.fake.FakeOwner;
import sunup.live.fake.ManualClock;
import sunup.live.fake.ManualLane;
import sunup.live.fake.NoteSight;
import sunup.live.fake.Unkept;
import sunup.wire.Audience;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/** Rule 2, in a time that the test makes. */
class ChannelTest {
  private final ManualClock clock = new ManualClock();
  private final ManualLane lane = new ManualLane(clock);
  private final NoteSight sight = new NoteSight();
  private final FakeOwner owner =
      new FakeOwner(new MorningId(new SuiteId("main"), LocalDate.of(2026, 11, 25)), clock);
  private final List<Runnable> work = new ArrayList<>();
  private final Pool pool = work::add;
  private final Kept screen = new Kept(Audience.DESK);
  private MorningChannel channel;

  @BeforeEach
  void open() {
    channel =
        new MorningChannel(
            owner,
            new MorningChannel.Tools(
                clock, lane, sight, pool, Pace.DEFAULT, Unkept.LOG, Nudges.NONE),
            Map.of());
    channel.open();
    lane.drain();
    channel.join(screen, null);
  }

  private void compute() {
    List<Runnable> now = new ArrayList<>(work);
    work.clear();
    now.forEach(Runnable::run);
    lane.drain();
  }

  @Test
  void shouldSendTheFirstChangeAtOnceAndThenOneFrameIn50Ms() {
    lane.pass(1_000);
    screen.clear();

    owner.say("one");
    lane.drain();
    assertThat(screen.frames()).hasSize(1);

    for (int i = 0; i < 20; i++) {
      owner.say("more " + i);
      lane.pass(10);
    }
    lane.pass(60);

    assertThat(screen.frames()).hasSize(5);
    assertThat(screen.frames().get(4).upTo()).isEqualTo(21);
    assertThat(screen.frames()).extracting(ServerMessage.Frame::n).isSorted();
  }

  @Test
  void shouldTellEachAudienceThatASequenceIsIncludedEvenIfNothingChangedForIt() {
    Kept wall = new Kept(Audience.WALL);
    channel.join(wall, null);
    lane.pass(1_000);
    wall.clear();

    owner.say(null);
    lane.drain();

    assertThat(wall.frames())
        .singleElement()
        .satisfies(f -> assertThat(f.upTo()).isEqualTo(1))
        .satisfies(f -> assertThat(f.set()).isEmpty());
  }

  @Test
  void shouldBeatOnceASecondWhileTheJournalConfirms() {
    screen.clear();
    for (int i = 0; i < 10; i++) {
      owner.confirm();
      lane.pass(1_000);
    }

    assertThat(screen.beats()).hasSize(10);
    ServerMessage.Beat last = screen.beats().get(9);
    assertThat(last.epoch()).isEqualTo(1);
    assertThat(last.readOnly()).isFalse();
    assertThat(last.confirmedAt()).isEqualTo(clock.realMs() - 1_000);
  }

  @Test
  void shouldNotBeatWhenTheJournalHasNotConfirmedForTwoSeconds() {
    owner.confirm();
    lane.pass(2_000);
    screen.clear();

    lane.pass(10_000);
    assertThat(screen.beats()).isEmpty();
    Kept late = new Kept(Audience.DESK);
    channel.join(late, null);
    assertThat(late.messages).hasSize(1).allMatch(ServerMessage.View.class::isInstance);

    owner.confirm();
    lane.pass(1_000);
    assertThat(screen.beats()).hasSize(1);
  }

  @Test
  void shouldSayThatItIsReadOnlyWhenTheOwnerSaysSo() {
    owner.readOnly();
    screen.clear();

    lane.pass(5_000);

    assertThat(screen.beats()).hasSizeGreaterThanOrEqualTo(5);
    assertThat(screen.beats()).allMatch(ServerMessage.Beat::readOnly);
  }

  @Test
  void shouldNotBeatWhenTheMorningCantBeDrawn() {
    owner.confirm();
    sight.broken(true);
    owner.say("unseen");
    lane.drain();
    screen.clear();

    owner.confirm();
    lane.pass(1_000);
    assertThat(screen.messages).isEmpty();

    sight.broken(false);
    owner.say("seen");
    lane.drain();
    owner.confirm();
    lane.pass(1_000);
    assertThat(screen.frames()).singleElement().satisfies(f -> assertThat(f.upTo()).isEqualTo(2));
    assertThat(screen.beats()).hasSize(1);
  }

  @Test
  void shouldGoStaleForThoseWhoseFrameCantBeMadeAndOnlyForThem() {
    Kept wall = new Kept(Audience.WALL);
    channel.join(wall, null);
    sight.doubled(true);
    owner.say("unseen");
    lane.pass(1_000);
    screen.clear();
    wall.clear();

    owner.confirm();
    lane.pass(3_000);
    assertThat(screen.messages).isEmpty();
    assertThat(wall.beats()).isNotEmpty();

    sight.doubled(false);
    owner.confirm();
    lane.pass(1_000);
    assertThat(screen.frames())
        .as("drawn again without anything new")
        .singleElement()
        .satisfies(f -> assertThat(f.upTo()).isEqualTo(1));
    assertThat(screen.beats()).isNotEmpty();
  }

  @Test
  void shouldGoStaleWhenANewEpochCantBeDrawnAndBeginItOnceItCan() {
    sight.doubled(true);
    owner.epoch(2);
    lane.drain();
    screen.clear();

    owner.confirm();
    lane.pass(2_000);
    assertThat(screen.messages).isEmpty();

    sight.doubled(false);
    owner.confirm();
    lane.pass(1_000);
    ServerMessage.View view = (ServerMessage.View) screen.messages.get(0);
    assertThat(view.epoch()).isEqualTo(2);
    assertThat(screen.beats()).isNotEmpty().allMatch(b -> b.epoch() == 2);
  }

  @Test
  void shouldNotBeatForAMorningThatWentToAnotherNode() {
    owner.fenced();
    lane.drain();
    screen.clear();

    lane.pass(10_000);
    assertThat(screen.messages).isEmpty();

    owner.epoch(3);
    lane.pass(1_000);
    assertThat(screen.beats()).isNotEmpty().allMatch(b -> b.epoch() == 3);
  }

  @Test
  void shouldTellTheOthersWhenOneScreenFails() {
    channel.leave(screen);
    channel.join(new Kept(Audience.DESK, true), null);
    channel.join(screen, null);
    screen.clear();

    owner.say("for all");
    lane.pass(1_000);
    owner.confirm();
    lane.pass(1_000);

    assertThat(screen.frames()).isNotEmpty();
    assertThat(screen.beats()).hasSizeGreaterThanOrEqualTo(2);
  }

  @Test
  void shouldNeverSendALowerEpoch() {
    owner.epoch(3);
    lane.drain();
    screen.clear();

    owner.epoch(2);
    lane.pass(2_000);
    owner.say("in the third");
    lane.pass(1_000);

    assertThat(screen.frames()).isNotEmpty().allMatch(f -> f.epoch() == 3);
    assertThat(screen.beats()).isNotEmpty().allMatch(b -> b.epoch() == 3);
  }

  @Test
  void shouldSendAViewThatCountsAnewWhenTheEpochRises() {
    owner.say("before");
    lane.pass(1_000);
    screen.clear();

    owner.epoch(2);
    lane.drain();

    ServerMessage.View view = (ServerMessage.View) screen.messages.get(0);
    assertThat(view.epoch()).isEqualTo(2);
    assertThat(view.n()).isZero();
    assertThat(view.upTo()).isEqualTo(1);
  }

  @Test
  void shouldAnswerWithFewTrialsFirstAndManyWhenNothingNewerWaits() {
    compute();
    lane.pass(100);
    assertThat(trials()).isEqualTo("256");
    compute();
    lane.pass(100);
    assertThat(trials()).isEqualTo("2000");
    assertThat(work).isEmpty();
  }

  @Test
  void shouldKeepTheLastFiguresAndSayWhenTheyAreOfIfNewerOnesCantBeComputed() {
    compute();
    compute();
    long of = clock.morningMs();
    assertThat(suite().figuresOf()).isNull();
    sight.unforeseeable(true);
    lane.pass(10_000);
    compute();
    lane.pass(100);
    assertThat(suite().figuresOf()).isEqualTo(of);
    assertThat(trials()).isEqualTo("2000");

    sight.unforeseeable(false);
    lane.pass(10_000);
    compute();
    lane.pass(100);
    assertThat(suite().figuresOf()).isNull();
    assertThat(trials()).isEqualTo("256");
  }

  @Test
  void shouldGiveUpManyTrialsWhenAnEventComesAndAnswerItAtOnce() {
    compute();
    List<Integer> advanced = new ArrayList<>();
    sight.advanced(
        upTo -> {
          advanced.add(upTo);
          if (upTo == 512 && owner.seq() == 0) {
            owner.say("came while many trials ran");
            lane.drain();
          }
        });

    compute();
    assertThat(advanced).endsWith(512).allMatch(upTo -> upTo <= 512);
    compute();
    lane.pass(100);

    assertThat(screen.last().forecastOf()).isEqualTo(1);
    assertThat(trials()).isEqualTo("256");
    compute();
    lane.pass(100);
    assertThat(trials()).isEqualTo("2000");
  }

  @Test
  void shouldFinishManyTrialsWhenOnlyTimeWentOn() {
    compute();
    sight.advanced(
        upTo -> {
          if (upTo == 512) {
            lane.pass(10_000);
          }
        });

    compute();
    lane.pass(100);

    assertThat(trials()).isEqualTo("2000");
    assertThat(work).hasSize(1);
  }

  @Test
  void shouldComputeOneForecastAtATimeAndDropAllButTheNewestState() {
    for (int i = 0; i < 5; i++) {
      owner.say("n" + i);
      lane.drain();
    }
    assertThat(work).hasSize(1);

    compute();
    lane.pass(100);
    assertThat(screen.last().forecastOf()).isZero();
    compute();
    lane.pass(100);
    assertThat(screen.last().forecastOf()).isEqualTo(5);
    assertThat(trials()).isEqualTo("256");
  }

  @Test
  void shouldComputeAgainEveryTenSecondsOfMorningTimeWhenNothingHappens() {
    compute();
    compute();
    assertThat(work).isEmpty();

    lane.pass(10_000);

    assertThat(work).hasSize(1);
  }

  @Test
  void shouldSayOfWhenTheFiguresAreIfNoneComeForHalfAMinuteWhateverTheCause() {
    compute();
    lane.pass(100);
    assertThat(suite().figuresOf()).isNull();
    long of = clock.morningMs();

    // Nothing is computed any more: it hangs, or the pool takes nothing.
    lane.pass(28_000);
    assertThat(suite().figuresOf()).isNull();
    lane.pass(3_000);
    assertThat(suite().figuresOf()).isBetween(of - 10_000, of);

    compute();
    lane.pass(100);
    assertThat(suite().figuresOf()).isNull();
  }

  @Test
  void shouldResumeFromTheRingAndSendAViewWhenTheFrameIsOlderThanAMinute() {
    lane.pass(1_000);
    ServerMessage.View view = (ServerMessage.View) screen.messages.get(0);
    channel.leave(screen);
    for (int i = 0; i < 30; i++) {
      owner.say("a note of some length, so that frames are smaller than the view " + i);
      lane.pass(100);
    }
    long seen = screenAt(28);
    Kept back = new Kept(Audience.DESK);
    channel.join(back, new Channel.Resume(view.morning(), 1, seen));
    assertThat(back.frames()).isNotEmpty();
    assertThat(back.frames().get(0).n()).isEqualTo(seen + 1);
    assertThat(back.messages).noneMatch(ServerMessage.View.class::isInstance);

    lane.pass(61_000);
    owner.say("much later");
    lane.drain();
    Kept old = new Kept(Audience.DESK);
    channel.join(old, new Channel.Resume(view.morning(), 1, seen));
    assertThat(old.messages.get(0)).isInstanceOf(ServerMessage.View.class);
  }

  @Test
  void shouldSendAViewToAScreenThatSaysItSawWhatWasNotSentYet() {
    Kept ahead = new Kept(Audience.DESK);

    channel.join(ahead, new Channel.Resume(owner.morning(), 1, 1_000_000));

    assertThat(ahead.messages.get(0)).isInstanceOf(ServerMessage.View.class);
  }

  private long screenAt(int back) {
    Kept probe = new Kept(Audience.DESK);
    channel.join(probe, null);
    channel.leave(probe);
    return ((ServerMessage.View) probe.messages.get(0)).n() - (30 - back);
  }

  private String trials() {
    return ((Part.NotePart) shown("trials")).text();
  }

  private Part.SuitePart suite() {
    return (Part.SuitePart) shown("suite");
  }

  private Part shown(String key) {
    Kept probe = new Kept(Audience.DESK);
    channel.join(probe, null);
    channel.leave(probe);
    return ((ServerMessage.View) probe.messages.get(0))
        .parts().stream().filter(p -> p.key().equals(key)).findFirst().orElseThrow();
  }
}
