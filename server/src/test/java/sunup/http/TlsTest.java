package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpClientOptions;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpVersion;
import io.vertx.core.http.RequestOptions;
import io.vertx.core.http.StreamResetException;
import io.vertx.core.net.PemTrustOptions;
import io.vertx.core.net.SocketAddress;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.net.http.WebSocketHandshakeException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLHandshakeException;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.intake.SiteFile;
import sunup.live.fake.TickingClock;
import sunup.live.fake.Waiting;
import sunup.tls.TlsOptions;

/** The board over TLS, with clients that check what they are shown. */
class TlsTest {
  private static final int LOOK_MS = 40;

  @TempDir private Path folder;
  private final Vertx vertx = Vertx.vertx();
  private SunupServer server;

  private SunupServer start(String data, TlsOptions tls) throws Exception {
    Files.writeString(folder.resolve("site.json"), SiteFile.standardText());
    ServerOptions options =
        ServerOptions.of(folder.resolve(data), folder.resolve("site.json"), 0, new TickingClock())
            .through(Doors.PLAIN.with(tls).beside(0, "127.0.0.1"));
    return await(SunupServer.start(vertx, options));
  }

  private TlsOptions ownRoot(String name) {
    return TlsOptions.ownRoot(folder.resolve(name), List.of("Board.example")).looking(LOOK_MS);
  }

  @AfterEach
  void end() throws Exception {
    if (server != null) {
      await(server.close());
    }
    await(vertx.close());
  }

  private static <T> T await(io.vertx.core.Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private static X509Certificate certificate(Path pem) throws Exception {
    try (InputStream in = new ByteArrayInputStream(Files.readAllBytes(pem))) {
      return (X509Certificate) CertificateFactory.getInstance("X.509").generateCertificate(in);
    }
  }

  /** Trusts these roots and nothing else. */
  private static SSLContext trusting(Path... roots) throws Exception {
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    for (Path root : roots) {
      store.setCertificateEntry(root.toString(), certificate(root));
    }
    TrustManagerFactory trust = TrustManagerFactory.getInstance("PKIX");
    trust.init(store);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, trust.getTrustManagers(), null);
    return context;
  }

  private HttpResponse<String> get(HttpClient client, String host, String path) throws Exception {
    URI at = URI.create("https://" + host + ":" + server.port() + path);
    return client.send(HttpRequest.newBuilder(at).build(), HttpResponse.BodyHandlers.ofString());
  }

  /** What a connection made now is shown, and the answer to a request by another name. */
  private record Seen(X509Certificate certificate, String protocol, String answer) {}

  private Seen seen(SSLContext context, String host) throws Exception {
    try (SSLSocket socket =
        (SSLSocket) context.getSocketFactory().createSocket("127.0.0.1", server.port())) {
      socket.setSoTimeout(20_000);
      socket.startHandshake();
      String request = "GET /health HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n";
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      String answer =
          new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
      return new Seen(
          (X509Certificate) socket.getSession().getPeerCertificates()[0],
          socket.getSession().getProtocol(),
          answer);
    }
  }

  private static final class Live implements WebSocket.Listener {
    final BlockingQueue<String> got = new LinkedBlockingQueue<>();

    @Override
    public CompletionStage<?> onBinary(WebSocket socket, ByteBuffer data, boolean last) {
      got.add(StandardCharsets.UTF_8.decode(data).toString());
      socket.request(1);
      return null;
    }
  }

  private WebSocket open(HttpClient client, Live live, String origin) {
    return client
        .newWebSocketBuilder()
        .subprotocols("sunup.1")
        .header("Origin", origin)
        .buildAsync(URI.create("wss://localhost:" + server.port() + "/live"), live)
        .join();
  }

  @Test
  void shouldServePagesAndSocketsToWhoTrustsTheSiteRoot() throws Exception {
    server = start("data", ownRoot("tls"));
    Path root = folder.resolve("tls/root.pem");
    HttpClient client = HttpClient.newBuilder().sslContext(trusting(root)).build();
    for (String host : new String[] {"localhost", "127.0.0.1"}) {
      HttpResponse<String> site = get(client, host, "/api/site");
      assertThat(site.statusCode()).isEqualTo(200);
      assertThat(site.version()).isEqualTo(HttpClient.Version.HTTP_2);
      assertThat(site.headers().firstValue("Strict-Transport-Security")).isEmpty();
    }
    String own = "https://localhost:" + server.port();
    Live live = new Live();
    WebSocket socket = open(client, live, own);
    socket.sendText("{\"m\":\"hello\",\"page\":\"wall\",\"screen\":\"w-1\"}", true).join();
    assertThat(live.got.poll(20, TimeUnit.SECONDS)).contains("\"m\":\"view\"");
    socket.abort();
    assertThatThrownBy(() -> open(client, new Live(), own.replace("https", "http")))
        .hasCauseInstanceOf(WebSocketHandshakeException.class)
        .extracting(e -> ((WebSocketHandshakeException) e.getCause()).getResponse().statusCode())
        .isEqualTo(403);

    assertThatThrownBy(() -> get(HttpClient.newHttpClient(), "localhost", "/"))
        .isInstanceOf(SSLHandshakeException.class);
    SSLContext context = trusting(root);
    Seen board = seen(context, "board.example");
    assertThat(board.protocol()).isEqualTo("TLSv1.3");
    assertThat(board.answer()).startsWith("HTTP/1.1 200").contains("max-age=63072000");
    assertThat(seen(context, "evil.example").answer()).startsWith("HTTP/1.1 421");
    board.certificate().verify(certificate(root).getPublicKey());

    assertThat(overHttp2(root, "localhost", null)).isEqualTo(200);
    assertThat(overHttp2(root, "evil.example", null)).isEqualTo(421);
    for (String other : List.of("evil.example", "board.example")) {
      assertThat(overHttp2(root, "localhost", other))
          .as("two names that differ: its stream is reset, or it is refused")
          .isIn(0, 400, 421);
    }
  }

  /** The status of a request whose authority and Host header are these, 0 if it was reset. */
  private int overHttp2(Path root, String authority, String host) throws Exception {
    HttpClientOptions options =
        new HttpClientOptions()
            .setProtocolVersion(HttpVersion.HTTP_2)
            .setSsl(true)
            .setUseAlpn(true)
            .setVerifyHost(false)
            .setTrustOptions(new PemTrustOptions().addCertPath(root.toString()));
    RequestOptions asked =
        new RequestOptions()
            .setMethod(HttpMethod.GET)
            .setServer(SocketAddress.inetSocketAddress(server.port(), "127.0.0.1"))
            .setHost(authority)
            .setPort(server.port())
            .setURI("/health");
    if (host != null) {
      asked.putHeader("host", host + ":" + server.port());
    }
    io.vertx.core.http.HttpClient client = vertx.createHttpClient(options);
    try {
      return await(client.request(asked).compose(r -> r.send()).map(answer -> answer.statusCode()));
    } catch (ExecutionException e) {
      assertThat(e).hasRootCauseInstanceOf(StreamResetException.class);
      return 0;
    } finally {
      await(client.close());
    }
  }

  @Test
  void shouldKeepItsKeysToItselfItsRootOverARestartAndTellHowItIsInstalled() throws Exception {
    server = start("data", ownRoot("tls"));
    for (String key : new String[] {"root.key.pem", "server.key.pem"}) {
      Path file = folder.resolve("tls").resolve(key);
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
          .isEqualTo("rw-------");
    }
    Path root = folder.resolve("tls/root.pem");
    String fingerprint = server.rootFingerprint();
    HttpClient client = HttpClient.newBuilder().sslContext(trusting(root)).build();
    assertThat(get(client, "localhost", "/trust").body()).contains(fingerprint);
    assertThat(get(client, "localhost", "/trust/root.pem").body())
        .isEqualTo(Files.readString(root))
        .doesNotContain("PRIVATE");
    assertThat(get(client, "localhost", "/trust/page.css").statusCode()).isEqualTo(200);
    assertThat(get(client, "localhost", "/trust/root.key.pem").statusCode()).isEqualTo(404);
    URI side = URI.create("http://127.0.0.1:" + server.sidePort() + "/metrics");
    assertThat(
            client
                .send(HttpRequest.newBuilder(side).build(), HttpResponse.BodyHandlers.ofString())
                .body())
        .contains("sunup_certificate_end_seconds ");
    await(server.close());
    server = start("data", ownRoot("tls"));
    assertThat(server.rootFingerprint()).isEqualTo(fingerprint);
  }

  @Test
  void shouldShowARenewedCertificateWithoutARestartAndKeepTheOldOneWhenTheNewOneIsWrong()
      throws Exception {
    for (String name : new String[] {"old", "new"}) {
      server = start("data-" + name, ownRoot(name));
      await(server.close());
    }
    Path certificate = folder.resolve("board.pem");
    Path key = folder.resolve("board.key");
    put("old", "server.pem", certificate);
    put("old", "server.key.pem", key);
    server = start("data", TlsOptions.files(certificate, key, List.of()).looking(LOOK_MS));
    SSLContext context = trusting(folder.resolve("old/root.pem"), folder.resolve("new/root.pem"));
    X509Certificate old = certificate(folder.resolve("old/server.pem"));
    assertThat(seen(context, "localhost").certificate()).isEqualTo(old);
    HttpClient client = HttpClient.newBuilder().sslContext(context).build();
    Live live = new Live();
    WebSocket stays = open(client, live, "https://localhost:" + server.port());

    // The certificate alone: it does not fit the key, so the old pair is shown on.
    put("new", "server.pem", certificate);
    for (int i = 0; i < 5; i++) {
      assertThat(seen(context, "localhost").certificate()).isEqualTo(old);
    }
    put("new", "server.key.pem", key);
    X509Certificate renewed = certificate(folder.resolve("new/server.pem"));
    Waiting.until(() -> shows(context, renewed));
    HttpClient anew = HttpClient.newBuilder().sslContext(context).build();
    assertThat(get(anew, "localhost", "/api/site").version()).isEqualTo(HttpClient.Version.HTTP_2);

    stays.sendText("{\"m\":\"hello\",\"page\":\"wall\",\"screen\":\"w-1\"}", true).join();
    assertThat(live.got.poll(20, TimeUnit.SECONDS)).contains("\"m\":\"view\"");
    stays.abort();
  }

  private boolean shows(SSLContext context, X509Certificate certificate) {
    try {
      return seen(context, "localhost").certificate().equals(certificate);
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  private void put(String from, String name, Path to) throws IOException {
    Path part = folder.resolve("part");
    Files.copy(folder.resolve(from).resolve(name), part, StandardCopyOption.COPY_ATTRIBUTES);
    Files.move(part, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  @Test
  void shouldSayWhatIsWrongWithTheFilesInsteadOfStarting() throws Exception {
    server = start("one", ownRoot("one-tls"));
    await(server.close());
    server = null;
    Path certificate = folder.resolve("one-tls/server.pem");
    Path key = folder.resolve("one-tls/server.key.pem");
    Path other = folder.resolve("one-tls/root.key.pem");
    assertThatThrownBy(() -> start("a", TlsOptions.files(key, key, List.of())))
        .hasMessageContaining("holds no certificate");
    assertThatThrownBy(() -> start("a", TlsOptions.files(certificate, other, List.of())))
        .hasMessageContaining("does not belong");
    assertThatThrownBy(
            () -> start("a", TlsOptions.files(certificate, folder.resolve("no"), List.of())))
        .hasMessageContaining("can't be read");
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-r--r--"));
    assertThatThrownBy(() -> start("a", TlsOptions.files(certificate, key, List.of())))
        .hasMessageContaining("chmod 600");
  }
}
