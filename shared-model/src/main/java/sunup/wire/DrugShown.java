package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import sunup.codec.Maybe;
import sunup.drugs.DrugClass;

/**
 * A drug of the approved list as its label shows it.
 *
 * @param name as on the list; shown with the capitals that tell it from names like it
 * @param alike names that it is taken for
 * @param rgb the class's colour, for inside a label only
 * @param striped white stripes: acts against the class of its colour
 * @param reversed its name stands in a black bar
 * @param lineBelow a black line below the name
 * @param amount what a syringe holds, as amount, volume and concentration together
 * @param minutes for how long it is usable once drawn; limit says by which rule
 * @param ampoule what one holds if it is controlled, micrograms
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record DrugShown(
    String name,
    String shown,
    List<String> alike,
    DrugClass drugClass,
    String rgb,
    boolean striped,
    boolean reversed,
    boolean lineBelow,
    String amount,
    String volume,
    String concentration,
    long minutes,
    String limit,
    @Maybe Double ampoule) {}
