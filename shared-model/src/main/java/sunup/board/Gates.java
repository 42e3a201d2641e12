package sunup.board;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Morning.CaseDay;
import sunup.sheets.SheetItem;

/** Which items a step still waits for. */
final class Gates {
  private Gates() {}

  static List<Placed> gating(Morning morning, CaseId caseId, Step step, long now) {
    CaseDay day = morning.cases().get(caseId);
    if (day == null || step == null || !isInItsRoom(morning, day)) {
      return List.of();
    }
    List<Placed> open = new ArrayList<>();
    for (Placed placed : morning.itemsOf(day.plan().room())) {
      if (gates(placed.sheet(), day, step) && isOpen(morning.stateOf(placed, now))) {
        open.add(placed);
      }
    }
    return open;
  }

  static List<ItemRef> refs(List<Placed> placed) {
    return placed.stream().map(Placed::ref).toList();
  }

  private static boolean gates(SheetItem item, CaseDay day, Step step) {
    Step gate = item.gates();
    if (gate == null || item.marks() == step) {
      return false;
    }
    return gate == step || (gate.compareTo(step) < 0 && !day.hasPassed(gate));
  }

  private static boolean isOpen(ItemState state) {
    return state != ItemState.GOOD && state != ItemState.LEFT_OUT;
  }

  /** False for a cancelled case whose room was given to another. */
  private static boolean isInItsRoom(Morning morning, CaseDay day) {
    Morning.RoomDay room = morning.rooms().get(day.plan().room());
    return room != null && day.plan().id().equals(room.caseId());
  }
}
