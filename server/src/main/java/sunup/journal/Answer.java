package sunup.journal;

/** What the journal says to a question. */
public sealed interface Answer<T> {
  /** It knows. */
  record Known<T>(T value) implements Answer<T> {}

  /** It can't say now; ask again later. */
  record Away<T>(String words) implements Answer<T> {}
}
