package sunup.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.review.replay.PastWall;

class PastsTest {
  private static MorningId morning(int day) {
    return new MorningId(new SuiteId("main"), LocalDate.of(2026, 11, day));
  }

  private static PastWall wall(int day) {
    return new PastWall(LocalDate.of(2026, 11, day), "UTC", 0, 0, 0, 0, List.of());
  }

  @Test
  void shouldLetNobodyWaitForAMorningThatSomebodyElseAskedFor() throws Exception {
    Pasts pasts = new Pasts(4);
    CountDownLatch slow = new CountDownLatch(1);
    CountDownLatch begun = new CountDownLatch(1);
    AtomicInteger made = new AtomicInteger();
    Pasts.Making making =
        () -> {
          begun.countDown();
          slow.await();
          made.incrementAndGet();
          return wall(1);
        };
    CompletableFuture<PastWall> first = ask(pasts, morning(1), making);
    assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
    CompletableFuture<PastWall> same = ask(pasts, morning(1), making);
    assertThat(ask(pasts, morning(2), () -> wall(2)).get(10, TimeUnit.SECONDS)).isEqualTo(wall(2));
    assertThat(first).isNotDone();
    slow.countDown();
    assertThat(first.get(10, TimeUnit.SECONDS)).isSameAs(same.get(10, TimeUnit.SECONDS));
    assertThat(made).hasValue(1);
  }

  private static CompletableFuture<PastWall> ask(
      Pasts pasts, MorningId morning, Pasts.Making making) {
    return CompletableFuture.supplyAsync(
        () -> {
          try {
            return pasts.of(morning, 9, making);
          } catch (InterruptedException e) {
            throw new AssertionError(e);
          }
        },
        task -> new Thread(task).start());
  }

  @Test
  void shouldMakeOneAnewThatHasGrownOrCouldNotBeMadeAndKeepAFew() throws Exception {
    Pasts pasts = new Pasts(2);
    assertThatThrownBy(
            () ->
                pasts.of(
                    morning(1),
                    9,
                    () -> {
                      throw new IllegalStateException("gone");
                    }))
        .hasMessage("gone");
    PastWall one = pasts.of(morning(1), 9, () -> wall(1));
    assertThat(pasts.of(morning(1), 9, () -> wall(3))).isSameAs(one);
    assertThat(pasts.of(morning(1), 10, () -> wall(3))).isEqualTo(wall(3));
    pasts.of(morning(2), 1, () -> wall(2));
    pasts.of(morning(3), 1, () -> wall(3));
    assertThat(pasts.of(morning(1), 10, () -> wall(4))).as("given up by then").isEqualTo(wall(4));
  }
}
