package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
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
}
