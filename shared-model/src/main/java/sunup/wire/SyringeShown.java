package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import sunup.codec.Maybe;

/**
 * A syringe that was drawn.
 *
 * @param number what a command names it by
 * @param text name, amount, volume and concentration
 * @param room where it was drawn
 * @param voided its case went elsewhere: to be thrown away
 * @param scanned the package's code, if one was scanned
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SyringeShown(
    int number,
    String drug,
    String text,
    String room,
    long drawnAt,
    long lapsesAt,
    boolean voided,
    @Maybe Long discardedAt,
    @Maybe String scanned) {}
