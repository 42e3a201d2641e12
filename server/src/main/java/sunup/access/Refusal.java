package sunup.access;

/** What was asked is not done; the message says to a person why, and what to do. */
public final class Refusal extends Exception {
  private static final long serialVersionUID = 1L;

  Refusal(String words) {
    super(words, null, false, false);
  }
}
