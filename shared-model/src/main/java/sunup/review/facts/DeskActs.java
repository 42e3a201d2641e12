package sunup.review.facts;

import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import sunup.board.CaseId;
import sunup.board.Event;
import sunup.board.ItemRef;
import sunup.board.Morning;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;

/**
 * Whether the desk acted on a room: somebody of {@link #WHO} took a holdup, answered a call for
 * help, took a fault, sent somebody, asked for a move, promised a unit, or moved, changed,
 * cancelled or put off its case. Words about when somebody comes are news and no act.
 */
final class DeskActs {
  static final Set<Role> WHO = EnumSet.of(Role.DESK, Role.SUPERVISOR, Role.ADMIN);

  private DeskActs() {}

  /** True if the desk acted on the room or its case after one moment and before the other. */
  static boolean between(
      List<Recorded> journal, Morning end, RoomId room, CaseId caseId, long after, long before) {
    for (Recorded recorded : journal) {
      boolean inTime = recorded.happenedAt() > after && recorded.happenedAt() < before;
      boolean theirs = recorded.actor() != null && WHO.contains(recorded.actor().role());
      if (inTime && theirs && isAct(recorded.event(), end, room, caseId)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isAct(Event event, Morning end, RoomId room, CaseId caseId) {
    if (event instanceof Event.HoldupTaken e) {
      return room.equals(e.room());
    } else if (event instanceof Event.HelpAnswered e) {
      return room.equals(e.room());
    } else if (event instanceof Event.FaultTaken e) {
      return isOf(e.item(), end, room);
    } else if (event instanceof Event.PersonJoined e) {
      return room.equals(e.room());
    } else if (event instanceof Event.HandedOver e) {
      return room.equals(e.room());
    } else if (event instanceof Event.MoveAsked e) {
      return room.equals(e.move().room());
    } else if (event instanceof Event.UnitPromised e) {
      return room.equals(e.room());
    } else if (event instanceof Event.CasesSwapped e) {
      return caseId.equals(e.one()) || caseId.equals(e.other());
    } else if (event instanceof Event.CaseChanged e) {
      return caseId.equals(e.plan().id());
    } else if (event instanceof Event.CaseCancelled e) {
      return caseId.equals(e.caseId());
    } else if (event instanceof Event.LaterAgreed e) {
      return caseId.equals(e.caseId());
    }
    return false;
  }

  private static boolean isOf(ItemRef item, Morning end, RoomId room) {
    return Objects.equals(end.roomOf(item), room);
  }
}
