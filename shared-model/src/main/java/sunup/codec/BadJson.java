package sunup.codec;

/** Text that is not the JSON asked for: where, what was found, what to give instead. */
public final class BadJson extends Exception {
  private static final long serialVersionUID = 1L;

  public BadJson(String message) {
    super(message);
  }
}
