package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpClient;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.RequestOptions;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import sunup.access.KeyHolder;
import sunup.access.PairingOptions;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.codec.Json;
import sunup.intake.SiteFile;
import sunup.live.fake.TickingClock;
import sunup.suites.Clock;
import sunup.wire.AccessAsk;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** The whole server with pairing, and a desk at which its first administrator is signed on. */
abstract class PairedBoard {
  static final String PIN = "480915";
  private static final AtomicInteger SAID = new AtomicInteger();

  @TempDir Path folder;
  final Vertx vertx = Vertx.vertx();
  HttpClient http;
  SunupServer server;

  /** Of the first administrator, {@code K1}. */
  KeyHolder desk;

  @BeforeEach
  void start() throws Exception {
    for (String suite : suites()) {
      Files.writeString(
          site(suite),
          SiteFile.standardText().replace("\"suite\": \"main\"", "\"suite\": \"" + suite + "\""));
    }
    http = vertx.createHttpClient();
    begin();
    desk = screen().first(server.firstLink().orElseThrow(), "K1", PIN);
  }

  void begin() throws Exception {
    begin(new PairingOptions(null));
  }

  void begin(PairingOptions pairing) throws Exception {
    ServerOptions options =
        ServerOptions.of(
                folder.resolve("data"), suites().stream().map(this::site).toList(), 0, clock())
            .pairing(pairing);
    server = await(SunupServer.start(vertx, options));
  }

  /** The first is that of the desk. */
  List<String> suites() {
    return List.of("main");
  }

  private Path site(String suite) {
    return folder.resolve(suite.equals("main") ? "site.json" : suite + ".json");
  }

  Clock clock() {
    return new TickingClock();
  }

  @AfterEach
  void end() throws Exception {
    await(server.close());
    await(vertx.close());
  }

  static <T> T await(io.vertx.core.Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
  }

  KeyHolder screen() {
    return new KeyHolder(vertx, server.port());
  }

  KeyHolder paired(String page, String room) throws Exception {
    KeyHolder made = screen().open(page);
    RoomId of = room == null ? null : new RoomId(room);
    ServerMessage.Told told = desk.ask(new AccessAsk.Pair(made.code(), page, null, of));
    assertThat(told.done()).as(told.words()).isTrue();
    made.paired();
    return made;
  }

  int status(String path, String pass) throws Exception {
    return status(HttpMethod.GET, path, pass);
  }

  /** What a request with an empty body is answered. */
  int status(HttpMethod method, String path, String pass) throws Exception {
    RequestOptions asked =
        new RequestOptions()
            .setMethod(method)
            .setHost("127.0.0.1")
            .setPort(server.port())
            .setURI(path);
    if (pass != null) {
      asked.putHeader("Sunup-Pass", pass);
    }
    return await(
        http.request(asked)
            .compose(request -> request.send().compose(r -> r.body().map(b -> r.statusCode()))));
  }

  /** Takes a list with one case in room 1, as the desk, and opens the morning. */
  void planned() throws Exception {
    String list = "room,start,technique\n1,07:30,general\n";
    String preview = posted("/api/intake/preview", list);
    String hash = Json.mapper().readTree(preview).path("hash").asText();
    posted("/api/intake/take?hash=" + hash, list);
    assertThat(say(desk, new Command.OpenMorning())).isNull();
  }

  private String posted(String path, String csv) throws Exception {
    RequestOptions asked =
        new RequestOptions()
            .setMethod(HttpMethod.POST)
            .setHost("127.0.0.1")
            .setPort(server.port())
            .putHeader("Sunup-Pass", desk.pass())
            .putHeader("Content-Type", "text/csv")
            .setURI(path);
    return await(
        http.request(asked)
            // Nested: a handler that this thread adds after the answer came would miss its body.
            .compose(
                request ->
                    request
                        .send(csv)
                        .compose(
                            r ->
                                r.body()
                                    .map(
                                        body -> {
                                          assertThat(r.statusCode())
                                              .as(body.toString())
                                              .isEqualTo(200);
                                          return body.toString();
                                        }))));
  }

  /** Gives a command and tells the code of its refusal, or null if it was done. */
  static String say(KeyHolder at, Command command) throws Exception {
    CommandId id = new CommandId("say-" + SAID.incrementAndGet());
    long now = System.currentTimeMillis();
    at.socket().send(new ClientMessage.Send(id, null, null, now, 0, null, command));
    ServerMessage.Answer answer =
        at.socket().await(ServerMessage.Answer.class, a -> a.id().equals(id));
    return answer.code();
  }

  /** Somebody who may sign on with these roles. */
  void person(String code, String pin, Role... roles) throws Exception {
    ServerMessage.Told told = desk.ask(new AccessAsk.SetPerson(code, pin, List.of(roles)));
    assertThat(told.done()).as(told.words()).isTrue();
  }
}
