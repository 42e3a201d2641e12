package sunup.intake;

import java.util.List;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.Morning.Phase;
import sunup.board.MorningPlan;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.Step;

/** Mornings on the real board, as the desk makes them; a refusal fails the test. */
final class Mornings {
  private static final Actor DESK = new Actor(Role.DESK, null, "desk");

  private Mornings() {}

  static Morning of(MorningPlan plan, Phase phase) {
    Morning morning = after(Morning.NONE, plan.beginsAt(), List.of(new Command.Plan(plan)));
    if (phase != Phase.DRAFT) {
      morning = after(morning, List.of(new Command.OpenMorning()));
    }
    return phase == Phase.CLOSED ? after(morning, List.of(new Command.CloseMorning())) : morning;
  }

  static Morning reached(Morning morning, String id, Step step) {
    return after(morning, List.of(new Command.Reach(new CaseId(id), step)));
  }

  /** Gives the commands one after the other, each having seen what the one before did. */
  static Morning after(Morning morning, List<Command> commands) {
    return after(morning, morning.beginsAt(), commands);
  }

  private static Morning after(Morning before, long now, List<Command> commands) {
    Morning morning = before;
    for (Command command : commands) {
      CommandId id = new CommandId("t" + morning.seq());
      Outcome outcome =
          Board.decide(morning, new Order(id, command, DESK, morning.seq(), now, now));
      if (!(outcome instanceof Outcome.Accepted accepted)) {
        throw new AssertionError(command + " was refused: " + outcome);
      }
      for (Recorded event : accepted.events()) {
        morning = Board.apply(morning, morning.seq() + 1, event);
      }
    }
    return morning;
  }
}
