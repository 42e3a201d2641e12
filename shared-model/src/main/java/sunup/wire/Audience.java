package sunup.wire;

import com.fasterxml.jackson.annotation.JsonProperty;

/** Who reads a stream of frames. What an audience may not see is never sent to it. */
public enum Audience {
  /** The wall, where relatives and patients pass: nothing about a patient. */
  @JsonProperty("wall")
  WALL,
  /** A phone that leaves the suite: whose rooms and what is asked, nothing about a patient. */
  @JsonProperty("pocket")
  POCKET,
  /** Stations and holding. */
  @JsonProperty("staff")
  STAFF,
  /** The desk: what staff see, and the figures. */
  @JsonProperty("desk")
  DESK;

  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
