package sunup.sheets;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * A kind of shared equipment that an item needs.
 *
 * @param kind the kind, for example {@code ultrasound}
 * @param until the key of the item at whose end it is released, or null for this item's own end
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Uses(String kind, String until) {}
