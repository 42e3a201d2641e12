package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sunup.board.Actor;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.SuiteId;
import sunup.live.Place;
import sunup.suites.Reply;
import sunup.suites.Submission;

/** A command goes to the node that owns its morning, if that can be expected to know it. */
class CommandsTest {
  private static final RoomId ROOM = new RoomId("1");
  private static final CaseId NEXT = new CaseId("C9");

  private final List<BusMessage> sent = new ArrayList<>();
  private final Set<String> unknown = new HashSet<>();
  private final Commands commands =
      new Commands((node, message, payload) -> sent.add(message), () -> 0, unknown::contains);
  private final Wanted one =
      new Wanted(new MorningId(new SuiteId("main"), LocalDate.of(2026, 3, 2)), 0);

  private List<Reply> give(Command command, Command... also) {
    List<Reply> answers = new ArrayList<>();
    Actor desk = new Actor(Role.DESK, null, "desk");
    CommandId id = new CommandId("c-" + sent.size());
    one.place = new Place.There(new There());
    commands.submit(
        one, new Submission(id, command, List.of(also), desk, null, 0, 0), answers::add);
    return answers;
  }

  /** Of the owner's node. */
  private static final class There implements sunup.live.Line {
    @Override
    public String node() {
      return "owner";
    }

    @Override
    public void follow(boolean views) {}
  }

  @Test
  void shouldKeepANewCommandFromANodeThatMayNotKnowItAndSayWhy() {
    unknown.addAll(Set.of("next-case-begun", "swap-confirmed", "drugs-drawn"));
    Section section = Section.MACHINE;
    List<Command> asked =
        List.of(
            new Command.SetUpNext(ROOM, NEXT, null),
            new Command.ConfirmSwap(ROOM),
            new Command.Sweep(ROOM, section, null, null, NEXT));
    for (Command command : asked) {
      assertThat(give(command))
          .singleElement()
          .isInstanceOfSatisfying(
              Reply.Later.class, later -> assertThat(later.words()).contains("up to date"));
    }
    assertThat(give(new Command.OpenMorning(), asked.get(0))).hasSize(1);
    assertThat(sent).isEmpty();

    assertThat(give(new Command.Sweep(ROOM, section, null, null, null))).isEmpty();
    assertThat(sent).hasSize(1);
    unknown.clear();
    for (Command command : asked) {
      assertThat(give(command)).as("all know it").isEmpty();
    }
    assertThat(sent).hasSize(4);
  }
}
