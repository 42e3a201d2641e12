package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;

/** What somebody says who was asked for a move. */
public enum MoveAnswer {
  @JsonProperty("accept")
  ACCEPT,
  @JsonProperty("cannot")
  CANNOT,
  /** It stays off for the rest of the morning, whoever says so. */
  @JsonProperty("not-safe")
  NOT_SAFE
}
