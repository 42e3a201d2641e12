package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import sunup.access.KeyHolder;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.wire.AccessAsk;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** People sign on at paired screens, and what they touch is theirs. */
class SignOnTest extends PairedBoard {
  private static final String OTHER_PIN = "739164";
  private static final int CROWD = 8;
  private static final AtomicInteger SENT = new AtomicInteger();

  /** Sends something that only a desk may and tells what it was answered. */
  private static String asDesk(KeyHolder at, String session, long touchedAt) throws Exception {
    CommandId id = new CommandId("send-" + SENT.incrementAndGet());
    at.socket()
        .send(
            new ClientMessage.Send(
                id,
                null,
                null,
                touchedAt,
                0,
                new PersonId("desk-1"),
                session,
                new Command.OpenMorning()));
    ServerMessage.Answer answer =
        at.socket().await(ServerMessage.Answer.class, a -> a.id().equals(id));
    return answer.code();
  }

  private static String asDesk(KeyHolder at, String session) throws Exception {
    return asDesk(at, session, System.currentTimeMillis());
  }

  @Test
  void shouldTakeTheActorFromTheSignOnWhateverTheMessageSays() throws Exception {
    person("M1", OTHER_PIN, Role.MANAGER);
    // Nobody is planned yet: what a desk may do gets as far as that.
    assertThat(asDesk(desk, null)).isEqualTo("not-planned");
    String admins = desk.session();

    assertThat(desk.signOn("M1", OTHER_PIN).done()).isTrue();

    assertThat(asDesk(desk, null)).isEqualTo("not-allowed");
    assertThat(asDesk(desk, desk.session())).isEqualTo("not-allowed");
    assertThat(asDesk(desk, "invented")).isEqualTo("not-allowed");
    // The administrator's own touch from before, which waited on the way, is still the
    // administrator's; one that says it was made afterwards is not.
    assertThat(asDesk(desk, admins)).isEqualTo("not-planned");
    assertThat(asDesk(desk, admins, System.currentTimeMillis() + 3_600_000))
        .isEqualTo("not-allowed");
  }

  @Test
  void shouldNotLendASignOnToAnotherScreen() throws Exception {
    String admins = desk.session();
    KeyHolder station = paired("station", "4");

    assertThat(asDesk(station, admins)).isEqualTo("not-allowed");
  }

  @Test
  void shouldEndTheTouchesOfSomebodyWhoMayNotSignOnAnyMore() throws Exception {
    person("D7", OTHER_PIN, Role.DESK, Role.SUPERVISOR);
    KeyHolder other = paired("desk", null);
    assertThat(other.signOn("D7", OTHER_PIN, Role.SUPERVISOR, null).done()).isTrue();
    String session = other.session();
    assertThat(asDesk(other, session)).isEqualTo("not-allowed");

    assertThat(desk.ask(new AccessAsk.EndPerson("D7")).done()).isTrue();
    other.socket().await(ServerMessage.Signed.class, s -> s.session() == null);

    // Not the person's any more: what an unsigned desk may.
    assertThat(asDesk(other, session)).isEqualTo("not-planned");
    assertThat(other.signOn("D7", OTHER_PIN).done()).isFalse();
  }

  @Test
  void shouldLockACodeAtOneScreenUntilAColleagueLiftsIt() throws Exception {
    person("A7", OTHER_PIN, Role.ANAESTHETIST);
    person("A8", "918273", Role.ANAESTHETIST);
    KeyHolder four = paired("station", "4");
    KeyHolder five = paired("station", "5");
    List<String> words = new ArrayList<>();
    ListAppender<ILoggingEvent> log = new ListAppender<>();
    log.start();
    Logger of = (Logger) LoggerFactory.getLogger("sunup.access.Access");
    of.addAppender(log);
    for (int i = 0; i < 5; i++) {
      words.add(four.signOn("A7", "000001").words());
    }
    four.signOn("602815", "A7");
    of.detachAppender(log);
    assertThat(log.list)
        .extracting(ILoggingEvent::getFormattedMessage)
        .contains("not signed on at station-4: A7: code or PIN is not right (5 tries)")
        .noneMatch(line -> line.contains("602815") || line.contains("000001"));
    assertThat(words.get(3)).contains("Tries left: 1");
    assertThat(words.get(4)).contains("locked at this screen");
    assertThat(four.signOn("A7", OTHER_PIN).done()).isFalse();

    assertThat(five.signOn("A7", OTHER_PIN).done()).isTrue();
    assertThat(four.ask(new AccessAsk.Lift("A7", null)).done()).isFalse();
    assertThat(four.signOn("A8", "918273").done()).isTrue();
    assertThat(desk.ask(new AccessAsk.Look()).list().locks()).hasSize(1);
    assertThat(four.ask(new AccessAsk.Lift("A7", null)).done()).isTrue();

    assertThat(four.signOn("A7", OTHER_PIN).done()).isTrue();
    assertThat(four.signOn("A9", OTHER_PIN).words()).isEqualTo(words.get(0));
  }

  @Test
  void shouldLetNobodyBeMoreThanTheScreenKnowsNorThanTheSiteGave() throws Exception {
    person("B1", OTHER_PIN, Role.DESK, Role.ADMIN, Role.SCRUB);
    KeyHolder station = paired("station", "4");

    assertThat(station.signOn("B1", OTHER_PIN, Role.ADMIN, null).done()).isFalse();
    assertThat(station.signOn("B1", OTHER_PIN, Role.ANAESTHETIST, null).done()).isFalse();
    assertThat(station.signOn("B1", OTHER_PIN).done()).isTrue();
    assertThat(station.socket().await(ServerMessage.Signed.class, s -> true).role())
        .isEqualTo(Role.SCRUB);
    KeyHolder wall = paired("wall", null);
    assertThat(wall.signOn("B1", OTHER_PIN).done()).isFalse();
  }

  @Test
  void shouldTakeTheFirstAdministratorsRightsAwayAndNeverTheLastOnes() throws Exception {
    person("K2", OTHER_PIN, Role.ADMIN);
    KeyHolder other = paired("desk", null);
    assertThat(other.signOn("K2", OTHER_PIN).done()).isTrue();
    assertThat(desk.ask(new AccessAsk.SetPerson("K1", null, List.of(Role.DESK))).done()).isFalse();

    assertThat(other.ask(new AccessAsk.SetPerson("K1", null, List.of(Role.DESK))).done()).isTrue();

    assertThat(desk.signOn("K1", PIN, Role.ADMIN, null).done()).isFalse();
    assertThat(desk.signOn("K1", PIN, Role.DESK, null).done()).isTrue();
    assertThat(desk.ask(new AccessAsk.EndPerson("K2")).done()).isFalse();
    assertThat(other.ask(new AccessAsk.EndPerson("K2")).done()).isFalse();
  }

  @Test
  void shouldChangeOnesOwnPinByThePresentOne() throws Exception {
    person("A7", OTHER_PIN, Role.ANAESTHETIST);
    KeyHolder station = paired("station", "4");
    KeyHolder five = paired("station", "5");
    assertThat(five.signOn("A7", OTHER_PIN).done()).isTrue();
    five.session();
    assertThat(station.signOn("A7", OTHER_PIN).done()).isTrue();
    station.session();

    assertThat(station.ask(new AccessAsk.NewPin("A7", "000001", "602815")).done()).isFalse();
    for (String common : List.of("1234", "2580", "1212", "121212", "1122", "1221", "1998")) {
      assertThat(station.ask(new AccessAsk.NewPin("A7", OTHER_PIN, common)).words())
          .contains("tried first by everybody");
    }
    assertThat(station.ask(new AccessAsk.NewPin("A7", null, "602815")).done()).isFalse();
    five.socket().forgetMessages();
    station.socket().forgetMessages();
    assertThat(station.ask(new AccessAsk.NewPin("A7", OTHER_PIN, "602815")).done()).isTrue();

    // Whoever knew the old one and is signed on elsewhere by it is not any more.
    five.socket().await(ServerMessage.Signed.class, s -> s.session() == null);
    station.socket().barrier(7);
    assertThat(station.socket().all(ServerMessage.Signed.class)).isEmpty();
    assertThat(station.signOn("A7", OTHER_PIN).done()).isFalse();
    assertThat(station.signOn("A7", "602815").done()).isTrue();
  }

  @Test
  void shouldAnswerATouchWhileManySignOn() throws Exception {
    KeyHolder station = paired("station", "4");
    for (int i = 0; i < CROWD; i++) {
      person("C" + i + "x", OTHER_PIN, Role.ANAESTHETIST);
    }
    for (int i = 0; i < CROWD; i++) {
      station.socket().send(new ClientMessage.SignOn("C" + i + "x", OTHER_PIN, null, null));
    }

    assertThat(asDesk(desk, null)).isEqualTo("not-planned");

    // Their PINs are still being looked at, one after another; the touch was not behind them.
    assertThat(station.socket().all(ServerMessage.Told.class)).hasSizeLessThan(CROWD);
  }
}
