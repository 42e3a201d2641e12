package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.RejectedExecutionException;
import org.junit.jupiter.api.Test;
import sunup.board.Morning;
import sunup.board.PlaceId;
import sunup.board.RoomId;
import sunup.live.fake.ManualClock;
import sunup.live.fake.ManualLane;
import sunup.trying.CantTry;
import sunup.wire.Tried;
import sunup.wire.TryChange;

/** Copies are worked out behind the forecasts, few at a time, and not for those who hung up. */
class TriesTest {
  private static final Morning MORNING = OutlookSightTest.draft();
  private static final long NOW = MORNING.beginsAt();
  private static final List<TryChange> PHARMACY =
      List.of(new TryChange.Opens(new PlaceId("pharmacy"), NOW));

  private final ManualClock clock = new ManualClock();
  private final ManualLane lane = new ManualLane(clock);
  private final Deque<Runnable> work = new ArrayDeque<>();
  private final List<String> told = new ArrayList<>();
  private Tried last;
  private boolean crowded;
  private boolean full;
  private final Tries tries =
      new Tries(
          clock,
          lane,
          new Pool() {
            @Override
            public void execute(Runnable task) {
              if (full) {
                throw new RejectedExecutionException();
              }
              work.add(task);
            }

            @Override
            public boolean crowded() {
              return crowded;
            }
          });

  private final class Taking implements Tries.Taker {
    @Override
    public void tried(Tried both) {
      last = both;
      told.add("tried");
    }

    @Override
    public void cant(CantTry why) {
      told.add(why.getMessage());
    }

    @Override
    public void busy() {
      told.add("busy");
    }

    @Override
    public void failed() {
      told.add("failed");
    }
  }

  private Runnable begin(List<TryChange> changes) {
    Runnable giveUp = tries.begin(MORNING, changes, NOW, new Taking());
    lane.drain();
    return giveUp;
  }

  private void run(int tasks) {
    for (int n = 0; n < tasks && !work.isEmpty(); n++) {
      work.poll().run();
      lane.drain();
    }
  }

  @Test
  void shouldTellBothSidesInSlicesThatLetForecastsGoFirst() {
    begin(PHARMACY);
    run(3);
    assertThat(told).isEmpty();
    assertThat(work).as("one slice in the pool at a time").hasSize(1);
    run(Integer.MAX_VALUE);
    assertThat(told).containsExactly("tried");
    assertThat(last.trials()).isEqualTo(Tries.TRIALS);
    assertThat(last.rooms()).hasSize(1);
  }

  @Test
  void shouldComputeNoFurtherForWhoHungUpAndTellThemNothing() {
    Runnable giveUp = begin(PHARMACY);
    run(2);
    giveUp.run();
    run(Integer.MAX_VALUE);
    assertThat(work).isEmpty();
    assertThat(told).isEmpty();
  }

  @Test
  void shouldTakeAFewAtATimeAndAnotherOnceOneOfThemIsOver() {
    List<Runnable> under = new ArrayList<>();
    for (int n = 0; n < Tries.AT_ONCE; n++) {
      under.add(begin(PHARMACY));
    }
    begin(PHARMACY);
    assertThat(told).containsExactly("busy");
    under.get(0).run();
    run(1);
    begin(PHARMACY);
    assertThat(told).containsExactly("busy");
    assertThat(work).hasSize(Tries.AT_ONCE);
  }

  @Test
  void shouldWaitWhileForecastsCrowdTheThreadsAndSayBusyIfTheyDoNotEnd() {
    crowded = true;
    begin(PHARMACY);
    assertThat(work).isEmpty();
    lane.pass(Tries.LONGEST_MS + Tries.CROWDED_MS);
    assertThat(told).containsExactly("busy");

    told.clear();
    crowded = false;
    full = true;
    begin(PHARMACY);
    full = false;
    lane.pass(Tries.CROWDED_MS);
    run(Integer.MAX_VALUE);
    assertThat(told).containsExactly("tried");
  }

  @Test
  void shouldTellWhatThereIsWhenItTakesTooLong() {
    begin(PHARMACY);
    run(Tries.LEAST_TRIALS / Tries.SLICE_TRIALS);
    crowded = true;
    run(1);
    lane.pass(Tries.LONGEST_MS + Tries.CROWDED_MS);
    run(Integer.MAX_VALUE);
    assertThat(told).containsExactly("tried");
    assertThat(last.trials()).isBetween(Tries.LEAST_TRIALS, Tries.TRIALS - 1);
  }

  @Test
  void shouldRefuseInTheBoardsWords() {
    begin(List.of(new TryChange.Swap(new RoomId("1"), new RoomId("2"))));
    run(Integer.MAX_VALUE);
    assertThat(told).containsExactly("Room 2 has no first case. Choose a room that has one.");
  }
}
