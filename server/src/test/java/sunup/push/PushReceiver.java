package sunup.push;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import io.vertx.core.http.HttpServerOptions;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.net.PemKeyCertOptions;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.SecureRandom;
import java.security.interfaces.ECPublicKey;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javax.crypto.Cipher;
import javax.crypto.KeyAgreement;
import javax.crypto.Mac;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import sunup.tls.Identity;
import sunup.tls.TlsOptions;

/** A push service over https on this machine, and the browser behind it, which opens what comes. */
public final class PushReceiver {
  private static final int WAIT_SECONDS = 20;
  private static final int HEADER = 21;
  private static final String SILENT = "/push/silent";

  private final KeyPair browser = pair();
  private final byte[] auth = new byte[16];
  private final BlockingQueue<Got> got = new LinkedBlockingQueue<>();
  private final Path tls;
  private final HttpServer server;
  private volatile int answer = 201;

  /** A message as it came, opened. */
  public record Got(String path, Map<String, String> headers, String words) {}

  public PushReceiver(Vertx vertx, Path folder) throws Exception {
    new SecureRandom().nextBytes(auth);
    tls = folder.resolve("push-tls");
    Identity.open(vertx, TlsOptions.ownRoot(tls, List.of()), Instant::now).close();
    PemKeyCertOptions its =
        new PemKeyCertOptions()
            .addCertPath(tls.resolve("server.pem").toString())
            .addKeyPath(tls.resolve("server.key.pem").toString());
    server =
        vertx
            .createHttpServer(new HttpServerOptions().setSsl(true).setKeyCertOptions(its))
            .requestHandler(this::received)
            .listen(0, "127.0.0.1")
            .toCompletionStage()
            .toCompletableFuture()
            .get(WAIT_SECONDS, TimeUnit.SECONDS);
  }

  private static KeyPair pair() {
    try {
      KeyPairGenerator pairs = KeyPairGenerator.getInstance("EC");
      pairs.initialize(new ECGenParameterSpec("secp256r1"));
      return pairs.generateKeyPair();
    } catch (java.security.GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What services have to prove themselves with here. */
  public String roots() {
    return tls.resolve("root.pem").toString();
  }

  public String endpoint() {
    return "https://localhost:" + server.actualPort() + "/push/one-phone";
  }

  /** A phone whose messages are taken and never answered. */
  public String silentEndpoint() {
    return "https://localhost:" + server.actualPort() + SILENT;
  }

  public String key() {
    return text(Points.written((ECPublicKey) browser.getPublic()));
  }

  public String auth() {
    return text(auth);
  }

  private static String text(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** It answers so from now on. */
  public void answers(int status) {
    answer = status;
  }

  /** The next message, or null if none came in this time. */
  public Got next(long ms) throws InterruptedException {
    return got.poll(ms, TimeUnit.MILLISECONDS);
  }

  private void received(HttpServerRequest request) {
    request
        .body()
        .onSuccess(
            body -> {
              Map<String, String> headers = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
              request.headers().forEach(headers::put);
              Got one = new Got(request.path(), headers, open(body.getBytes()));
              if (!request.path().equals(SILENT)) {
                request.response().setStatusCode(answer).end().onComplete(sent -> got.add(one));
              }
            });
  }

  /** As a browser does it, by RFC 8291, written apart from what seals. */
  private String open(byte[] body) {
    try {
      ByteBuffer in = ByteBuffer.wrap(body);
      byte[] salt = new byte[16];
      in.get(salt);
      int recordBytes = in.getInt();
      byte[] theirs = new byte[in.get()];
      in.get(theirs);
      byte[] record = Arrays.copyOfRange(body, HEADER + theirs.length, body.length);
      if (record.length > recordBytes) {
        throw new IllegalStateException("more than one record");
      }
      KeyAgreement agreed = KeyAgreement.getInstance("ECDH");
      agreed.init(browser.getPrivate());
      agreed.doPhase(Points.read(theirs), true);
      byte[] info = "WebPush: info\0".getBytes(StandardCharsets.US_ASCII);
      byte[] own = Points.written((ECPublicKey) browser.getPublic());
      byte[] ikm = expand(mac(auth, agreed.generateSecret()), info, own, theirs);
      byte[] prk = mac(salt, ikm);
      byte[] key = expand(prk, "Content-Encoding: aes128gcm\0".getBytes(StandardCharsets.US_ASCII));
      byte[] nonce = expand(prk, "Content-Encoding: nonce\0".getBytes(StandardCharsets.US_ASCII));
      Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
      cipher.init(
          Cipher.DECRYPT_MODE,
          new SecretKeySpec(key, 0, 16, "AES"),
          new GCMParameterSpec(128, nonce, 0, 12));
      byte[] plain = cipher.doFinal(record);
      int end = plain.length - 1;
      while (plain[end] == 0) {
        end--;
      }
      if (plain[end] != 2) {
        throw new IllegalStateException("not the last record");
      }
      return new String(plain, 0, end, StandardCharsets.UTF_8);
    } catch (java.security.GeneralSecurityException e) {
      return "could not be opened: " + e.getMessage();
    }
  }

  private static byte[] mac(byte[] key, byte[]... of)
      throws java.security.GeneralSecurityException {
    Mac mac = Mac.getInstance("HmacSHA256");
    mac.init(new SecretKeySpec(key, "HmacSHA256"));
    for (byte[] each : of) {
      mac.update(each);
    }
    return mac.doFinal();
  }

  private static byte[] expand(byte[] prk, byte[]... info)
      throws java.security.GeneralSecurityException {
    byte[][] all = Arrays.copyOf(info, info.length + 1);
    all[info.length] = new byte[] {1};
    return mac(prk, all);
  }
}
