package sunup.board;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** A place away from the rooms that opens and closes, for example {@code pharmacy}. */
public record PlaceId(@JsonValue String value) implements Comparable<PlaceId> {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  public PlaceId {
    Ids.check("place id", value);
  }

  @Override
  public int compareTo(PlaceId other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
