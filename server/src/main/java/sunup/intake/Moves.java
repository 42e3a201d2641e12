package sunup.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.CaseId;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.RoomId;

/**
 * Orders changes of cases so that no two are ever in one room: a case moves when its new room is
 * free, and cases that move round in a circle are swapped.
 */
final class Moves {
  private Moves() {}

  /**
   * @param now the cases that stay, as they are
   * @param changes what each case is to become, by case
   */
  static List<Command> commands(List<CasePlan> now, Map<CaseId, Command.ChangeCase> changes) {
    Map<RoomId, CaseId> there = new HashMap<>();
    Map<CaseId, RoomId> at = new HashMap<>();
    Map<CaseId, CasePlan> plans = new HashMap<>();
    for (CasePlan one : now) {
      there.put(one.room(), one.id());
      at.put(one.id(), one.room());
      plans.put(one.id(), one);
    }
    Map<CaseId, Command.ChangeCase> left = new LinkedHashMap<>(changes);
    Set<CaseId> swapped = new HashSet<>();
    List<Command> commands = new ArrayList<>();
    while (!left.isEmpty()) {
      CaseId next = null;
      for (Map.Entry<CaseId, Command.ChangeCase> each : left.entrySet()) {
        CaseId other = there.get(each.getValue().plan().room());
        if (other == null || other.equals(each.getKey())) {
          next = each.getKey();
          break;
        }
      }
      if (next != null) {
        Command.ChangeCase change = left.remove(next);
        there.remove(at.get(next));
        there.put(change.plan().room(), next);
        at.put(next, change.plan().room());
        if (!plans.get(next).in(at.get(next)).equals(change.plan()) || !swapped.contains(next)) {
          commands.add(change);
        }
      } else {
        // Every room wanted is taken by a case that wants another: swap the first into place.
        CaseId first = left.keySet().iterator().next();
        RoomId from = at.get(first);
        RoomId to = left.get(first).plan().room();
        CaseId other = there.get(to);
        commands.add(new Command.SwapCases(first, other));
        swapped.add(first);
        swapped.add(other);
        there.put(to, first);
        there.put(from, other);
        at.put(first, to);
        at.put(other, from);
      }
    }
    return commands;
  }
}
