package sunup.forecast;

/** The input can't be simulated; the message names the field and what to do. */
public final class BadInput extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public BadInput(String message) {
    super(message);
  }
}
