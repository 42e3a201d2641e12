package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;

/** What a room is used for at the moment. */
public enum RoomUse {
  @JsonProperty("free")
  FREE,
  /** A night case is still in it. */
  @JsonProperty("occupied")
  OCCUPIED,
  @JsonProperty("cleaning")
  CLEANING,
  /** Taken for an emergency: its first case waits or moves. */
  @JsonProperty("emergency")
  EMERGENCY
}
