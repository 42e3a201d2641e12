package sunup.board;

/**
 * A value that may point to a person: free text, a procedure, an age. In memory and on the wire to
 * those who may see it, it is its text; in the journal an event holds only a reference and a keyed
 * commitment, so that erasing the text leaves the journal's chain intact. Nothing that {@code
 * decide} or {@code apply} does may depend on the text.
 *
 * @param text the value, or null once it was erased
 */
public record Private(String text) {
  public static final Private ERASED = new Private(null);

  public static Private of(String text) {
    return text == null || text.isBlank() ? null : new Private(text.strip());
  }

  /** The text, or the word {@code erased}. */
  public String shown() {
    return text == null ? "erased" : text;
  }
}
