package sunup.ops.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.vertx.core.Future;
import io.vertx.core.Vertx;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.board.CommandId;
import sunup.board.MorningPlan;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

class PlayerTest {
  private static final int PATIENCE_SECONDS = 30;
  private final MorningPlan plan = SmallHospital.plan();
  private final long target = plan.cases().get(0).bookedAt();
  private final Set<CommandId> before = new HashSet<>();
  private Vertx vertx;
  private FakeBoard board;

  @BeforeEach
  void begin() {
    vertx = Vertx.vertx();
  }

  @AfterEach
  void end() throws Exception {
    wait(vertx.close());
  }

  @Test
  void shouldTellOnlyWhatTheMorningsClockHasReached() throws Exception {
    Script script = Script.write(plan, Story.PLAIN, 2);
    long half = script.reports().get(script.reports().size() / 2).at();
    Player player = start(half, s -> done(s));
    long due = script.reports().stream().filter(r -> r.at() <= half).count();
    Future<Player.Tally> over = player.start();
    settle(() -> board.sent().size() >= due);
    assertThat(board.sent()).allMatch(s -> s.touchedAt() <= half + 60_000);
    assertThat(over.isComplete()).isFalse();
    board.clock(target + 6 * 3_600_000);
    Player.Tally tally = wait(over);
    assertThat(tally.told()).isEqualTo(script.reports().size());
    assertThat(tally.refused()).isEmpty();
  }

  @Test
  void shouldTellAgainUnderTheSameIdWhenTheBoardSaysLater() throws Exception {
    Player player =
        start(target + 6 * 3_600_000, s -> before.add(s.id()) && odd(s) ? later(s) : done(s));
    Player.Tally tally = wait(player.start());
    assertThat(tally.told()).isEqualTo(before.size());
    assertThat(board.sent()).hasSizeGreaterThan(before.size());
  }

  @Test
  void shouldTellAgainWhatWasNotAnsweredWhenTheSocketWasLost() throws Exception {
    Player player =
        start(
            target + 6 * 3_600_000,
            s -> before.add(s.id()) && before.size() % 25 == 0 ? null : done(s));
    Player.Tally tally = wait(player.start());
    assertThat(tally.told()).isEqualTo(before.size());
  }

  @Test
  void shouldCountRefusalsAndGoOn() throws Exception {
    Player player =
        start(target + 6 * 3_600_000, s -> before.add(s.id()) && odd(s) ? refused(s) : done(s));
    Player.Tally tally = wait(player.start());
    assertThat(tally.told()).isEqualTo(before.size());
    assertThat(tally.refused()).isEqualTo(Map.of("unknown", tally.refusals()));
    assertThat(tally.refusals()).isPositive();
  }

  @Test
  void shouldEndWithTheReasonWhenTheMorningCanNotBePlayed() throws Exception {
    start(target, s -> done(s));
    int port = wait(board.start());
    Player player =
        new Player(
            vertx,
            "127.0.0.1",
            port,
            id -> {
              throw new IllegalArgumentException("another hospital");
            },
            0,
            PlayerTest::monotonic);
    assertThatThrownBy(() -> wait(player.start())).hasMessageContaining("another hospital");
  }

  private Player start(long clock, Function<ClientMessage.Send, ServerMessage.Answer> answers)
      throws Exception {
    board = new FakeBoard(vertx, plan.id(), clock, answers);
    int port = wait(board.start());
    return new Player(
        vertx,
        "127.0.0.1",
        port,
        id -> Script.write(plan, Story.PLAIN, 2),
        0,
        PlayerTest::monotonic);
  }

  private static boolean odd(ClientMessage.Send s) {
    return s.id().value().hashCode() % 5 == 0;
  }

  private static ServerMessage.Answer done(ClientMessage.Send s) {
    return new ServerMessage.Answer(s.id(), "done", 1L, null, null);
  }

  private static ServerMessage.Answer later(ClientMessage.Send s) {
    return new ServerMessage.Answer(s.id(), "later", null, null, "not now");
  }

  private static ServerMessage.Answer refused(ClientMessage.Send s) {
    return new ServerMessage.Answer(s.id(), "refused", null, "unknown", "no such thing");
  }

  private static long monotonic() {
    return System.nanoTime() / 1_000_000;
  }

  private static <T> T wait(Future<T> future) throws Exception {
    return future.toCompletionStage().toCompletableFuture().get(PATIENCE_SECONDS, TimeUnit.SECONDS);
  }

  /** Waits on the fake board's own periodic timer until the condition holds. */
  private void settle(java.util.function.BooleanSupplier condition) throws Exception {
    io.vertx.core.Promise<Void> held = io.vertx.core.Promise.promise();
    vertx.setPeriodic(
        20,
        t -> {
          if (condition.getAsBoolean()) {
            held.tryComplete();
          }
        });
    wait(held.future());
    assertThat(List.of(condition.getAsBoolean())).containsOnly(true);
  }
}
