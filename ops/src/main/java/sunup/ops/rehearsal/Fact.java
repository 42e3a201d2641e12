package sunup.ops.rehearsal;

import java.util.List;
import sunup.board.ItemRef;
import sunup.board.PersonId;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.board.UnitId;

/**
 * Something that truly happened, whether or not anybody reports it. Times are epoch milliseconds.
 */
public sealed interface Fact {
  long at();

  /** A person is here; {@code room} is the person's own, or null. */
  record Came(long at, PersonId person, RoomId room) implements Fact {}

  /**
   * Work on an item begins; the first of {@code hands} leads. Stand-ins have no id and are left.
   */
  record Began(long at, RoomId room, ItemRef item, List<PersonId> hands) implements Fact {}

  /** An item is good. */
  record Done(long at, RoomId room, ItemRef item, List<PersonId> hands) implements Fact {}

  /** An item turned out broken. */
  record Broke(long at, RoomId room, ItemRef item, String what) implements Fact {}

  /** Somebody goes to mend it. */
  record Taken(long at, RoomId room, ItemRef item, PersonId by) implements Fact {}

  /** It is mended and to be tried again. */
  record Mended(long at, RoomId room, ItemRef item) implements Fact {}

  /** A piece of equipment is now with the room. */
  record Fetched(long at, RoomId room, UnitId unit) implements Fact {}

  /** It is free again. */
  record Freed(long at, RoomId room, UnitId unit) implements Fact {}

  /** What the room is used for changes; {@code until} is what people expect, or null. */
  record Used(long at, RoomId room, RoomUse use, Long until) implements Fact {}
}
