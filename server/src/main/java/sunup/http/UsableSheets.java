package sunup.http;

import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import sunup.codec.Problem;
import sunup.sheets.BadSheet;
import sunup.sheets.ComposedSheet;
import sunup.sheets.Edition;
import sunup.sheets.Sheets;

/** The sheets of an edition for a request, or why it can't be answered. */
final class UsableSheets {
  private static final int PROBLEMS_TOLD = 3;

  private UsableSheets() {}

  /** Asks the database. */
  interface Asked<T> {
    T get() throws IOException;
  }

  /** What is asked, or that it is not to be had now. */
  static <T> T ask(Asked<T> asked) throws Answers.Wrong {
    try {
      return asked.get();
    } catch (IOException e) {
      throw new Answers.Wrong("Not now", 503, e.getMessage());
    }
  }

  /** The list that they make; null if there are none, or they make none of these. */
  static ComposedSheet list(Sheets sheets, String technique, List<String> options) {
    try {
      return sheets == null ? null : sheets.compose(technique, options);
    } catch (BadSheet e) {
      return null;
    }
  }

  static Sheets of(Asked<Edition> asked) throws Answers.Wrong {
    Edition edition = ask(asked);
    if (edition.sheets() == null) {
      String why =
          edition.problems().stream()
              .limit(PROBLEMS_TOLD)
              .map(Problem::toString)
              .collect(Collectors.joining("; "));
      throw new Answers.Wrong(
          "Sheets not usable",
          422,
          "This program can't use "
              + Edition.words(edition.number())
              + " ("
              + why
              + "). Mend it at"
              + " the page Sheets and publish it again.");
    }
    return edition.sheets();
  }
}
