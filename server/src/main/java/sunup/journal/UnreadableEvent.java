package sunup.journal;

/** An event that this Sunup can't read. Whoever meets one must not own the morning. */
public final class UnreadableEvent extends Exception {
  private static final long serialVersionUID = 1L;

  public UnreadableEvent(String message) {
    super(message);
  }

  UnreadableEvent(String message, Throwable cause) {
    super(message, cause);
  }
}
