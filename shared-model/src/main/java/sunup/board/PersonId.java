package sunup.board;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** A person on one morning under a pseudonym, for example {@code A7}. Never a name. */
public record PersonId(@JsonValue String value) implements Comparable<PersonId> {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  public PersonId {
    Ids.check("person id", value);
  }

  @Override
  public int compareTo(PersonId other) {
    return value.compareTo(other.value);
  }

  @Override
  public String toString() {
    return value;
  }
}
