package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Trials shared by threads give the bits that one gives, and cost no memory of their own. */
class TogetherTest {
  private static final int FIRST = 256;
  private static final int ALL = 1_500;
  private static final int MORNINGS = 8;

  private final ExecutorService threads = Executors.newCachedThreadPool();

  @AfterEach
  void end() {
    threads.shutdownNow();
  }

  private void together(int n, Runnable work) throws Exception {
    CyclicBarrier all = new CyclicBarrier(n);
    List<Future<?>> each = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      each.add(
          threads.submit(
              () -> {
                all.await();
                work.run();
                return null;
              }));
    }
    for (Future<?> one : each) {
      one.get();
    }
  }

  @Test
  void shouldGiveTheSameBitsOnOneTwoAndFiveThreads() throws Exception {
    TreeMap<String, Integer> seen = new TreeMap<>();
    for (int seed = 1; seed <= MORNINGS; seed++) {
      ForecastInput in = EveryFeature.of(seed, ALL, seen);
      Forecast few = Forecaster.run(in.withTrials(FIRST));
      Forecast all = Forecaster.run(in);
      for (int n : new int[] {1, 2, 5}) {
        Run run = new Run(in);
        together(n, run.sharing(FIRST));
        together(n, run.reading());
        assertThat(run.result()).as("morning %d on %d threads", seed, n).isEqualTo(few);
        together(n, run.sharing(ALL));
        together(n, run.reading());
        assertThat(run.result()).as("morning %d on %d threads", seed, n).isEqualTo(all);
      }
    }
  }

  /** Also where the last trials are played first. */
  @Test
  void shouldFindTheHistoryThatCarriesATrialInAnyOrder() {
    TreeMap<String, Integer> seen = new TreeMap<>();
    int people = 0;
    for (int seed = 1; seed <= MORNINGS; seed++) {
      ForecastInput in = EveryFeature.of(seed, ALL, seen);
      List<Integer> rooms = IntStream.range(0, in.rooms().size()).boxed().toList();
      Model m = Compiler.compile(in, rooms);
      Trial forward = new Trial(m);
      Trial backward = new Trial(m);
      for (int p = 0; p < m.people; p++) {
        if (forward.silence().isSilent(p)) {
          int[] carries = new int[ALL];
          for (int n = 0; n < ALL; n++) {
            carries[n] = forward.silence().attempt(p, n);
          }
          for (int n = ALL - 1; n >= 0; n--) {
            assertThat(backward.silence().attempt(p, n)).isEqualTo(carries[n]);
          }
          people++;
        }
      }
    }
    assertThat(people).isPositive();
  }

  /** Once trials have been played nothing more is allocated for others. */
  @Test
  void shouldAllocateNothingInATrial() {
    for (int seed = 1; seed <= MORNINGS; seed++) {
      ForecastInput in = RandomMorning.of(seed, 3, FIRST, false);
      List<Integer> rooms = IntStream.range(0, in.rooms().size()).boxed().toList();
      Trial trial = new Trial(Compiler.compile(in, rooms));
      played(trial, -1);
      assertThat(allocated(() -> played(trial, -1))).as("morning %d", seed).isZero();
      assertThat(allocated(() -> played(trial, 7))).isPositive();
    }
  }

  /** Kept where the compiler can't see that nobody wants it. */
  private long[] planted = {};

  private void played(Trial trial, int mistake) {
    for (int n = 0; n < FIRST; n++) {
      trial.run(n);
      planted = n == mistake ? new long[2] : planted;
    }
  }

  private static long allocated(Runnable work) {
    ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long id = Thread.currentThread().getId();
    long before = thread.getThreadAllocatedBytes(id);
    work.run();
    return thread.getThreadAllocatedBytes(id) - before;
  }

  /** What is kept of trials is a few late pieces a room. */
  @Test
  void shouldKeepLittleOfATrial() {
    ForecastInput in = RandomMorning.of(3, 3, ALL, false);
    List<Integer> rooms = IntStream.range(0, in.rooms().size()).boxed().toList();
    Part part = new Part(in, rooms);
    part.run(FIRST);
    part.run(2 * FIRST);
    long bytes = allocated(() -> part.run(ALL)) - bytesOfMoments(part, ALL - 2 * FIRST);
    assertThat(bytes / (ALL - 2 * FIRST)).isBetween(0L, 2_000L * in.rooms().size());
  }

  private static long bytesOfMoments(Part part, int trials) {
    return 2L * Integer.BYTES * trials * part.model.undone.length;
  }
}
