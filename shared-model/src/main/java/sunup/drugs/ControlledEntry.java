package sunup.drugs;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.math.BigDecimal;
import sunup.board.PersonId;
import sunup.board.Private;
import sunup.codec.Maybe;

/** One line of a controlled-drug count. Whoever signs is named by the morning's pseudonym. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "entry")
@JsonSubTypes({
  @JsonSubTypes.Type(value = ControlledEntry.Drawn.class, name = "drawn"),
  @JsonSubTypes.Type(value = ControlledEntry.Given.class, name = "given"),
  @JsonSubTypes.Type(value = ControlledEntry.Wasted.class, name = "wasted"),
  @JsonSubTypes.Type(value = ControlledEntry.Returned.class, name = "returned"),
  @JsonSubTypes.Type(value = ControlledEntry.Struck.class, name = "struck"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface ControlledEntry {
  /** When it happened, ms. */
  long atMs();

  /** Who did it. */
  PersonId by();

  /** The second person, or null where one is enough. */
  PersonId witness();

  /** Ampoules taken from the store, whole. */
  record Drawn(ControlledDrug drug, int units, long atMs, PersonId by, PersonId witness)
      implements ControlledEntry {}

  /** Given to the patient; one signature, the record of the anaesthetic has the rest. */
  record Given(ControlledDrug drug, BigDecimal micrograms, long atMs, PersonId by)
      implements ControlledEntry {
    @Override
    public PersonId witness() {
      return null;
    }
  }

  /** Made unusable before a second person's eyes. */
  record Wasted(
      ControlledDrug drug, BigDecimal micrograms, long atMs, PersonId by, PersonId witness)
      implements ControlledEntry {}

  /** Ampoules given back, whole and unopened. */
  record Returned(ControlledDrug drug, int units, long atMs, PersonId by, PersonId witness)
      implements ControlledEntry {}

  /**
   * An earlier entry was wrong: it stays and no longer counts.
   *
   * @param entry its number in the list, from 0
   * @param why in the words of whoever strikes it
   */
  record Struck(int entry, @Maybe Private why, long atMs, PersonId by, PersonId witness)
      implements ControlledEntry {}
}
