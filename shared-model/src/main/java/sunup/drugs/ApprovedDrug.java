package sunup.drugs;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Objects;
import sunup.codec.Maybe;
import sunup.units.Concentration;
import sunup.units.Volume;

/**
 * A drug of the site's approved list, as it is drawn up there. What is drawn and labelled comes
 * from this list and from nowhere else.
 *
 * @param name as on the list
 * @param drugClass gives colour and stripes
 * @param concentration what is in a mL
 * @param volume what a syringe of it holds
 * @param limit how long it stays usable once drawn
 * @param cases techniques and options whose cases have it on their list; empty means every case
 * @param controlled its ampoule if it is controlled, else null
 * @param products product numbers of 14 digits that packages of it carry
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record ApprovedDrug(
    String name,
    DrugClass drugClass,
    Concentration concentration,
    Volume volume,
    UseLimit limit,
    List<String> cases,
    @Maybe ControlledDrug controlled,
    List<String> products) {
  public ApprovedDrug {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(drugClass, "drugClass");
    Objects.requireNonNull(concentration, "concentration");
    Objects.requireNonNull(volume, "volume");
    Objects.requireNonNull(limit, "limit");
    cases = cases == null ? List.of() : List.copyOf(cases);
    products = products == null ? List.of() : List.copyOf(products);
  }

  /** True if a case of this technique with these options has it on its list. */
  public boolean isFor(String technique, List<String> options) {
    return cases.isEmpty()
        || cases.contains(technique)
        || options.stream().anyMatch(cases::contains);
  }

  /** A syringe of it, drawn at this moment. */
  public DrawnDrug drawn(long atMs) {
    return DrawnDrug.of(name, drugClass, concentration, volume, atMs, List.of(limit));
  }
}
