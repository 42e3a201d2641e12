package sunup.http;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import sunup.bedside.BedsideFigures;
import sunup.board.SuiteId;
import sunup.codec.Problem;
import sunup.intake.SiteReader;

/**
 * The bedside figures of a suite as its site's file has them now. The file is read for each
 * question, so that what the pharmacy releases is on, and what it takes back is off, without a
 * start of the board. A file that can't be used now releases nothing. Of the rest of the file
 * nothing is taken anew.
 */
final class SiteFigures {
  private static final int PROBLEMS_TOLD = 3;

  private final SuiteId suite;
  private final Path file;

  /** What was read last, so that equal text is not read into figures again. */
  private String text;

  private BedsideFigures figures;

  SiteFigures(SuiteId suite, Path file) {
    this.suite = suite;
    this.file = file;
  }

  /** For threads that may wait for a disk. */
  synchronized BedsideFigures now() throws Answers.Wrong {
    String now = read();
    if (!now.equals(text)) {
      SiteReader.Result read = SiteReader.read(file.getFileName().toString(), now);
      if (read.site() == null) {
        throw off(
            read.problems().stream()
                .limit(PROBLEMS_TOLD)
                .map(Problem::toString)
                .collect(Collectors.joining("; ")));
      }
      if (!read.site().suite().equals(suite)) {
        throw off("it is of the suite " + read.site().suite() + " now");
      }
      figures = new BedsideFigures(read.site().bedside());
      text = now;
    }
    return figures;
  }

  private String read() throws Answers.Wrong {
    try {
      if (Files.size(file) > Opened.SITE_BYTES_MAX) {
        throw off("it is larger than any site's");
      }
      return Files.readString(file);
    } catch (IOException e) {
      throw off("it can't be read");
    }
  }

  private static Answers.Wrong off(String why) {
    return new Answers.Wrong(
        "Figures are off",
        503,
        "All bedside figures are off: the site's file can't be used now ("
            + why
            + "). Once it is mended they are on again; until then use the printed tables.");
  }
}
