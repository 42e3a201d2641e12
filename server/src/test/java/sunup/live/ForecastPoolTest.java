package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import sunup.live.fake.ManualClock;

/** What is left out when forecasts take much of the machine. */
class ForecastPoolTest {
  private final ManualClock clock = new ManualClock();
  private final ForecastPool pool =
      new ForecastPool(
          clock,
          new ThreadPoolExecutor(1, 1, 0, TimeUnit.SECONDS, new LinkedBlockingQueue<>(8)),
          2,
          0.5);

  @AfterEach
  void end() {
    pool.close();
  }

  private void work(long ms) throws InterruptedException {
    CountDownLatch done = new CountDownLatch(1);
    pool.execute(() -> clock.pass(ms));
    pool.execute(done::countDown);
    assertThat(done.await(20, TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void shouldBeCrowdedWhileSomethingWaitsForAThread() throws Exception {
    CountDownLatch going = new CountDownLatch(1);
    CountDownLatch end = new CountDownLatch(1);
    assertThat(pool.crowded()).isFalse();
    pool.execute(
        () -> {
          going.countDown();
          try {
            end.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
        });
    assertThat(going.await(20, TimeUnit.SECONDS)).isTrue();
    assertThat(pool.crowded()).isFalse();
    pool.execute(() -> {});
    assertThat(pool.crowded()).isTrue();
    end.countDown();
    work(0);
    assertThat(pool.crowded()).isFalse();
  }

  @Test
  void shouldBeCrowdedForAWhileAfterItsShareOfTimeIsUsed() throws Exception {
    work(1_000);
    assertThat(pool.crowded()).isFalse();
    work(4_000);
    assertThat(pool.crowded()).isTrue();
    clock.pass(5_000);
    assertThat(pool.crowded()).isFalse();
  }

  /** Work that ends for nobody before two have come. */
  private static final class Tasks implements Runnable {
    private final Set<Thread> threads = ConcurrentHashMap.newKeySet();
    private final CountDownLatch several = new CountDownLatch(2);
    private final AtomicInteger done = new AtomicInteger();

    @Override
    public void run() {
      threads.add(Thread.currentThread());
      several.countDown();
      try {
        several.await(20, TimeUnit.SECONDS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      done.incrementAndGet();
    }
  }

  @Test
  void shouldLetAFreeCoreHelpAndWaitForIt() throws Exception {
    Tasks tasks = new Tasks();
    CountDownLatch back = new CountDownLatch(1);
    pool.execute(
        () -> {
          pool.together(tasks);
          assertThat(tasks.done).hasValue(2);
          back.countDown();
        });
    assertThat(back.await(30, TimeUnit.SECONDS)).isTrue();
    assertThat(tasks.threads).hasSize(2);
  }

  @Test
  void shouldWorkAloneOnceForecastsTakeMoreThanTheirShare() throws Exception {
    work(4_000);
    List<Thread> threads = new CopyOnWriteArrayList<>();
    pool.together(() -> threads.add(Thread.currentThread()));
    assertThat(threads).containsExactly(Thread.currentThread());
  }

  @Test
  void shouldTellWhatWentWrongWithAHelper() {
    Thread here = Thread.currentThread();
    CountDownLatch helped = new CountDownLatch(1);
    assertThatThrownBy(
            () ->
                pool.together(
                    () -> {
                      if (Thread.currentThread() != here) {
                        helped.countDown();
                        throw new IllegalStateException("planted by the test");
                      }
                      await(helped);
                    }))
        .hasMessageContaining("planted");
  }

  private static void await(CountDownLatch latch) {
    try {
      assertThat(latch.await(20, TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
