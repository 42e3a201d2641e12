package sunup.trying;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.PersonId;
import sunup.board.PersonPlan;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.KindIn;
import sunup.moves.Applied;
import sunup.outlook.Outlook;
import sunup.wire.TryChange;

/**
 * A copy of a morning. What the board has a command for is decided by the board itself, so that the
 * copy is what the morning would be, and refused in the same words; a further unit, for which there
 * is none, is a change of the forecast's input.
 */
final class Copy {
  private static final Actor DESK = new Actor(Role.DESK, null, "desk-copy");

  private final long now;
  private final List<String> kinds = new ArrayList<>();
  private Morning morning;
  private int made;

  Copy(Morning morning, long now) {
    this.morning = morning;
    this.now = now;
  }

  Morning morning() {
    return morning;
  }

  ForecastInput input(int trials) throws CantTry {
    ForecastInput in = Outlook.input(morning, now, trials);
    for (String kind : kinds) {
      if (in.kinds().stream().map(KindIn::id).noneMatch(kind::equals)) {
        throw new CantTry("This morning has no " + kind + ". Choose a kind that it has.");
      }
      in = Applied.oneMore(in, kind);
    }
    return in;
  }

  /** Makes one change of it. */
  void make(TryChange change) throws CantTry {
    if (change instanceof TryChange.Target target) {
      decide(command(caseIn(target.room()), target.at()));
    } else if (change instanceof TryChange.Swap swap) {
      CaseDay one = caseIn(swap.one());
      CaseDay other = caseIn(swap.other());
      decide(new Command.SwapCases(one.plan().id(), other.plan().id()));
    } else if (change instanceof TryChange.OneMoreUnit unit) {
      kinds.add(unit.kind());
    } else if (change instanceof TryChange.Opens opens) {
      decide(new Command.PlaceOpens(opens.place(), opens.at()));
    } else if (change instanceof TryChange.OneMorePerson person) {
      decide(new Command.AddPerson(further(person.role())));
    }
  }

  /** Later is agreed; earlier is what only a new booking can say. */
  private Command command(CaseDay day, long at) {
    CasePlan plan = day.plan();
    if (at >= plan.bookedAt()) {
      return new Command.AgreeLater(plan.id(), at == plan.bookedAt() ? null : at);
    }
    return new Command.ChangeCase(plan.at(at), morning.sheetOf(day));
  }

  private PersonPlan further(Role role) {
    int n = 1;
    while (morning.people().containsKey(id(role, n))) {
      n++;
    }
    return new PersonPlan(id(role, n), role, null, List.of(), Math.max(now, morning.beginsAt()));
  }

  private static PersonId id(Role role, int n) {
    return new PersonId("further-" + role.word() + "-" + n);
  }

  private CaseDay caseIn(RoomId room) throws CantTry {
    CaseDay day = morning.caseIn(room);
    if (day == null || day.cancelled()) {
      throw new CantTry("Room " + room + " has no first case. Choose a room that has one.");
    }
    return day;
  }

  private void decide(Command command) throws CantTry {
    CommandId id = new CommandId("copy-" + ++made);
    Outcome outcome = Board.decide(morning, new Order(id, command, DESK, morning.seq(), now, now));
    if (outcome instanceof Outcome.Refused refused) {
      throw new CantTry(refused.code().say(refused.detail()));
    }
    for (Recorded event : ((Outcome.Accepted) outcome).events()) {
      morning = Board.apply(morning, morning.seq() + 1, event);
    }
  }
}
