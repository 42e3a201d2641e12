package sunup.board;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** A first case of one morning; stays with the case when it moves to another room. */
public record CaseId(@JsonValue String value) implements Comparable<CaseId> {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  public CaseId {
    Ids.check("case id", value);
  }

  @Override
  public int compareTo(CaseId other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
