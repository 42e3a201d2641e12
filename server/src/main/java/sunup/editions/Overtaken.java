package sunup.editions;

/** Another edition was published since the draft was begun. */
public final class Overtaken extends Exception {
  private static final long serialVersionUID = 1L;

  private final int now;

  Overtaken(int now) {
    super("edition " + now + " was published meanwhile");
    this.now = now;
  }

  /** The edition that stands. */
  public int now() {
    return now;
  }
}
