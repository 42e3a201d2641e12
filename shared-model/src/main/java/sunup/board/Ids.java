package sunup.board;

import java.util.regex.Pattern;

/**
 * The one rule for the text of ids: short, printable, safe in a key, a file name and an address.
 */
final class Ids {
  private static final Pattern TEXT = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,39}");

  private Ids() {}

  /**
   * @throws IllegalArgumentException if the text is not 1 to 40 letters, digits, dots, dashes or
   *     underscores that begin with a letter or digit
   */
  static void check(String what, String value) {
    if (value == null || !TEXT.matcher(value).matches()) {
      throw new IllegalArgumentException(
          what
              + " must be 1 to 40 letters, digits, dots, dashes or underscores and begin with a"
              + " letter or digit");
    }
  }
}
