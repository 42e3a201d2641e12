package sunup.board;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** A suite: the rooms that share people and equipment. Computed, stored and owned as one. */
public record SuiteId(@JsonValue String value) implements Comparable<SuiteId> {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  public SuiteId {
    Ids.check("suite id", value);
  }

  @Override
  public int compareTo(SuiteId other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
