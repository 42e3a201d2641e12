package sunup.push;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import java.net.InetAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Phones are told whatever becomes of what others are told. */
class PushSenderTest {
  private static final PushTerms ANY = new PushTerms("mailto:it@hospital.example", List.of());

  /** Less than a message that is not answered is waited for. */
  private static final long SOON_MS = 8_000;

  @TempDir Path folder;
  private final Vertx vertx = Vertx.vertx();

  @AfterEach
  void end() throws Exception {
    vertx.close().toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  @Test
  void shouldTellAPhoneWhileManyOtherMessagesAreNotAnswered() throws Exception {
    PushReceiver receiver = new PushReceiver(vertx, folder);
    PushWay way = new PushWay(InetAddress::isLoopbackAddress, true, receiver.roots(), 0);
    long now = System.currentTimeMillis();
    try (PushSender sender = new PushSender(vertx, PushKey.of(PushKey.made()), way)) {
      for (int i = 0; i < 2 * PushSender.THREADS; i++) {
        sender.send(to(receiver, receiver.silentEndpoint()), ANY, now, () -> {});
      }
      sender.send(to(receiver, receiver.endpoint()), ANY, now, () -> {});

      PushReceiver.Got got = receiver.next(SOON_MS);
      assertThat(got).isNotNull();
      assertThat(got.words()).isEqualTo(PushSender.WORDS);
      assertThat(sender.failed()).isZero();
    }
  }

  /** What was given up is not delivered late, as if it were asked now. */
  @Test
  void shouldSendNoMessageThatWasGivenUpWhileItWaitedForASilentService() throws Exception {
    PushReceiver receiver = new PushReceiver(vertx, folder);
    PushWay way = new PushWay(InetAddress::isLoopbackAddress, true, receiver.roots(), 0);
    long now = System.currentTimeMillis();
    int waiting = 5;
    try (PushSender sender = new PushSender(vertx, PushKey.of(PushKey.made()), way, 1_500)) {
      for (int i = 0; i < PushSender.OF_SERVICE_MAX; i++) {
        sender.send(to(receiver, receiver.silentEndpoint()), ANY, now, () -> {});
      }
      for (int i = 0; i < waiting; i++) {
        sender.send(to(receiver, receiver.endpoint()), ANY, now, () -> {});
      }
      int came = 0;
      while (sender.failed() + came < PushSender.OF_SERVICE_MAX + waiting) {
        came += receiver.next(20) == null ? 0 : 1;
      }

      String next = receiver.endpoint() + "-that-is-asked-now";
      sender.send(to(receiver, next), ANY, now, () -> {});

      PushReceiver.Got got = receiver.next(SOON_MS);
      assertThat(got).isNotNull();
      assertThat(got.path()).endsWith("-that-is-asked-now");
    }
  }

  private static Subscription to(PushReceiver receiver, String endpoint) {
    return Subscription.of(endpoint, receiver.key(), receiver.auth());
  }
}
