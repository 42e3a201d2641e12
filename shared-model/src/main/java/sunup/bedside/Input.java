package sunup.bedside;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sunup.codec.Maybe;
import sunup.units.Unit;

/**
 * One thing that a figure asks for.
 *
 * @param name its key in a question
 * @param label what the screen calls it
 * @param kind a number with a unit, or one of a few words
 * @param units of a number, those to choose from; none is chosen beforehand
 * @param least of a number, the least that is taken, in the first unit
 * @param most of a number, the most that is taken, in the first unit
 * @param choices of a choice, the words
 * @param needed false if the figure does without
 * @param ofPatient true if it is a fact of the patient: it comes with the case and goes with it
 * @param again when it is asked a second time
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Input(
    String name,
    String label,
    Kind kind,
    List<Unit> units,
    @Maybe Double least,
    @Maybe Double most,
    List<String> choices,
    boolean needed,
    boolean ofPatient,
    Again again) {
  /** What is entered. */
  public enum Kind {
    @JsonProperty("number")
    NUMBER,
    @JsonProperty("choice")
    CHOICE
  }

  /** When an input is asked for a second time. */
  public enum Again {
    @JsonProperty("never")
    NEVER,
    /** A weight that is unusual for the age, see {@link WeightBands}. */
    @JsonProperty("outside-age-band")
    OUTSIDE_AGE_BAND
  }

  /** Facts of the patient, the same in every figure. Ranges are what can be meant at all. */
  static final Input AGE =
      patient(number("age", "age", 0, 120, Unit.YEARS, Unit.MONTHS), Again.NEVER);

  static final Input WEIGHT =
      patient(number("weight", "weight", 0.3, 400, Unit.KG, Unit.LB), Again.OUTSIDE_AGE_BAND);
  static final Input HEIGHT =
      patient(number("height", "height", 20, 250, Unit.CM, Unit.IN), Again.NEVER);
  static final Input SEX = patient(choice("sex", "sex", "female", "male"), Again.NEVER);

  public Input {
    units = List.copyOf(units);
    choices = List.copyOf(choices);
  }

  static Input number(String name, String label, double least, double most, Unit... units) {
    return new Input(
        name,
        label,
        Kind.NUMBER,
        Arrays.asList(units),
        least,
        most,
        List.of(),
        true,
        false,
        Again.NEVER);
  }

  static Input choice(String name, String label, String... words) {
    return new Input(
        name,
        label,
        Kind.CHOICE,
        List.of(),
        null,
        null,
        new ArrayList<>(Arrays.asList(words)),
        true,
        false,
        Again.NEVER);
  }

  Input optional() {
    return new Input(name, label, kind, units, least, most, choices, false, ofPatient, again);
  }

  private static Input patient(Input input, Again again) {
    return new Input(
        input.name,
        input.label,
        input.kind,
        input.units,
        input.least,
        input.most,
        input.choices,
        input.needed,
        true,
        again);
  }
}
