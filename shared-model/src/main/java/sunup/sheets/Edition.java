package sunup.sheets;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.codec.Maybe;
import sunup.codec.Problem;

/**
 * All sheets of a suite as they stood when they were published. A number always means the same: an
 * edition has its own copy of every sheet, so that a later program changes nothing of it.
 *
 * @param number counted from 1; 0 is what comes with the program
 * @param files text by file name
 * @param sheets null if this program can't use them
 * @param problems why it can't
 */
public record Edition(
    int number, Map<String, String> files, @Maybe Sheets sheets, List<Problem> problems) {
  private static final Edition STANDARD =
      new Edition(0, Sheets.standardFiles(), Sheets.standard(), List.of());

  public Edition {
    files = Collections.unmodifiableMap(new LinkedHashMap<>(files));
    problems = List.copyOf(problems);
  }

  /** What comes with the program. */
  public static Edition standard() {
    return STANDARD;
  }

  /** Reads an edition. */
  public static Edition of(int number, Map<String, String> files) {
    try {
      return new Edition(number, files, Sheets.of(number, files), List.of());
    } catch (BadSheet e) {
      return new Edition(number, files, null, e.problems());
    }
  }

  /** As people say it. */
  public static String words(int number) {
    return number == 0 ? "the sheets that come with Sunup" : "edition " + number;
  }
}
