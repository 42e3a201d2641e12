package sunup.bedside;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;

/** What comes of asking for a figure. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "answer")
@JsonSubTypes({
  @JsonSubTypes.Type(value = Answer.Off.class, name = "off"),
  @JsonSubTypes.Type(value = Answer.Refused.class, name = "refused"),
  @JsonSubTypes.Type(value = Answer.AskedAgain.class, name = "asked-again"),
  @JsonSubTypes.Type(value = Answer.Worked.class, name = "worked"),
})
public sealed interface Answer {
  /** The site has not released the figure as it stands. */
  record Off(String why) implements Answer {}

  /** No figure, and why. */
  record Refused(List<Reason> reasons) implements Answer {
    public Refused {
      reasons = List.copyOf(reasons);
    }

    static Refused of(String input, String message) {
      return new Refused(List.of(new Reason(input, message)));
    }
  }

  /** Unusual: to be entered a second time, from the chart and not from the first entry. */
  record AskedAgain(List<Reason> reasons) implements Answer {
    public AskedAgain {
      reasons = List.copyOf(reasons);
    }
  }

  /**
   * A reason.
   *
   * @param input the input that it is about, or empty if it is about the whole
   * @param message what is wrong and what to do
   */
  record Reason(String input, String message) {}

  /**
   * The figure.
   *
   * @param lines the results
   * @param given every input that was used, in all its units, to be read back
   * @param worked the sum with its numbers put in, so that a second person can follow it
   * @param cautions what to keep in mind here, beside the figure's own caution
   * @param secondPerson true if a second person works it out too before it is used
   */
  record Worked(
      List<Line> lines,
      List<String> given,
      String worked,
      List<String> cautions,
      boolean secondPerson)
      implements Answer {
    public Worked {
      lines = List.copyOf(lines);
      given = List.copyOf(given);
      cautions = List.copyOf(cautions);
    }
  }
}
