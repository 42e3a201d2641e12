package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpClient;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import sunup.access.KeyHolder;
import sunup.access.PairingOptions;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.intake.SiteFile;
import sunup.live.fake.TickingClock;
import sunup.wire.AccessAsk;
import sunup.wire.ServerMessage;

/** The whole server with pairing, and a desk at which its first administrator is signed on. */
abstract class PairedBoard {
  static final String PIN = "480915";

  @TempDir private Path folder;
  final Vertx vertx = Vertx.vertx();
  HttpClient http;
  SunupServer server;

  /** Of the first administrator, {@code K1}. */
  KeyHolder desk;

  @BeforeEach
  void start() throws Exception {
    Files.writeString(folder.resolve("site.json"), SiteFile.standardText());
    http = vertx.createHttpClient();
    begin();
    desk = screen().first(server.firstLink().orElseThrow(), "K1", PIN);
  }

  void begin() throws Exception {
    ServerOptions options =
        ServerOptions.of(folder.resolve("data"), folder.resolve("site.json"), 0, new TickingClock())
            .pairing(new PairingOptions(null));
    server = await(SunupServer.start(vertx, options));
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

  /** Somebody who may sign on with these roles. */
  void person(String code, String pin, Role... roles) throws Exception {
    ServerMessage.Told told = desk.ask(new AccessAsk.SetPerson(code, pin, List.of(roles)));
    assertThat(told.done()).as(told.words()).isTrue();
  }
}
