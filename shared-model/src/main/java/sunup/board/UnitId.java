package sunup.board;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** One piece of shared equipment, for example {@code ultrasound-1}. */
public record UnitId(@JsonValue String value) implements Comparable<UnitId> {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  public UnitId {
    Ids.check("equipment id", value);
  }

  @Override
  public int compareTo(UnitId other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
