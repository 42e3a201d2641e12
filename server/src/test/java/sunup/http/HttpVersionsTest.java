package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.vertx.core.MultiMap;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpClientOptions;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpVersion;
import io.vertx.core.http.RequestOptions;
import io.vertx.core.http.StreamResetException;
import io.vertx.core.net.SocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.intake.SiteFile;
import sunup.live.fake.TickingClock;

/** Programs that speak HTTP/2 without TLS reach the board as those do that speak HTTP/1.1. */
class HttpVersionsTest {
  @TempDir private Path folder;
  private final Vertx vertx = Vertx.vertx();
  private SunupServer server;

  @BeforeEach
  void start() throws Exception {
    Files.writeString(folder.resolve("site.json"), SiteFile.standardText());
    server =
        await(
            SunupServer.start(
                vertx,
                ServerOptions.of(
                    folder.resolve("data"), folder.resolve("site.json"), 0, new TickingClock())));
  }

  @AfterEach
  void end() throws Exception {
    await(server.close());
    await(vertx.close());
  }

  private static <T> T await(io.vertx.core.Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  private URI at(String host, String path) {
    return URI.create("http://" + host + ":" + server.port() + path);
  }

  @Test
  void shouldAnswerJavasOwnClientAsItComes() throws Exception {
    HttpClient client = HttpClient.newHttpClient();
    for (String host : new String[] {"127.0.0.1", "localhost"}) {
      HttpRequest read = HttpRequest.newBuilder(at(host, "/api/site")).build();
      // The first request asks for the change to HTTP/2, the second is made in it.
      for (int i = 0; i < 2; i++) {
        HttpResponse<String> got = client.send(read, HttpResponse.BodyHandlers.ofString());
        assertThat(got.statusCode()).as(got.body()).isEqualTo(200);
        assertThat(got.version()).isEqualTo(HttpClient.Version.HTTP_2);
      }
      HttpRequest write =
          HttpRequest.newBuilder(at(host, "/api/intake/preview"))
              .header("Content-Type", "text/csv")
              .POST(HttpRequest.BodyPublishers.ofString("room,start,technique\n1,07:30,general\n"))
              .build();
      HttpResponse<String> preview = client.send(write, HttpResponse.BodyHandlers.ofString());
      assertThat(preview.statusCode()).as(preview.body()).isEqualTo(200);
    }
  }

  @Test
  void shouldTakeTheOwnOriginOverHttp2AndRefuseAnother() throws Exception {
    HttpClient client = HttpClient.newHttpClient();
    URI at = at("127.0.0.1", "/api/intake/preview");
    for (boolean own : new boolean[] {true, false}) {
      String origin = own ? "http://127.0.0.1:" + server.port() : "http://elsewhere.example";
      HttpRequest write =
          HttpRequest.newBuilder(at)
              .header("Content-Type", "text/csv")
              .header("Origin", origin)
              .POST(HttpRequest.BodyPublishers.ofString("room,start,technique\n1,07:30,general\n"))
              .build();
      HttpResponse<String> got = client.send(write, HttpResponse.BodyHandlers.ofString());
      assertThat(got.version()).isEqualTo(HttpClient.Version.HTTP_2);
      assertThat(got.statusCode()).as(got.body()).isEqualTo(own ? 200 : 403);
    }
  }

  @Test
  void shouldRefuseAnotherHostsNameOverHttp2() throws Exception {
    assertThat(asked("board.example", MultiMap.caseInsensitiveMultiMap())).isEqualTo(421);
    MultiMap twice = MultiMap.caseInsensitiveMultiMap().add("host", "board.example");
    assertThatThrownBy(() -> asked("127.0.0.1", twice))
        .as("two names that differ")
        .hasRootCauseInstanceOf(StreamResetException.class);
    assertThat(asked("127.0.0.1", MultiMap.caseInsensitiveMultiMap())).isEqualTo(200);
  }

  private int asked(String name, MultiMap headers) throws Exception {
    io.vertx.core.http.HttpClient client =
        vertx.createHttpClient(
            new HttpClientOptions()
                .setProtocolVersion(HttpVersion.HTTP_2)
                .setHttp2ClearTextUpgrade(false));
    RequestOptions options =
        new RequestOptions()
            .setMethod(HttpMethod.GET)
            .setServer(SocketAddress.inetSocketAddress(server.port(), "127.0.0.1"))
            .setHost(name)
            .setPort(server.port())
            .setURI("/api/site")
            .setHeaders(headers);
    return await(
        client
            .request(options)
            .compose(request -> request.send(Buffer.buffer()))
            .map(response -> response.statusCode()));
  }
}
