package sunup.sheets;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Texts of sheets for tests that lay others on top of them. */
final class Files {
  private Files() {}

  static String general() {
    try (InputStream in = Sheets.class.getResourceAsStream("general.json")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** An option with these fields. */
  static String option(String name, String rest) {
    return "{\"sheet\": \""
        + name
        + "\", \"version\": 1, \"kind\": \"option\", \"title\": \"x\",\n"
        + rest
        + "}";
  }

  /** A personal sheet with these fields. */
  static Sheet personal(String rest) throws BadSheet {
    SheetReader.Result result =
        SheetReader.read(
            "own.json",
            "{\"sheet\": \"own\", \"version\": 3, \"kind\": \"personal\", \"title\": \"Mine\",\n"
                + rest
                + "}");
    if (result.sheet() == null) {
      throw new BadSheet(result.problems());
    }
    return result.sheet();
  }
}
