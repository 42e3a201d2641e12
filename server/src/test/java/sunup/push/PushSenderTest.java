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

  private static Subscription to(PushReceiver receiver, String endpoint) {
    return Subscription.of(endpoint, receiver.key(), receiver.auth());
  }
}
