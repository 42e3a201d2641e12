package sunup.bedside;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import sunup.codec.Maybe;
import sunup.units.Concentration;
import sunup.units.Mass;
import sunup.units.Numbers;
import sunup.units.Volume;

/** One line of a result. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "line")
@JsonSubTypes({
  @JsonSubTypes.Type(value = Line.Plain.class, name = "plain"),
  @JsonSubTypes.Type(value = Line.Sizes.class, name = "sizes"),
  @JsonSubTypes.Type(value = Line.Dose.class, name = "dose"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface Line {
  /** What it is. */
  String label();

  /** The result in words and numbers, as a screen shows it. */
  String text();

  /** A figure with its unit, or words. */
  record Plain(String label, String text) implements Line {}

  /**
   * A size with those to have beside it.
   *
   * @param smaller the next smaller one, or null if there is none
   * @param size the one worked out
   * @param larger the next larger one, or null if there is none
   */
  record Sizes(String label, @Maybe String smaller, String size, @Maybe String larger)
      implements Line {
    @Override
    public String text() {
      List<String> beside =
          smaller == null
              ? larger == null ? List.of() : List.of(larger)
              : larger == null ? List.of(smaller) : List.of(smaller, larger);
      return beside.isEmpty() ? size : size + "; have ready " + String.join(" and ", beside);
    }
  }

  /**
   * An amount of a drug: mg, mL and concentration always together, as one of them alone invites the
   * wrong syringe.
   *
   * @param mg as {@link Mass} writes it
   * @param ml as {@link Volume} writes it
   * @param concentration as {@link Concentration} writes it
   */
  record Dose(String label, String mg, String ml, String concentration) implements Line {
    /** Rounded to the nearest that a syringe shows. */
    static Dose of(String label, Mass mass, Concentration concentration) {
      double ml = concentration.holding(mass).ml();
      return written(label, mass, Numbers.near(ml, Volume.places(ml)), concentration);
    }

    /** Rounded down, so that what is shown is never above the ceiling. */
    static Dose atMost(String label, Mass mass, Concentration concentration) {
      double ml = concentration.holding(mass).ml();
      Mass least = new Mass(Numbers.down(mass.mg(), Numbers.places(mass.mg())));
      return written(label, least, Numbers.down(ml, Volume.places(ml)), concentration);
    }

    private static Dose written(String label, Mass mass, double ml, Concentration concentration) {
      return new Dose(label, mass.toString(), new Volume(ml).toString(), concentration.toString());
    }

    @Override
    public String text() {
      return mg + " = " + ml + " of " + concentration;
    }
  }
}
