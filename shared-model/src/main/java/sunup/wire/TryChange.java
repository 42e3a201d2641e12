package sunup.wire;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import sunup.board.PlaceId;
import sunup.board.Role;
import sunup.board.RoomId;

/** One thing that is other on a copy of the morning. Nothing of it is recorded. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "change")
@JsonSubTypes({
  @JsonSubTypes.Type(value = TryChange.Target.class, name = "target"),
  @JsonSubTypes.Type(value = TryChange.Swap.class, name = "swap"),
  @JsonSubTypes.Type(value = TryChange.OneMoreUnit.class, name = "one-more-unit"),
  @JsonSubTypes.Type(value = TryChange.Opens.class, name = "opens"),
  @JsonSubTypes.Type(value = TryChange.OneMorePerson.class, name = "one-more-person"),
})
public sealed interface TryChange {
  /** The room's case is meant to start at another time, earlier or later. */
  record Target(RoomId room, long at) implements TryChange {}

  /** The first cases of two rooms swap rooms. */
  record Swap(RoomId one, RoomId other) implements TryChange {}

  /** There is one more unit of this kind of equipment. */
  record OneMoreUnit(String kind) implements TryChange {}

  /** The place opens at another time. */
  record Opens(PlaceId place, long at) implements TryChange {}

  /** One more person of this role is here, or comes when set-up begins, and serves all rooms. */
  record OneMorePerson(Role role) implements TryChange {}
}
