package sunup.board;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;

/** What somebody offers for an item's being good. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
  @JsonSubTypes.Type(value = Evidence.Touch.class, name = "touch"),
  @JsonSubTypes.Type(value = Evidence.Swept.class, name = "swept"),
  @JsonSubTypes.Type(value = Evidence.Reading.class, name = "number"),
  @JsonSubTypes.Type(value = Evidence.Choice.class, name = "choice"),
  @JsonSubTypes.Type(value = Evidence.Scan.class, name = "scan")
})
public sealed interface Evidence {
  /** A touch on the item itself. */
  record Touch() implements Evidence {}

  /** Its section was gone through and it was not named as an exception. */
  record Swept() implements Evidence {}

  /** A number with its unit; {@code undone} confirms that what was opened is closed again. */
  record Reading(double value, String unit, boolean undone) implements Evidence {}

  /** One of the sheet's words. */
  record Choice(String word) implements Evidence {}

  /** The tag of a piece of equipment. */
  record Scan(UnitId unit) implements Evidence {}
}
