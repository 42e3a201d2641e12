package sunup.board;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** The id that a screen gives to a command, a UUIDv7; the same id is only ever carried out once. */
public record CommandId(@JsonValue String value) implements Comparable<CommandId> {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  public CommandId {
    Ids.check("command id", value);
  }

  @Override
  public int compareTo(CommandId other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
