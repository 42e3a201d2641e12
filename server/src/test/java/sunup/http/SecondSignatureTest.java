package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import sunup.access.KeyHolder;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Evidence;
import sunup.board.ItemRef;
import sunup.board.ItemState;
import sunup.board.MorningId;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.live.fake.TickingClock;
import sunup.suites.Clock;
import sunup.wire.ClientMessage;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/** What two people sign needs two people: the second signs by code and PIN, once and at once. */
class SecondSignatureTest extends PairedBoard {
  private static final String FIRST_PIN = "739164";
  private static final String SECOND_PIN = "918273";
  private static final AtomicInteger SENT = new AtomicInteger();

  private final AtomicLong later = new AtomicLong();
  private MorningId morning;
  private ItemRef fetched;
  private PersonId first;
  private PersonId second;
  private KeyHolder station;
  private String session;

  /** Real time that a test can move on. */
  @Override
  Clock clock() {
    Clock machine = new TickingClock();
    return new Clock() {
      @Override
      public long realMs() {
        return machine.realMs() + later.get();
      }

      @Override
      public long monotonicMs() {
        return machine.monotonicMs();
      }

      @Override
      public long morningMs() {
        return machine.morningMs();
      }

      @Override
      public double rate() {
        return machine.rate();
      }
    };
  }

  /** An open morning, and an anaesthetist signed on at the station of its room. */
  private void ready() throws Exception {
    planned();
    person("A7", FIRST_PIN, Role.ANAESTHETIST);
    person("N7", SECOND_PIN, Role.CIRCULATING);
    person("P7", "602815", Role.PORTER);
    station = paired("station", "1");
    ServerMessage.View view = station.socket().await(ServerMessage.View.class, v -> true);
    morning = view.morning();
    for (Part part : view.parts()) {
      if (part instanceof Part.ItemPart item && item.asks().witness()) {
        fetched = fetched == null ? item.item() : fetched;
      } else if (part instanceof Part.PersonPart one && "1".equals(one.ownRoom())) {
        first = one.role() == Role.ANAESTHETIST ? new PersonId(one.person()) : first;
        second = one.role() == Role.CIRCULATING ? new PersonId(one.person()) : second;
      }
    }
    assertThat(station.signOn("A7", FIRST_PIN, null, first).done()).isTrue();
  }

  private ServerMessage.Told signs(String code, String pin, PersonId as, String kind)
      throws Exception {
    return signs(station, code, pin, as, kind);
  }

  private ServerMessage.Told signs(KeyHolder at, String code, String pin, PersonId as, String kind)
      throws Exception {
    at.socket().forgetMessages();
    at.socket().send(new ClientMessage.Countersign(code, pin, as, morning, kind));
    return at.socket().await(ServerMessage.Told.class, t -> t.id().equals("countersign"));
  }

  private boolean isGood(Part part) {
    return part instanceof Part.ItemPart item
        && item.item().equals(fetched)
        && item.state() == ItemState.GOOD;
  }

  private String good(String token) throws Exception {
    return good(new CommandId("good-" + SENT.incrementAndGet()), token);
  }

  /** Says that the controlled drugs are fetched, seen by the second; tells the refusal's code. */
  private String good(CommandId id, String token) throws Exception {
    Command command = new Command.Good(fetched, new Evidence.Touch(), null, second);
    long now = System.currentTimeMillis();
    station.socket().forgetMessages();
    station
        .socket()
        .send(new ClientMessage.Send(id, morning, null, now, 0, null, session, token, command));
    return station.socket().await(ServerMessage.Answer.class, a -> a.id().equals(id)).code();
  }

  @Test
  void shouldTakeATouchOfTwoOnlyWithTheSecondsOwnPinOnceAndAtOnce() throws Exception {
    ready();
    session = station.session();
    assertThat(good(null)).isEqualTo("second-unsigned");
    assertThat(good("invented")).isEqualTo("second-unsigned");

    // The same person twice, also as somebody else of the plan; and who may not.
    assertThat(signs("A7", FIRST_PIN, second, "good").words()).contains("another person");
    assertThat(signs("P7", "602815", second, "good").done()).isFalse();
    assertThat(signs("N7", SECOND_PIN, first, "good").done()).isFalse();
    assertThat(signs("N7", SECOND_PIN, second, "add-note").done()).isFalse();

    // For another kind of command, and from another screen.
    String other = signs("N7", SECOND_PIN, second, "count-drug").token();
    assertThat(good(other)).isEqualTo("second-unsigned");
    KeyHolder elsewhere = paired("station", "1");
    assertThat(elsewhere.signOn("A7", FIRST_PIN, null, first).done()).isTrue();
    other = signs(elsewhere, "N7", SECOND_PIN, second, "good").token();
    assertThat(other).isNotNull();
    assertThat(good(other)).isEqualTo("second-unsigned");

    // Too late.
    String token = signs("N7", SECOND_PIN, second, "good").token();
    later.addAndGet(Duration.ofSeconds(61).toMillis());
    assertThat(good(token)).isEqualTo("second-unsigned");

    // In time; the same command may come again, also when its minute is over, another may not.
    token = signs("N7", SECOND_PIN, second, "good").token();
    CommandId id = new CommandId("twice");
    assertThat(good(id, token)).isNull();
    station.socket().await(ServerMessage.Frame.class, f -> f.set().stream().anyMatch(this::isGood));
    later.addAndGet(Duration.ofSeconds(61).toMillis());
    assertThat(good(id, token)).isNull();
    assertThat(good(token)).isEqualTo("second-unsigned");
  }

  @Test
  void shouldCountAWrongPinOfTheSecondTowardsTheLock() throws Exception {
    ready();
    for (int i = 0; i < 5; i++) {
      assertThat(signs("N7", "000001", second, "good").done()).isFalse();
    }

    assertThat(signs("N7", SECOND_PIN, second, "good").words()).contains("locked");
    // The same count as for signing on.
    assertThat(station.signOn("N7", SECOND_PIN, null, second).words()).contains("locked");
  }

  @Test
  void shouldKeepAHandOverSignedByWhoTakesOverAndUnsignedIfNobodySigns() throws Exception {
    ready();
    session = station.session();
    PersonId to = new PersonId("supervisor-1");
    person("S7", "602816", Role.SUPERVISOR);
    Command over = new Command.HandOver(first, to, new RoomId("1"));

    String token = signs("S7", "602816", to, "hand-over").token();
    assertThat(token).isNotNull();
    assertThat(said(over, token)).isNull();
    assertThat(said(over, null)).isNull();
    token = signs("N7", SECOND_PIN, second, "hand-over").token();
    assertThat(said(over, token)).isEqualTo("second-unsigned");
  }

  private String said(Command command, String token) throws Exception {
    CommandId id = new CommandId("said-" + SENT.incrementAndGet());
    long now = System.currentTimeMillis();
    station
        .socket()
        .send(new ClientMessage.Send(id, morning, null, now, 0, null, session, token, command));
    return station.socket().await(ServerMessage.Answer.class, a -> a.id().equals(id)).code();
  }
}
