package sunup.trying;

/** A change that can't be tried; the message is for people and says what to do. */
public final class CantTry extends Exception {
  private static final long serialVersionUID = 1L;

  CantTry(String words) {
    super(words);
  }
}
