package sunup.sheets;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import sunup.codec.Maybe;

/**
 * One change that a draft makes to the sheets of a site. A draft is a list of them, each on what
 * those before it left, so that it can be laid on a later edition, too.
 *
 * @param does what it does
 * @param sheet the sheet's name; may be absent for {@link Does#AS_IN}, which then means all of them
 * @param key the item's key; absent where it is about a whole sheet
 * @param fields of an item, or of a sheet's head, as they are written in a sheet; null takes a
 *     field away
 * @param behind the key behind which an item stands; absent: last of its section, but first if it
 *     is moved on a base
 * @param edition for {@link Does#AS_IN}, the edition; 0 is what comes with the program
 */
public record SheetEdit(
    Does does,
    @Maybe String sheet,
    @Maybe String key,
    @Maybe Map<String, Object> fields,
    @Maybe String behind,
    @Maybe Integer edition) {
  /** What an edit does. */
  public enum Does {
    /** Sets fields of an item: of one that the sheet brings, or of one that it finds. */
    @JsonProperty("change")
    CHANGE,
    /** Brings an item. */
    @JsonProperty("add")
    ADD,
    /** An item is no longer brought, or one that the sheet finds is taken away. */
    @JsonProperty("leave-out")
    LEAVE_OUT,
    /** What the sheet took away or changed of an item is as it was found. */
    @JsonProperty("put-back")
    PUT_BACK,
    /** An item stands elsewhere in its section. */
    @JsonProperty("move")
    MOVE,
    /** A sheet, or all, as they were in an edition. */
    @JsonProperty("as-in")
    AS_IN,
    /** A technique, an option or a person's own sheet that is new. */
    @JsonProperty("add-sheet")
    ADD_SHEET,
    /** Sets fields of a sheet's head: title, note, on, brings, notWith, kinds, order. */
    @JsonProperty("head")
    HEAD,
    /** A whole sheet goes. */
    @JsonProperty("remove-sheet")
    REMOVE_SHEET
  }

  public SheetEdit {
    fields = fields == null ? Map.of() : Collections.unmodifiableMap(new LinkedHashMap<>(fields));
  }

  /** True if it is about a whole sheet, or all, and whatever others did to it is touched too. */
  boolean wholeSheet() {
    return does == Does.AS_IN || does == Does.ADD_SHEET || does == Does.REMOVE_SHEET;
  }
}
