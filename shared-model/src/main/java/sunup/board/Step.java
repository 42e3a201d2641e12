package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;

/** The steps of the start chain, in order. */
public enum Step {
  @JsonProperty("sent-for")
  SENT_FOR("sent for"),
  @JsonProperty("wheels-in")
  WHEELS_IN("wheels in"),
  @JsonProperty("induction")
  INDUCTION("induction"),
  @JsonProperty("release")
  RELEASE("anaesthesia release"),
  @JsonProperty("incision")
  INCISION("incision");

  private final String words;

  Step(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** The step as it is written on the wire and in sheets. */
  public String code() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
