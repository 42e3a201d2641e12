package sunup.ops.rehearsal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sunup.board.Role;

/** Who does an item together. */
final class Crew {
  private Crew() {}

  /**
   * The people for all of an item's slots who are free now, the given one among them and first;
   * null if somebody is missing. Own people before others, then the plan's order.
   */
  static List<Worker> find(Job job, Worker lead, List<Worker> all, long now) {
    List<List<Role>> slots = job.item.who();
    for (int mine = 0; mine < slots.size(); mine++) {
      if (slots.get(mine).contains(lead.role)) {
        List<Worker> crew = fill(job, lead, mine, all, now);
        if (crew != null) {
          return crew;
        }
      }
    }
    return null;
  }

  private static List<Worker> fill(Job job, Worker lead, int mine, List<Worker> all, long now) {
    List<Worker> crew = new ArrayList<>();
    crew.add(lead);
    for (int i = 0; i < job.item.who().size(); i++) {
      if (i == mine) {
        continue;
      }
      List<Role> slot = job.item.who().get(i);
      Worker other =
          all.stream()
              .filter(w -> !crew.contains(w) && slot.contains(w.role))
              .filter(w -> w.serves(job.room.id) && w.freeAt(now))
              .min(Comparator.comparing(w -> w.own == null))
              .orElse(null);
      if (other == null) {
        return null;
      }
      crew.add(other);
    }
    return crew;
  }
}
