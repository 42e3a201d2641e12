package sunup.suites;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.simulated.Bug;
import sunup.simulated.Coverage;
import sunup.simulated.Disk;
import sunup.simulated.Faults;
import sunup.simulated.NoteTaking;
import sunup.simulated.SimulatedClock;
import sunup.simulated.SimulatedJournal;
import sunup.simulated.SimulatedTime;

/** Private values that one node has erased are in no other node's memory either. */
class ForgettingTest {
  private static final MorningId MORNING = MorningId.parse("east/2026-11-30");
  private static final Actor DESK = new Actor(Role.DESK, null, "desk-1");

  private final SimulatedTime time = new SimulatedTime();
  private final SimulatedTime.Loop loop = time.loop();
  private final SimulatedClock clock = new SimulatedClock(time, 0);
  private final Disk disk = new Disk(Bug.NONE);
  private final List<Standpoint> told = new ArrayList<>();
  private Owner owner;

  private Suites node() {
    SimulatedJournal journal =
        new SimulatedJournal(disk, loop, loop, Faults.none(), Bug.NONE, new Coverage());
    return new Suites(journal, new NoteTaking(), clock, loop, loop, SuiteActorTest::bytes);
  }

  private void run(long ms) {
    time.runUntil(time.now() + ms);
  }

  private void say(String id, String text) {
    Command note = new Command.AddNote(null, Private.of(text));
    owner.submit(
        new Submission(new CommandId(id), note, DESK, null, clock.morningMs(), 0), reply -> {});
    run(1);
  }

  private List<String> notes() {
    return told.get(told.size() - 1).state().notes().stream().map(n -> n.text().shown()).toList();
  }

  @BeforeEach
  void begin() {
    owner = node().owner(MORNING);
    Runnable unused = owner.watch(told::add);
    run(10);
  }

  @Test
  void shouldForgetWhatAnotherNodeHasErased() {
    say("a", "a child of four");
    clock.jump(Duration.ofHours(43).toMillis());
    // It erases as it starts, so that the first one finds nothing left to erase.
    node();
    run(10);
    assertThat(notes()).containsExactly("a child of four");
    run(Suites.ERASE_EVERY_MS);
    assertThat(notes()).containsExactly("erased");

    // Said of a morning that is over: due at once, and forgotten at the next look.
    say("b", "of five");
    node();
    run(10);
    assertThat(notes()).containsExactly("erased", "of five");
    run(Suites.ERASE_EVERY_MS);
    assertThat(notes()).containsExactly("erased", "erased");
  }
}
