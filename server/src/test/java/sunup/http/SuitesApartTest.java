package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.http.HttpMethod;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sunup.access.KeyHolder;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.board.SuiteId;
import sunup.wire.AccessAsk;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** Two suites of one board where screens are paired: what is of one is nothing for the other. */
class SuitesApartTest extends PairedBoard {
  private static final String OTHER = "east";

  /** Of no suite: what suites there are, and sums over what the question itself brings. */
  private static final Set<String> OF_NO_SUITE =
      Set.of(
          "GET /api/suites",
          "GET /api/bedside",
          "GET /api/review/archive",
          "POST /api/review/remake",
          "POST /api/bedside/work",
          "POST /api/forecast",
          "POST /api/as-run");

  @Override
  List<String> suites() {
    return List.of("main", OTHER);
  }

  @Test
  void shouldRefuseADeskOverHttpAllThatIsOfTheOtherSuite() throws Exception {
    Set<String> refused = new TreeSet<>();
    Set<String> asked = new TreeSet<>();
    for (String route : server.documentedRoutes()) {
      if (route.contains(" /api/") && !OF_NO_SUITE.contains(route)) {
        asked.add(route);
        String[] words = route.split(" ", -1);
        HttpMethod method = HttpMethod.valueOf(words[0]);
        if (status(method, words[1] + "?suite=" + OTHER, desk.pass()) == 403) {
          refused.add(route);
        }
      }
    }
    assertThat(refused).isEqualTo(asked).isNotEmpty();
  }

  @Test
  void shouldShowAScreenItsOwnSuiteWhateverItAsksFor() throws Exception {
    KeyHolder wall = paired("wall", null);
    ServerMessage.View shown = wall.socket().await(ServerMessage.View.class, view -> true);
    assertThat(shown.morning().suite().value()).isEqualTo("main");
    wall.close();

    KeyHolder again = new KeyHolder(vertx, server.port()).turn(wall.key());
    ClientMessage.Prove proof = again.proof(again.knock("wall", OTHER));
    again.socket().send(proof);
    again.paired();
    shown = again.socket().await(ServerMessage.View.class, view -> true);
    assertThat(shown.morning().suite().value()).isEqualTo("main");
  }

  @Test
  void shouldRefuseACommandForAMorningOfTheOtherSuite() throws Exception {
    ServerMessage.View shown = desk.socket().await(ServerMessage.View.class, view -> true);
    MorningId other = new MorningId(new SuiteId(OTHER), shown.morning().date());
    CommandId id = new CommandId("across");
    Command note = new Command.AddNote(null, Private.of("across"));
    long now = System.currentTimeMillis();
    desk.socket()
        .send(new ClientMessage.Send(id, other, null, now, 0, null, desk.session(), null, note));
    String told =
        desk.socket()
            .await(
                ServerMessage.class,
                m ->
                    m instanceof ServerMessage.Trouble
                        || (m instanceof ServerMessage.Answer a && a.id().equals(id)))
            .toString();
    assertThat(told).doesNotContain("done");
    KeyHolder there = pairedAt(OTHER, "desk");
    assertThat(there.socket().await(ServerMessage.View.class, view -> true).upTo()).isZero();
  }

  @Test
  void shouldLetADeskPairScreensOfItsOwnSuiteOnlyUnlessAnAdministratorDoes() throws Exception {
    person("D1", "739164", Role.DESK);
    assertThat(desk.signOn("D1", "739164", Role.DESK, null).done()).isTrue();
    KeyHolder stranger = screen().open("wall");
    ServerMessage.Told told = desk.ask(new AccessAsk.Pair(stranger.code(), "wall", OTHER, null));
    assertThat(told.done()).as(told.words()).isFalse();
  }

  @Test
  void shouldLetASuitesAdministratorChangeNobodysPinNorEndAnybodyOfAnotherSuite() throws Exception {
    KeyHolder east = pairedAt(OTHER, "desk");
    assertThat(east.signOn("K1", PIN, Role.ADMIN, null).done()).isTrue();
    List<Role> admin = List.of(Role.ADMIN);
    assertThat(east.ask(new AccessAsk.SetPerson("E1", "739164", admin)).done()).isTrue();
    assertThat(east.ask(new AccessAsk.SetPerson("E2", "739164", List.of(Role.DESK))).done())
        .isTrue();
    assertThat(east.signOn("E1", "739164", Role.ADMIN, null).done()).isTrue();
    person("M1", "602815", Role.ADMIN);
    person("M2", "602815", Role.DESK);
    assertThat(desk.signOn("M1", "602815", Role.ADMIN, null).done()).isTrue();

    for (String other : List.of("E1", "E2", "K1")) {
      for (AccessAsk ask :
          List.of(
              new AccessAsk.NewPin(other, null, "918273"),
              new AccessAsk.SetPerson(other, "918273", admin),
              new AccessAsk.EndPerson(other))) {
        ServerMessage.Told told = desk.ask(ask);
        assertThat(told.done()).as(ask + " " + told.words()).isFalse();
      }
    }
    // A role here is the suite's own to give; at the other suite E1 stays signed on.
    assertThat(desk.ask(new AccessAsk.SetPerson("E1", null, List.of(Role.DESK))).done()).isTrue();
    assertThat(east.ask(new AccessAsk.EndPerson("E2")).done()).isTrue();
    // One that was ended comes back without what he or she was elsewhere.
    assertThat(desk.ask(new AccessAsk.SetPerson("E2", "918273", List.of(Role.DESK))).done())
        .isTrue();
    assertThat(east.signOn("E2", "918273", Role.DESK, null).done()).isFalse();

    assertThat(desk.ask(new AccessAsk.NewPin("M2", null, "918273")).done()).isTrue();
    assertThat(desk.ask(new AccessAsk.EndPerson("M2")).done()).isTrue();
  }

  private KeyHolder pairedAt(String suite, String page) throws Exception {
    KeyHolder made = screen().open(page);
    ServerMessage.Told told = desk.ask(new AccessAsk.Pair(made.code(), page, suite, null));
    assertThat(told.done()).as(told.words()).isTrue();
    made.paired();
    return made;
  }
}
