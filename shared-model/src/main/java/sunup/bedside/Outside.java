package sunup.bedside;

/** There is no figure here: outside the range of its source, or without a source. */
final class Outside extends Exception {
  private static final long serialVersionUID = 1L;

  private final String input;

  /**
   * @param input the input that it is about, or empty
   * @param message why, and what to do
   */
  Outside(String input, String message) {
    super(message);
    this.input = input;
  }

  String input() {
    return input;
  }
}
