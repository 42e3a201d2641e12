package sunup.board;

import java.util.List;
import sunup.codec.Maybe;

/**
 * A person who is planned to work on this morning.
 *
 * @param id pseudonym
 * @param role what the person does
 * @param room the person's own room, or null for one who serves several
 * @param covers the rooms that a person without an own room serves; empty means all
 * @param plannedAt when the person should be there, epoch milliseconds
 */
public record PersonPlan(
    PersonId id, Role role, @Maybe RoomId room, @Maybe List<RoomId> covers, long plannedAt) {
  public PersonPlan {
    covers = covers == null ? List.of() : List.copyOf(covers);
  }
}
