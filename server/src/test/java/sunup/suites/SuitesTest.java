package sunup.suites;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.RefusalCode;
import sunup.board.Role;
import sunup.journal.Waiting;
import sunup.simulated.NoteTaking;
import sunup.simulated.SimulatedClock;
import sunup.simulated.SimulatedTime;

/** The registry on a real folder, in real time. */
class SuitesTest {
  private static final MorningId MORNING = MorningId.parse("east/2026-11-30");

  @TempDir Path folder;
  private final Clock clock = new SimulatedClock(new SimulatedTime(), 0);

  private Suites open(Decider decider) throws IOException {
    return Suites.open(folder.resolve("data"), decider, clock);
  }

  private static Reply submit(Suites suites, String id, Command command) {
    Actor desk = new Actor(Role.DESK, null, "desk-1");
    Submission s = new Submission(new CommandId(id), command, desk, null, 0, 0);
    return Waiting.answer(then -> suites.owner(MORNING).submit(s, then));
  }

  private static Standpoint standpoint(Suites suites) {
    CompletableFuture<Standpoint> first = new CompletableFuture<>();
    Runnable end = suites.owner(MORNING).watch(first::complete);
    Standpoint told = Waiting.get(first);
    end.run();
    return told;
  }

  @Test
  void shouldComeBackTheSameAfterARestart() throws Exception {
    Command note = new Command.AddNote(null, Private.of("ultrasound is with room 4"));
    Standpoint before;
    try (Suites suites = open(new NoteTaking())) {
      assertThat(submit(suites, "a", note)).isEqualTo(new Reply.Done(1));
      before = standpoint(suites);
    }
    try (Suites suites = open(new NoteTaking())) {
      Standpoint after = standpoint(suites);
      assertThat(after.state()).isEqualTo(before.state());
      assertThat(after.epoch()).isEqualTo(2);
      assertThat(submit(suites, "a", note)).isEqualTo(new Reply.Done(1));
      assertThat(Waiting.known(Waiting.answer(suites::mornings))).containsExactly(MORNING);
    }
  }

  @Test
  void shouldRefuseASecondBoardOnTheSameFolder() throws Exception {
    try (Suites suites = open(new NoteTaking())) {
      assertThatThrownBy(() -> open(new NoteTaking())).hasMessageContaining("is in use by");
      assertThat(suites.trouble(MORNING)).isEmpty();
    }
  }

  @Test
  void shouldDecideByTheBoardItself() throws Exception {
    try (Suites suites = open(Decider.board())) {
      Reply reply = submit(suites, "o", new Command.OpenMorning());
      assertThat(((Reply.Refused) reply).code()).isEqualTo(RefusalCode.NOT_PLANNED);
    }
  }

  @Test
  void shouldGiveOutNoOwnerOnceItIsClosed() throws Exception {
    Suites suites = open(new NoteTaking());
    Owner owner = suites.owner(MORNING);
    suites.close();
    assertThatThrownBy(() -> suites.owner(MORNING)).hasMessageContaining("shut down");
    Actor desk = new Actor(Role.DESK, null, "desk-1");
    Submission late =
        new Submission(new CommandId("z"), new Command.OpenMorning(), desk, null, 0, 0);
    Reply reply = Waiting.answer(then -> owner.submit(late, then));
    assertThat(reply).isInstanceOf(Reply.Later.class);
  }
}
