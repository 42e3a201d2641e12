package sunup.board;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** An operating room, as the suite numbers it, for example {@code 7}. */
public record RoomId(@JsonValue String value) implements Comparable<RoomId> {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  public RoomId {
    Ids.check("room id", value);
  }

  @Override
  public int compareTo(RoomId other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
