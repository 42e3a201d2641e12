package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.forecast.Forecast;
import sunup.live.fake.ManualClock;
import sunup.live.fake.ManualLane;
import sunup.live.fake.Unkept;
import sunup.moves.Ideas;
import sunup.outlook.Foretold;

/** The search for moves: seldom, behind the forecasts, given up when something happens. */
class SearchesTest {
  private static final int SLICES = 5;
  private static final Ideas FOUND = new Ideas(1, 2, 2, 1, 2_000, List.of(), List.of());
  private static final Forecast FIGURES =
      new Forecast(1, "", 1, 256, 0, List.of(), List.of(), List.of());

  private final ManualClock clock = new ManualClock();
  private final ManualLane lane = new ManualLane(clock);
  private final Deque<Runnable> work = new ArrayDeque<>();
  private final List<Ideas> told = new ArrayList<>();
  private int begun;
  private int slices;
  private final Searches searches =
      new Searches(
          new MorningChannel.Tools(
              clock, lane, new CountingSight(), work::add, Pace.DEFAULT, Unkept.LOG, Nudges.NONE),
          told::add);

  private final class CountingSight implements Sight {
    @Override
    public Figuring figuring(Morning state, long now, int trialsMost) {
      return null;
    }

    @Override
    public Seen see(MorningId id, Object before, Morning state, Foretold figures, long now) {
      return new Seen(null, List.of());
    }

    @Override
    public Searching searching(Morning state, Forecast of) {
      begun++;
      return new Searching() {
        private int done;

        @Override
        public boolean advance() {
          slices++;
          return ++done < SLICES;
        }

        @Override
        public Ideas result() {
          return FOUND;
        }
      };
    }
  }

  private void figured() {
    searches.figured(Morning.NONE, FIGURES);
    lane.drain();
  }

  /** What waits in the pool, one task after another. */
  private void run(int tasks) {
    for (int n = 0; n < tasks && !work.isEmpty(); n++) {
      work.poll().run();
      lane.drain();
    }
  }

  @Test
  void shouldTellWhatItFoundOnceItCameToItsEnd() {
    figured();
    run(SLICES);
    assertThat(told).isEmpty();
    run(1);
    assertThat(told).containsExactly(FOUND);
  }

  @Test
  void shouldLetAForecastThatWaitsGoFirst() {
    figured();
    run(2);
    List<String> order = new ArrayList<>();
    work.addFirst(() -> order.add("forecast after " + slices));
    run(1);
    assertThat(order).containsExactly("forecast after 1");
    assertThat(work).as("one slice in the pool at a time").hasSize(1);
  }

  @Test
  void shouldBeGivenUpWhenAnEventComesAndTryAgainWithLaterFigures() {
    figured();
    run(3);
    searches.news();
    run(SLICES);
    assertThat(told).isEmpty();
    assertThat(work).isEmpty();

    figured();
    assertThat(begun).isEqualTo(1);
    clock.pass(Searches.AGAIN_MS);
    figured();
    run(SLICES + 1);
    assertThat(begun).isEqualTo(2);
    assertThat(told).containsExactly(FOUND);
  }

  @Test
  void shouldLookAgainNoSoonerThan15SecondsAfterTheLast() {
    figured();
    run(SLICES + 1);
    clock.pass(Searches.EVERY_MS - 1);
    figured();
    assertThat(work).isEmpty();

    clock.pass(1);
    figured();
    assertThat(work).hasSize(1);
  }

  @Test
  void shouldNotLetMovesOfLongAgoStandForToday() {
    figured();
    run(SLICES + 1);
    clock.pass(Searches.KEPT_MS - 1);
    searches.age();
    assertThat(told).hasSize(1);

    clock.pass(1);
    searches.age();
    searches.age();
    assertThat(told).containsExactly(FOUND, Ideas.NONE);
  }

  @Test
  void shouldBeginNothingMoreOnceTheMorningIsLeft() {
    searches.close();
    figured();
    assertThat(work).isEmpty();
  }
}
