package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import sunup.access.KeyHolder;
import sunup.access.PairingOptions;
import sunup.board.Command;
import sunup.board.Move;
import sunup.board.MoveAnswer;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.push.PushReceiver;
import sunup.push.PushSender;
import sunup.push.PushWay;
import sunup.wire.AccessAsk;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** A phone that lies locked is told that something is asked, where the site says so. */
class PushTest extends PairedBoard {
  private static final String OTHER_PIN = "739164";
  private static final PersonId TECHNICIAN = new PersonId("technician-1");
  private static final RoomId ROOM = new RoomId("1");
  private static final Move GO = new Move.SendTo(TECHNICIAN, ROOM);
  private static final Move ULTRASOUND = new Move.Unit("ultrasound", ROOM);
  private static final Move IMAGING = new Move.Unit("imaging", ROOM);
  private static final long AFTER_MS = 300;
  private static final long LONG_MS = 15_000;

  private PushReceiver receiver;

  /** The board's public key, as the phone was told it. */
  private String offered;

  @Override
  void begin() throws Exception {
    receiver = new PushReceiver(vertx, folder);
    Path site = folder.resolve("site.json");
    String push =
        "{\"push\": {\"contact\": \"mailto:it@hospital.example\", \"hosts\": [\"localhost\"]},";
    Files.writeString(site, Files.readString(site).replaceFirst("\\{", push));
    PushWay way = new PushWay(InetAddress::isLoopbackAddress, true, receiver.roots(), AFTER_MS);
    begin(new PairingOptions(null, false, null, way));
  }

  /** A technician's phone, signed on. */
  private KeyHolder phone() throws Exception {
    planned();
    assertThat(say(desk, new Command.Arrive(TECHNICIAN, null))).isNull();
    person("T7", OTHER_PIN, Role.TECHNICIAN);
    KeyHolder made = paired("pocket", null);
    offered = made.paired().push();
    assertThat(made.signOn("T7", OTHER_PIN, null, TECHNICIAN).done()).isTrue();
    return made;
  }

  private ServerMessage.Told on(KeyHolder phone, String endpoint) throws Exception {
    phone.socket().forgetMessages();
    phone.socket().send(new ClientMessage.PushOn(endpoint, receiver.key(), receiver.auth()));
    return phone.socket().await(ServerMessage.Told.class, t -> t.id().equals("push"));
  }

  private void asks(Move move) throws Exception {
    assertThat(say(desk, new Command.AskMove(move, null, TECHNICIAN))).isNull();
  }

  @Test
  void shouldTellTheOnesPhoneThatSomethingIsAskedAndNothingElse() throws Exception {
    KeyHolder phone = phone();
    assertThat(on(phone, receiver.endpoint()).done()).isTrue();

    asks(GO);

    PushReceiver.Got got = receiver.next(LONG_MS);
    assertThat(got.words()).isEqualTo(PushSender.WORDS).doesNotContainPattern("[0-9]");
    assertThat(got.path()).isEqualTo("/push/one-phone");
    assertThat(got.headers())
        .containsEntry("Content-Encoding", "aes128gcm")
        .containsEntry("TTL", "120")
        .containsEntry("Topic", "asked");
    assertThat(got.headers().get("Authorization")).startsWith("vapid t=").endsWith("k=" + offered);
    assertThat(got.headers().toString()).doesNotContain("technician", "T7", "main");

    // A call for somebody reaches whoever roams.
    KeyHolder station = paired("station", "1");
    assertThat(say(station, new Command.AskHelp(ROOM, null))).isNull();
    assertThat(receiver.next(LONG_MS).words()).isEqualTo(PushSender.WORDS);

    // What is answered before is told to nobody, nor what is asked after the sign-on has ended.
    asks(ULTRASOUND);
    assertThat(say(phone, new Command.AnswerMove(ULTRASOUND.key(), MoveAnswer.ACCEPT))).isNull();
    assertThat(receiver.next(AFTER_MS * 4)).isNull();
    phone.socket().send(new ClientMessage.SignOff());
    phone.socket().await(ServerMessage.Signed.class, s -> s.session() == null);
    asks(IMAGING);
    assertThat(receiver.next(AFTER_MS * 4)).isNull();
  }

  @Test
  void shouldForgetAPhoneThatItsPushServiceDoesNotKnowAnyMore() throws Exception {
    KeyHolder phone = phone();
    assertThat(on(phone, receiver.endpoint()).done()).isTrue();
    receiver.answers(410);
    asks(GO);
    assertThat(receiver.next(LONG_MS)).isNotNull();
    receiver.answers(201);
    // What was to be forgotten is written before this is answered.
    assertThat(desk.ask(new AccessAsk.Look()).done()).isTrue();

    asks(ULTRASOUND);
    assertThat(receiver.next(AFTER_MS * 4)).isNull();
    assertThat(on(phone, receiver.endpoint()).done()).isTrue();
    asks(IMAGING);
    assertThat(receiver.next(LONG_MS)).isNotNull();
  }

  @Test
  void shouldTakeNoPhoneThatNobodyIsSignedOnAtNorAnotherAddressNorAnotherPage() throws Exception {
    assertThat(desk.paired().push()).isNull();
    KeyHolder phone = phone();
    for (String at : new String[] {"https://127.0.0.1/a", "http://localhost/a", "https://a.b/c"}) {
      assertThat(on(phone, at).done()).as(at).isFalse();
    }
    assertThat(on(desk, receiver.endpoint()).words()).contains("tells no phones");
    phone.socket().send(new ClientMessage.SignOff());
    phone.socket().await(ServerMessage.Signed.class, s -> s.session() == null);
    assertThat(on(phone, receiver.endpoint()).words()).contains("Say who you are first");
  }
}
