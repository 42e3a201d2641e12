package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.RequestOptions;
import java.nio.file.Path;
import java.security.KeyPair;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import sunup.access.KeyHolder;
import sunup.access.PairingOptions;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.live.fake.TestScreen;
import sunup.wire.AccessAsk;
import sunup.wire.AccessList;
import sunup.wire.Audience;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** Screens become ours and cease to be, over real sockets and a real database. */
class PairingTest extends PairedBoard {
  private AccessList list() throws Exception {
    return desk.ask(new AccessAsk.Look()).list();
  }

  @Test
  void shouldShowACodeAndNothingElseUntilADeskHasTypedIt() throws Exception {
    KeyHolder wall = screen().open("wall");
    ServerMessage.Pairing shown = wall.socket().await(ServerMessage.Pairing.class, p -> true);
    assertThat(shown.address()).isEqualTo("127.0.0.1");
    assertThat(wall.socket().all(ServerMessage.View.class)).isEmpty();

    ServerMessage.Told found =
        desk.ask(new AccessAsk.LookUp(shown.code().toLowerCase(Locale.ROOT)));
    assertThat(found.list().asks().address()).isEqualTo("127.0.0.1");
    assertThat(found.list().asks().page()).isEqualTo("wall");
    ServerMessage.Told told = desk.ask(new AccessAsk.Pair(shown.code(), "wall", null, null));

    assertThat(told.done()).as(told.words()).isTrue();
    assertThat(wall.paired().page()).isEqualTo("wall");
    ServerMessage.View view = wall.socket().await(ServerMessage.View.class, v -> true);
    assertThat(view.audience()).isEqualTo(Audience.WALL);
    // A code counts once.
    assertThat(desk.ask(new AccessAsk.Pair(shown.code(), "desk", null, null)).done()).isFalse();
  }

  @Test
  void shouldKnowTheScreenAgainByItsKeyAlsoAfterTheBoardWasStartedAgain() throws Exception {
    KeyHolder station = paired("station", "4");
    KeyPair key = station.key();
    await(server.close());
    begin();

    KeyHolder again = screen().turn(key).open("station");

    assertThat(again.paired().screen()).isEqualTo("station-4");
    assertThat(again.paired().room()).isEqualTo(new RoomId("4"));
    assertThat(again.socket().await(ServerMessage.View.class, v -> true).audience())
        .isEqualTo(Audience.STAFF);
    assertThat(server.firstLink()).isEmpty();
  }

  @Test
  void shouldLetGoOfEverythingWhenItDoesNotStart() throws Exception {
    await(server.close());
    Path other = folder.resolve("other");
    assertThatThrownBy(() -> begin(new PairingOptions(other)))
        .hasMessageContaining("--pepper-lost");

    begin();

    assertThat(screen().turn(desk.key()).open("desk").paired().page()).isEqualTo("desk");
  }

  @Test
  void shouldRefuseAProofThatWasHeardElsewhere() throws Exception {
    KeyHolder station = paired("station", "4");
    String nonce = station.knock("station");
    TestScreen first = station.socket();
    var heard = station.proof(nonce);
    first.send(heard);
    first.await(ServerMessage.View.class, v -> true);

    KeyHolder thief = screen();
    thief.knock("station");
    thief.socket().send(heard);

    assertThat(thief.socket().closeCode()).isEqualTo(1008);
    assertThat(thief.socket().all(ServerMessage.Paired.class)).isEmpty();
  }

  @Test
  void shouldTellAScreenNothingOfAnotherPage() throws Exception {
    KeyHolder wall = paired("wall", null);
    KeyHolder other = screen().turn(wall.key()).open("desk");

    assertThat(other.socket().closeCode()).isEqualTo(1008);
    assertThat(other.socket().all(ServerMessage.View.class)).isEmpty();
  }

  @Test
  void shouldCloseTheSocketsOfAScreenThatIsRevokedAndOpenNoMore() throws Exception {
    KeyHolder station = paired("station", "4");
    String pass = station.paired().pass();
    assertThat(status("/api/site", pass)).isEqualTo(200);
    String id =
        list().screens().stream()
            .filter(s -> s.name().equals("station-4"))
            .findFirst()
            .orElseThrow()
            .screen();

    assertThat(desk.ask(new AccessAsk.Revoke(id)).done()).isTrue();

    assertThat(station.socket().closeCode()).isEqualTo(1008);
    assertThat(status("/api/site", pass)).isEqualTo(401);
    KeyHolder again = screen().turn(station.key()).open("station");
    assertThat(again.code()).isNotEmpty();
    assertThat(again.socket().all(ServerMessage.View.class)).isEmpty();
  }

  @Test
  void shouldKeepTheOldKeyUntilTheNewOneWasUsed() throws Exception {
    KeyHolder station = paired("station", "4");
    KeyPair old = station.key();
    String nonce = station.knock("station");
    station.socket().send(station.proof(nonce));
    station.paired();
    KeyPair next = station.newKeyAsked(nonce);
    station.socket().await(ServerMessage.Told.class, t -> t.id().equals("new-key") && t.done());

    // Lost on its way to the screen's memory: the old one still opens.
    KeyHolder still = screen().turn(old).open("station");
    assertThat(still.paired().screen()).isEqualTo("station-4");
    KeyHolder turned = screen().turn(next).open("station");
    assertThat(turned.paired().screen()).isEqualTo("station-4");

    assertThat(still.socket().closeCode()).isEqualTo(1008);
    assertThat(screen().turn(old).open("station").code()).isNotEmpty();
  }

  @Test
  void shouldStopWhoTriesCodesAtADesk() throws Exception {
    KeyHolder wall = screen().open("wall");
    String right = wall.code();
    for (String wrong : List.of("AAAA", "BBBB", "CCCC", "DDDD", "EEEE")) {
      assertThat(desk.ask(new AccessAsk.Pair(wrong, "wall", null, null)).done()).isFalse();
    }

    ServerMessage.Told told = desk.ask(new AccessAsk.Pair(right, "wall", null, null));

    assertThat(told.done()).isFalse();
    assertThat(told.words()).contains("Wait five minutes");
  }

  @Test
  void shouldTakeTheFirstLinkOnceAndOnlyTheRightOne() throws Exception {
    KeyHolder late = screen().open("desk");
    late.code();
    late.socket().send(new ClientMessage.FirstLink(KeyHolder.text(new byte[16]), "K2", PIN));

    ServerMessage.Told told =
        late.socket().await(ServerMessage.Told.class, t -> t.id().equals("first-link"));

    assertThat(told.done()).isFalse();
    assertThat(told.words()).contains("Start the board again");
  }

  @Test
  void shouldAnswerTheApiToPairedScreensOnlyAndCaseListsToDesks() throws Exception {
    assertThat(status("/api/site", null)).isEqualTo(401);
    assertThat(status("/api/suites", "a.1.b")).isEqualTo(401);
    assertThat(status("/api/site", desk.paired().pass())).isEqualTo(200);
    assertThat(status("/api/site", desk.paired().pass() + "A")).isEqualTo(401);
    KeyHolder station = paired("station", "4");
    assertThat(status("/api/sheets", station.paired().pass())).isEqualTo(403);
    assertThat(status("/api/sheets", desk.paired().pass())).isEqualTo(200);
    assertThat(preview(station.paired().pass())).isEqualTo(403);
    assertThat(preview(desk.paired().pass())).isEqualTo(200);
  }

  private int preview(String pass) throws Exception {
    RequestOptions asked =
        new RequestOptions()
            .setMethod(HttpMethod.POST)
            .setHost("127.0.0.1")
            .setPort(server.port())
            .putHeader("Sunup-Pass", pass)
            .putHeader("Content-Type", "text/csv")
            .setURI("/api/intake/preview");
    return await(
        http.request(asked)
            .compose(
                request ->
                    request
                        .send("room,start,technique\n1,07:30,general\n")
                        .compose(r -> r.body().map(b -> r.statusCode()))));
  }

  @Test
  void shouldLetOnlySignedDesksManageScreensAndOnlyAdministratorsPeople() throws Exception {
    ServerMessage.Told added =
        desk.ask(new AccessAsk.SetPerson("D7", "739164", List.of(Role.DESK, Role.SUPERVISOR)));
    assertThat(added.done()).as(added.words()).isTrue();
    assertThat(desk.signOn("D7", "739164", Role.SUPERVISOR, null).done()).isTrue();
    assertThat(desk.ask(new AccessAsk.Look()).done()).isFalse();
    assertThat(desk.signOn("D7", "739164", Role.DESK, null).done()).isTrue();

    assertThat(desk.ask(new AccessAsk.Look()).done()).isTrue();
    assertThat(desk.ask(new AccessAsk.EndPerson("K1")).done()).isFalse();
    assertThat(desk.ask(new AccessAsk.SetPerson("D7", null, List.of(Role.ADMIN))).done()).isFalse();
    desk.socket().send(new ClientMessage.SignOff());
    desk.socket().await(ServerMessage.Signed.class, s -> s.session() == null);
    assertThat(desk.ask(new AccessAsk.Look()).words()).contains("Sign on first");
  }
}
