package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;

/** What is entered into the count of controlled drugs. */
public enum CountKind {
  /** Ampoules taken from the store. */
  @JsonProperty("drawn")
  DRAWN,
  /** To the patient. */
  @JsonProperty("given")
  GIVEN,
  /** Made unusable before two. */
  @JsonProperty("wasted")
  WASTED,
  /** Ampoules given back unopened. */
  @JsonProperty("returned")
  RETURNED,
  /** An earlier entry was wrong. */
  @JsonProperty("struck")
  STRUCK
}
