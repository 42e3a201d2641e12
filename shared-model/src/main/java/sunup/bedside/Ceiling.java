package sunup.bedside;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Locale;
import sunup.codec.Maybe;
import sunup.units.Numbers;

/**
 * The published ceiling of one local anaesthetic. Without a source, or with one of the two limits
 * only, there is no figure: a fixed limit alone is twice the usual one for a patient of 40 kg.
 *
 * @param drug lower case
 * @param family amide or ester
 * @param withVasoconstrictor true for a solution with adrenaline or another vasoconstrictor
 * @param mgPerKg mg for each kg of body weight, or null if the source has none
 * @param fixedMg mg whatever the weight, or null if the source has none
 * @param source authors or organisation, title, edition, table
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Ceiling(
    String drug,
    Family family,
    boolean withVasoconstrictor,
    @Maybe Double mgPerKg,
    @Maybe Double fixedMg,
    String source) {
  /** What it is broken down like. */
  public enum Family {
    @JsonProperty("amide")
    AMIDE,
    @JsonProperty("ester")
    ESTER
  }

  /** Prints each drug's pair side by side, so that no two editions are mixed. */
  static final String OLSON =
      "Olson (ed.), Poisoning & Drug Overdose, 8th edition, Table II-2: adult single dose";

  /** One table of one edition. Others differ: lidocaine plain 3 mg/kg in the UK, for example. */
  public static final List<Ceiling> PUBLISHED =
      List.of(
          ester("chloroprocaine", false, 10.0, 800.0),
          ester("chloroprocaine", true, 12.0, 1000.0),
          ester("procaine", false, 10.0, 600.0),
          ester("tetracaine", false, 3.0, null),
          amide("articaine", false, 7.0, null),
          amide("bupivacaine", false, 2.0, 175.0),
          amide("bupivacaine", true, 3.0, 225.0),
          amide("etidocaine", false, 2.5, 300.0),
          amide("etidocaine", true, 4.0, 400.0),
          amide("levobupivacaine", false, 2.0, 200.0),
          amide("levobupivacaine", true, 3.0, 225.0),
          amide("lidocaine", false, 4.5, 300.0),
          amide("lidocaine", true, 7.0, 500.0),
          amide("mepivacaine", false, 4.5, 350.0),
          amide("mepivacaine", true, 7.0, 500.0),
          amide("prilocaine", false, 6.0, 400.0),
          amide("prilocaine", true, 8.0, 600.0),
          amide("ropivacaine", false, 3.0, 200.0));

  public Ceiling {
    if (drug == null || drug.isBlank() || family == null) {
      throw new IllegalArgumentException("a ceiling needs the name of its drug and its family");
    }
    if (mgPerKg != null) {
      Numbers.above0(mgPerKg, drug + " mg/kg");
    }
    if (fixedMg != null) {
      Numbers.above0(fixedMg, drug + " mg");
    }
  }

  private static Ceiling amide(String drug, boolean with, Double mgPerKg, Double fixedMg) {
    return new Ceiling(drug, Family.AMIDE, with, mgPerKg, fixedMg, OLSON);
  }

  private static Ceiling ester(String drug, boolean with, Double mgPerKg, Double fixedMg) {
    return new Ceiling(drug, Family.ESTER, with, mgPerKg, fixedMg, OLSON);
  }

  /** The solution, as it is chosen and shown. */
  public String solution() {
    return drug + (withVasoconstrictor ? WITH : PLAIN);
  }

  /** All of it in words; two ceilings that differ never read alike. */
  String words() {
    return solution()
        + " ("
        + family.name().toLowerCase(Locale.ROOT)
        + "): "
        + (mgPerKg == null ? "no limit" : Numbers.text(mgPerKg) + " mg")
        + " per kg, "
        + (fixedMg == null ? "no limit" : "at most " + Numbers.text(fixedMg) + " mg")
        + " in all; "
        + source;
  }

  static final String WITH = " with vasoconstrictor";
  static final String PLAIN = " plain";
}
