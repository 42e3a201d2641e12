package sunup.ops.rehearsal;

import java.util.List;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;

/** A person in the simulated hospital. Does one thing at a time. */
final class Worker {
  final String name;

  /** Null for a stand-in: somebody whom the plan does not name. */
  final PersonId id;

  final Role role;

  /** Null for one who serves several. */
  final RoomId own;

  final List<RoomId> covers;

  /** How this person's items go together on this morning, standard normal. */
  final double pace;

  /** When the person comes; {@link Long#MAX_VALUE} while that depends on an arrival. */
  long comesAt;

  /** Where the person is, a place's key, or null for the rooms. */
  String place;

  Job doing;
  boolean mending;
  long awayUntil = Long.MIN_VALUE;

  Worker(
      String name, PersonId id, Role role, RoomId own, List<RoomId> covers, double pace, long at) {
    this.name = name;
    this.id = id;
    this.role = role;
    this.own = own;
    this.covers = covers;
    this.pace = pace;
    this.comesAt = at;
  }

  boolean freeAt(long now) {
    return comesAt <= now && doing == null && awayUntil <= now;
  }

  boolean serves(RoomId room) {
    return own != null ? own.equals(room) : covers.isEmpty() || covers.contains(room);
  }
}
