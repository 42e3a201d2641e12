package sunup.wire;

import com.fasterxml.jackson.annotation.JsonProperty;

/** A room's computed state. */
public enum Standing {
  /** Reported ready, and nothing open that the start needs. Never that it is safe. */
  @JsonProperty("ready")
  READY,
  @JsonProperty("ahead")
  AHEAD,
  @JsonProperty("tight")
  TIGHT,
  @JsonProperty("late")
  LATE,
  /** A fault that nobody is mending. */
  @JsonProperty("stuck")
  STUCK,
  /** No word from the room. */
  @JsonProperty("unheard")
  UNHEARD,
  /** A later start was agreed and holds. */
  @JsonProperty("agreed")
  AGREED,
  @JsonProperty("started")
  STARTED,
  /** Nothing was computed of the room: nobody can say whether it will start on time. */
  @JsonProperty("no-figures")
  NO_FIGURES,
  /** The room has no first case, or its case is cancelled. */
  @JsonProperty("none")
  NONE
}
