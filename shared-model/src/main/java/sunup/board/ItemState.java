package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;

/** The states of an item. {@code LAPSED} is derived from events and time, never stored. */
public enum ItemState {
  @JsonProperty("open")
  OPEN,
  @JsonProperty("in-hand")
  IN_HAND,
  @JsonProperty("good")
  GOOD,
  @JsonProperty("fault")
  FAULT,
  @JsonProperty("lapsed")
  LAPSED,
  @JsonProperty("left-out")
  LEFT_OUT
}
