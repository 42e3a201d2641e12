package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.function.Function;

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

  /**
   * When a step had been reached at the latest. People forget to tell a step, or tell it after the
   * next one; what comes after it can't have come before it.
   *
   * @param told when each step was reached as it was told, or null
   * @return the earliest time told of the step and of those after it, or null if none was told
   */
  public static Long reachedBy(Step step, Function<Step, Long> told) {
    Long first = null;
    for (Step one : values()) {
      Long at = one.compareTo(step) < 0 ? null : told.apply(one);
      first = at == null || (first != null && first <= at) ? first : at;
    }
    return first;
  }

  public String words() {
    return words;
  }

  /** The step as it is written on the wire and in sheets. */
  public String code() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
