package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.buffer.Buffer;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.board.Role;
import sunup.live.fake.ManualClock;
import sunup.live.fake.NoteSight;
import sunup.live.fake.Rig;
import sunup.live.fake.TestScreen;
import sunup.live.fake.Waiting;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

class LiveSocketTest {
  private final ThreadLane lane = new ThreadLane("test-live");
  private Rig rig;

  @BeforeEach
  void start() throws Exception {
    rig = new Rig(lane, new NoteSight(), Limits.DEFAULT, new ManualClock());
  }

  @AfterEach
  void end() throws Exception {
    rig.close();
    lane.close();
  }

  private TestScreen open(String name, String page) throws Exception {
    TestScreen screen = rig.screen().hello(name, page);
    screen.await(ServerMessage.View.class, v -> true);
    return screen;
  }

  @Test
  void shouldSendAViewAndThenFramesThatFollowIt() throws Exception {
    TestScreen desk = open("desk-1", "desk");

    rig.clock.pass(1_000);
    rig.owner().say("ultrasound is on its way");
    desk.await(ServerMessage.Frame.class, f -> f.upTo() == 1);

    assertThat(desk.gaps()).isZero();
    assertThat(desk.parts()).containsKey("note/0");
  }

  @Test
  void shouldShowATouchOnAnotherScreen() throws Exception {
    TestScreen wall = open("wall-1", "wall");
    TestScreen station = open("station-7", "station");

    rig.clock.pass(1_000);
    station.note("c1", "leak test failed");
    ServerMessage.Answer answer = station.await(ServerMessage.Answer.class, a -> true);
    wall.await(ServerMessage.Frame.class, f -> f.upTo() >= answer.upTo());

    assertThat(answer.status()).isEqualTo("done");
    assertThat(wall.parts()).containsKey("room/0");
  }

  @Test
  void shouldDecideACommandOnceAndAnswerItAlikeWhenItComesTwice() throws Exception {
    TestScreen station = open("station-7", "station");

    station.note("c1", "once").note("c1", "once");
    Waiting.until(() -> station.all(ServerMessage.Answer.class).size() == 2);

    List<ServerMessage.Answer> answers = station.all(ServerMessage.Answer.class);
    assertThat(answers).hasSize(2);
    assertThat(answers.get(1)).isEqualTo(answers.get(0));
    assertThat(rig.owner().decided()).hasSize(1);
  }

  @Test
  void shouldJudgeAWallsCommandAsADisplaysWhateverItSays() throws Exception {
    TestScreen wall = open("wall-1", "wall");

    wall.note("c1", "let me in");
    ServerMessage.Answer answer = wall.await(ServerMessage.Answer.class, a -> true);

    assertThat(answer.status()).isEqualTo("refused");
    assertThat(answer.code()).isEqualTo("not-allowed");
    assertThat(rig.owner().decided().get(0).actor().role()).isEqualTo(Role.DISPLAY);
  }

  private static ClientMessage helloOf(String page, String date) {
    return new ClientMessage.Hello(page + "-1", page, null, null, null, date, null);
  }

  @Test
  void shouldShowADeskTheDateThatItNamesAndDecideItsCommandsThere() throws Exception {
    LocalDate tomorrow = LocalDate.of(2026, 11, 26);
    TestScreen desk = rig.screen().send(helloOf("desk", "2026-11-26"));
    ServerMessage.View view = desk.await(ServerMessage.View.class, v -> true);
    assertThat(view.morning().date()).isEqualTo(tomorrow);

    desk.note("c1", "for tomorrow");
    desk.await(ServerMessage.Answer.class, a -> a.status().equals("done"));
    assertThat(rig.owner(tomorrow).notes()).isEqualTo(1);
    assertThat(rig.owner().notes()).isZero();
  }

  @Test
  void shouldTellAPageThatMayNotChooseADateAndADeskWhoseDateIsNone() throws Exception {
    for (ClientMessage hello :
        List.of(
            helloOf("wall", "2026-11-26"),
            helloOf("desk", "tomorrow"),
            helloOf("desk", "2031-01-01"))) {
      TestScreen screen = rig.screen().send(hello);
      ServerMessage.Trouble trouble = screen.await(ServerMessage.Trouble.class, t -> true);
      assertThat(trouble.code()).isEqualTo("bad-date");
    }
  }

  @Test
  void shouldAnswerATickAtOnceWithTheMorningsTime() throws Exception {
    TestScreen wall = open("wall-1", "wall");

    ServerMessage.Tock tock =
        wall.barrier(42).await(ServerMessage.Tock.class, t -> t.sentAt() == 42);

    assertThat(tock.morningClock()).isEqualTo(ManualClock.START);
    assertThat(tock.rate()).isEqualTo(1);
  }

  @Test
  void shouldSendAViewWhenAskedForOne() throws Exception {
    TestScreen wall = open("wall-1", "wall");
    wall.barrier(1).forgetMessages();

    wall.send(new ClientMessage.AskView());

    wall.await(ServerMessage.View.class, v -> true);
  }

  @Test
  void shouldSayWhatIsWrongAndStayOpenWhenAMessageCantBeRead() throws Exception {
    TestScreen desk = open("desk-1", "desk");

    desk.sendText("{\"m\":\"hello\"").sendText("[]").sendText("null").sendText("{\"m\":\"dance\"}");
    desk.barrier(1);

    assertThat(desk.all(ServerMessage.Trouble.class))
        .hasSize(4)
        .allMatch(t -> t.code().equals("bad-message") && !t.words().isBlank());
    desk.note("c1", "still here");
    assertThat(desk.await(ServerMessage.Answer.class, a -> true).status()).isEqualTo("done");
  }

  @Test
  void shouldRefuseACommandUnderItsIdWhenItCantBeRead() throws Exception {
    TestScreen desk = open("desk-1", "desk");

    desk.sendText(
        "{\"m\":\"send\",\"id\":\"c9\",\"touchedAt\":1,\"offset\":0,"
            + "\"command\":{\"type\":\"no-such\"}}");
    desk.sendText("{\"m\":\"send\",\"id\":\"c10\",\"touchedAt\":1,\"offset\":0}");

    ServerMessage.Answer unknown =
        desk.await(ServerMessage.Answer.class, a -> a.id().value().equals("c9"));
    ServerMessage.Answer empty =
        desk.await(ServerMessage.Answer.class, a -> a.id().value().equals("c10"));
    assertThat(unknown.code()).isEqualTo("bad-command");
    assertThat(empty.code()).isEqualTo("bad-command");
    assertThat(empty.words()).contains("command");
    assertThat(rig.owner().decided()).isEmpty();
  }

  @Test
  void shouldAskForHelloBeforeAnythingElse() throws Exception {
    TestScreen early = rig.screen().note("c1", "too early");

    ServerMessage.Trouble trouble = early.await(ServerMessage.Trouble.class, t -> true);

    assertThat(trouble.code()).isEqualTo("hello-first");
    early.hello("x y", "desk").hello("desk-1", "cellar").hello("desk-1", "desk");
    early.await(ServerMessage.View.class, v -> true);
    assertThat(early.all(ServerMessage.Trouble.class))
        .extracting(ServerMessage.Trouble::code)
        .containsExactly("hello-first", "bad-screen", "unknown-page");
  }

  @Test
  void shouldCloseTheSocketWhenAMessageIsOversized() throws Exception {
    TestScreen desk = open("desk-1", "desk");

    desk.sendText("x".repeat(Limits.DEFAULT.messageBytesMax() + 1));
    assertThat(desk.closeCode()).isEqualTo(1009);

    TestScreen other = open("desk-2", "desk");
    other.sendText("x".repeat(10 * Limits.DEFAULT.messageBytesMax()));
    assertThat(other.closeCode()).isEqualTo(1009);
  }

  @Test
  void shouldPutOffTouchesBeyondTheRateAndCloseTheSocketFarBeyondIt() throws Exception {
    TestScreen desk = open("desk-1", "desk");
    int burst = Limits.DEFAULT.messagesBurst();

    for (int i = 1; i < burst; i++) {
      desk.send(new ClientMessage.Tick(i));
    }
    desk.note("c1", "one too many");
    desk.send(new ClientMessage.Tick(-1));

    ServerMessage.Answer answer = desk.await(ServerMessage.Answer.class, a -> true);
    assertThat(answer.status()).isEqualTo("later");
    assertThat(desk.await(ServerMessage.Trouble.class, t -> true).code()).isEqualTo("too-fast");
    assertThat(rig.owner().decided()).isEmpty();
    for (int i = 0; i < Limits.DEFAULT.strikesMax(); i++) {
      desk.send(new ClientMessage.Tick(-1));
    }
    assertThat(desk.closeCode()).isEqualTo(1008);
  }

  @Test
  void shouldTakeMessagesAgainAfterAWhile() throws Exception {
    TestScreen desk = open("desk-1", "desk");
    for (int i = 1; i < Limits.DEFAULT.messagesBurst(); i++) {
      desk.send(new ClientMessage.Tick(i));
    }
    desk.note("c1", "one too many");
    desk.await(ServerMessage.Answer.class, a -> a.status().equals("later"));

    rig.clock.pass(1_000);
    desk.note("c1", "one too many");

    desk.await(ServerMessage.Answer.class, a -> a.status().equals("done"));
  }

  @Test
  void shouldPutOffTouchesWhenTooManyWaitForTheirAnswer() throws Exception {
    TestScreen desk = open("desk-1", "desk");
    rig.owner().fallSilent();

    for (int i = 0; i < Limits.DEFAULT.inFlightMax() + 1; i++) {
      rig.clock.pass(1_000);
      desk.note("c" + i, "no answer").barrier(i);
    }

    assertThat(desk.all(ServerMessage.Answer.class))
        .singleElement()
        .satisfies(a -> assertThat(a.status()).isEqualTo("later"))
        .satisfies(a -> assertThat(a.id().value()).isEqualTo("c64"));
  }

  @Test
  void shouldTakeTextAndBinaryMessagesAlike() throws Exception {
    TestScreen desk = open("desk-1", "desk");

    desk.sendText("{\"m\":\"tick\",\"sentAt\":5}");
    desk.socket().writeBinaryMessage(Buffer.buffer("{\"m\":\"tick\",\"sentAt\":6}"));

    desk.await(ServerMessage.Tock.class, t -> t.sentAt() == 5);
    desk.await(ServerMessage.Tock.class, t -> t.sentAt() == 6);
  }
}
