package sunup.push;

import com.nimbusds.jose.JOSEException;
import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpClient;
import io.vertx.core.http.HttpClientOptions;
import io.vertx.core.http.HttpClientRequest;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.PoolOptions;
import io.vertx.core.http.RequestOptions;
import io.vertx.core.net.PemTrustOptions;
import io.vertx.core.net.SocketAddress;
import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sends the one message that there is. Names are looked up and messages sealed on threads of its
 * own, and no thread waits for a push service's answer: whatever one of them does, neither the
 * board nor another one's phones wait for it. A message that can't be sent is not tried again; the
 * page has it anyway.
 */
public final class PushSender implements AutoCloseable {
  /** All that a push says. Of whom, for which room and what is on the page only. */
  public static final String WORDS = "something is asked of you";

  /** Messages that wait for a thread; more are not sent. */
  static final int WAITING_MAX = 256;

  static final int THREADS = 4;

  /** Messages that services have not answered yet; more are not sent. */
  static final int UNDER_WAY_MAX = 256;

  /** Of these, to one service at the same time; others wait for it, ten seconds at most. */
  static final int OF_SERVICE_MAX = 16;

  /** For how long a push service keeps it for a phone that is off: later it says nothing true. */
  static final int TTL_SECONDS = 120;

  /** A newer message takes the place of one that was not delivered yet. */
  static final String TOPIC = "asked";

  private static final int CONNECT_MS = 5_000;
  private static final int WHOLE_MS = 10_000;
  private static final int GONE = 410;
  private static final int NOT_FOUND = 404;

  /** Of those that failed the first and one in so many is told in the log. */
  private static final int TOLD_EACH = 100;

  private static final Logger LOG = LoggerFactory.getLogger(PushSender.class);

  private final PushKey key;
  private final PushWay way;
  private final HttpClient http;

  /** A message that has not gone and been answered after so long is given up. */
  private final long wholeMs;

  private final AtomicLong failed = new AtomicLong();
  private final AtomicInteger underWay = new AtomicInteger();
  private final ThreadPoolExecutor pool =
      new ThreadPoolExecutor(
          THREADS,
          THREADS,
          10,
          TimeUnit.SECONDS,
          new ArrayBlockingQueue<>(WAITING_MAX),
          task -> {
            Thread made = new Thread(task, "sunup-push");
            made.setDaemon(true);
            return made;
          });

  public PushSender(Vertx vertx, PushKey key, PushWay way) {
    this(vertx, key, way, WHOLE_MS);
  }

  PushSender(Vertx vertx, PushKey key, PushWay way, long wholeMs) {
    this.key = key;
    this.wholeMs = wholeMs;
    this.way = way;
    HttpClientOptions options =
        new HttpClientOptions()
            .setSsl(true)
            .setConnectTimeout(CONNECT_MS)
            .setIdleTimeout(WHOLE_MS)
            .setIdleTimeoutUnit(TimeUnit.MILLISECONDS)
            .setKeepAlive(false);
    if (way.roots() != null) {
      options.setTrustOptions(new PemTrustOptions().addCertPath(way.roots()));
    }
    PoolOptions connections =
        new PoolOptions().setHttp1MaxSize(OF_SERVICE_MAX).setMaxWaitQueueSize(UNDER_WAY_MAX);
    this.http = vertx.createHttpClient(options, connections);
    pool.allowCoreThreadTimeOut(true);
  }

  /**
   * Sends it if there is room. Returns at once.
   *
   * @param now real time
   * @param gone run if the push service says that there is no such browser any more
   */
  public void send(Subscription to, PushTerms terms, long now, Runnable gone) {
    try {
      Age age = new Age(System.nanoTime());
      pool.execute(() -> sendNow(to, terms, now, age, gone));
    } catch (RejectedExecutionException full) {
      notSent("too many wait");
    }
  }

  /** Since when a message is to be sent, by a clock that only goes on. */
  private record Age(long sinceNanos) {
    long ms() {
      return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - sinceNanos);
    }
  }

  private void sendNow(Subscription to, PushTerms terms, long now, Age age, Runnable gone) {
    if (underWay.incrementAndGet() > UNDER_WAY_MAX) {
      underWay.decrementAndGet();
      notSent("too many are not answered");
      return;
    }
    AtomicReference<HttpClientRequest> asked = new AtomicReference<>();
    Future<Integer> answer;
    try {
      answer = post(to, terms, now, age, asked);
    } catch (IOException | GeneralSecurityException | JOSEException | RuntimeException e) {
      answer = Future.failedFuture(e);
    }
    answer
        .timeout(Math.max(1, wholeMs - age.ms()), TimeUnit.MILLISECONDS)
        .onComplete(
            done -> {
              underWay.decrementAndGet();
              if (done.failed()) {
                HttpClientRequest unanswered = asked.get();
                if (unanswered != null) {
                  // Its connection is for others that wait for this service.
                  unanswered.reset();
                }
                notSent(String.valueOf(done.cause().getMessage()));
              } else if (done.result() == GONE || done.result() == NOT_FOUND) {
                gone.run();
              } else if (done.result() / 100 != 2) {
                notSent("answered " + done.result());
              }
            });
  }

  private Future<Integer> post(
      Subscription to, PushTerms terms, long now, Age age, AtomicReference<HttpClientRequest> kept)
      throws IOException, GeneralSecurityException, JOSEException {
    URI at = terms.endpoint(to.endpoint(), way);
    InetAddress address = way.address(at.getHost());
    int port = at.getPort() == -1 ? 443 : at.getPort();
    byte[] sealed = Sealed.of(WORDS.getBytes(StandardCharsets.UTF_8), to);
    String path = at.getRawPath().isEmpty() ? "/" : at.getRawPath();
    long left = wholeMs - age.ms();
    if (left <= 0) {
      throw new IOException("it waited too long");
    }
    RequestOptions asked =
        new RequestOptions()
            .setMethod(HttpMethod.POST)
            .setServer(SocketAddress.inetSocketAddress(port, address.getHostAddress()))
            .setHost(at.getHost())
            .setPort(port)
            .setURI(at.getRawQuery() == null ? path : path + "?" + at.getRawQuery())
            .setFollowRedirects(false)
            // Of one that waits for a connection too: it leaves the queue.
            .setConnectTimeout(left)
            .putHeader("Authorization", key.shown(at, terms.contact(), now))
            .putHeader("Content-Encoding", "aes128gcm")
            .putHeader("Content-Type", "application/octet-stream")
            .putHeader("TTL", Integer.toString(TTL_SECONDS))
            .putHeader("Urgency", "high")
            .putHeader("Topic", TOPIC);
    return http.request(asked)
        .compose(
            request -> {
              kept.set(request);
              // One that goes at the last moment is given up, and is delivered all the same.
              if (age.ms() >= wholeMs - wholeMs / 10) {
                request.reset();
                return Future.failedFuture("it waited too long");
              }
              return request
                  .send(Buffer.buffer(sealed))
                  .map(
                      response -> {
                        int status = response.statusCode();
                        // What else it says is of no use, however much it is.
                        request.connection().close();
                        return status;
                      });
            });
  }

  /** The address is a secret of the phone's owner and stands in no log. */
  private void notSent(String why) {
    long many = failed.incrementAndGet();
    if (many % TOLD_EACH == 1) {
      LOG.warn("a push was not sent ({} so far): {}", many, why);
    }
  }

  /** How many could not be sent since the start. */
  public long failed() {
    return failed.get();
  }

  @Override
  public void close() {
    pool.shutdownNow();
    http.close();
  }
}
