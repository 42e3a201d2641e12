package sunup.board;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonSubTypes.Type;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import sunup.codec.Maybe;

/**
 * Something that can still be done for a room's start. There is none that leaves a patient, leaves
 * out or shortens a check, or swaps cases: two rooms can at most be talked about.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
@JsonSubTypes({
  @Type(value = Move.SendTo.class, name = "send"),
  @Type(value = Move.Unit.class, name = "unit"),
  @Type(value = Move.First.class, name = "first"),
  @Type(value = Move.OpenEarlier.class, name = "open-earlier"),
  @Type(value = Move.Attend.class, name = "attend"),
  @Type(value = Move.Later.class, name = "later"),
  @Type(value = Move.Talk.class, name = "talk"),
})
public sealed interface Move {
  /**
   * What makes it the same move when it is thought of again, whatever times it names: what was
   * called not safe stays off under this key.
   */
  String key();

  /** The room that it is for, or null. */
  RoomId room();

  /** A technician, second hands or a float goes to a room. */
  record SendTo(PersonId person, RoomId room) implements Move {
    @Override
    public String key() {
      return "send." + person + "." + room;
    }
  }

  /** The next free unit of a kind goes to this room first. */
  record Unit(String kind, RoomId room) implements Move {
    @Override
    public String key() {
      return "unit." + kind + "." + room;
    }
  }

  /** The room does these items first, and the rest of its list while they wait. */
  record First(RoomId room, List<String> items) implements Move {
    public First {
      items = items == null ? null : List.copyOf(items);
    }

    @Override
    public String key() {
      return "first." + room + "." + String.join(".", items);
    }
  }

  /** A place is asked to open earlier, for the room that waits for it most. */
  record OpenEarlier(PlaceId place, long at, @Maybe RoomId room) implements Move {
    @Override
    public String key() {
      return "open." + place;
    }
  }

  /** The supervisor is at this room's steps first; {@code person} null if any of several may be. */
  record Attend(RoomId room, @Maybe PersonId person) implements Move {
    @Override
    public String key() {
      return "attend." + room;
    }
  }

  /** The start of a room is agreed later, so that others get who or what they share first. */
  record Later(RoomId room, CaseId caseId, long at) implements Move {
    @Override
    public String key() {
      return "later." + caseId;
    }
  }

  /** Talk about swapping the cases of two rooms. Nothing is swapped by it. */
  record Talk(RoomId room, RoomId other) implements Move {
    @Override
    public String key() {
      return "talk." + room + "." + other;
    }
  }
}
