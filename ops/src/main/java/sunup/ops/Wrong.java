package sunup.ops;

/** Something that the person at the command line can put right; the message says how. */
final class Wrong extends Exception {
  private static final long serialVersionUID = 1L;
  private final int exitCode;

  private Wrong(int exitCode, String message) {
    super(message);
    this.exitCode = exitCode;
  }

  /** What was given is wrong: exit code 2. */
  static Wrong input(String message) {
    return new Wrong(Main.WRONG, message);
  }

  /** What was given is right and it can't be done now: exit code 1. */
  static Wrong failed(String message) {
    return new Wrong(Main.FAILED, message);
  }

  int exitCode() {
    return exitCode;
  }
}
