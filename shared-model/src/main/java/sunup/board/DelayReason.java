package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;

/** What was reported as the cause of a late start, in the groups that published studies use. */
public enum DelayReason {
  @JsonProperty("surgeon")
  SURGEON,
  @JsonProperty("anaesthesia")
  ANAESTHESIA,
  @JsonProperty("patient")
  PATIENT,
  @JsonProperty("staff")
  STAFF,
  @JsonProperty("equipment")
  EQUIPMENT,
  @JsonProperty("instruments")
  INSTRUMENTS,
  @JsonProperty("room")
  ROOM,
  @JsonProperty("transport")
  TRANSPORT,
  @JsonProperty("emergency")
  EMERGENCY,
  @JsonProperty("other")
  OTHER
}
