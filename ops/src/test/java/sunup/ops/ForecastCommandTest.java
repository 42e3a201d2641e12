package sunup.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** What somebody meets who writes a morning by hand and has it forecast. */
class ForecastCommandTest {
  private static final Path FIRST =
      Path.of("../shared-model/src/test/resources/forecast/first.json").toAbsolutePath();

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir private Path folder;

  private int forecast(String... args) {
    CommandLine line = Main.commandLine();
    line.setErr(new PrintWriter(err, true));
    line.setOut(new PrintWriter(out, true));
    String[] all = new String[args.length + 1];
    all[0] = "forecast";
    System.arraycopy(args, 0, all, 1, args.length);
    return line.execute(all);
  }

  private String file(String was, String is) throws IOException {
    String text = Files.readString(FIRST);
    assertThat(text).contains(was);
    return Files.writeString(folder.resolve("mine.json"), text.replace(was, is)).toString();
  }

  @Test
  void shouldSayWhatIsNoFile() {
    assertThat(forecast(folder.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("is a folder. Give a file").doesNotContain("Exception");
    assertThat(forecast(folder.resolve("none.json").toString())).isEqualTo(2);
    assertThat(err.toString()).contains("none.json is not there. Look at its name");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "\"seed\": 1 | \"seed\": 2.7 | mine.json: line 4, column 11: field seed: is 2.7;"
            + " give a whole",
        "\"seed\": 1, | ~~ | field seed: is missing; give a whole number",
        "\"in-hand\", \"since\": 540000 | \"in-hand\" | items[0].progress.since: is"
            + " missing; give the",
        "\"in-hand\", \"since\": 540000 | \"open\", \"began\": 5 | progress.began: is of an"
            + " item that",
      })
  void shouldSayWhereAFileIsWrongAndWhatToWrite(String was, String is, String says)
      throws IOException {
    assertThat(forecast(file(was, is))).isEqualTo(2);
    assertThat(err.toString()).contains(says).doesNotContain("sunup.", "Exception");
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void shouldSayThatAnEmptyFileOrNullIsNoMorning() throws IOException {
    Path file = folder.resolve("mine.json");
    for (String text : new String[] {"", "null", "[]"}) {
      Files.writeString(file, text);
      assertThat(forecast(file.toString())).isEqualTo(2);
    }
    assertThat(err.toString())
        .contains("is empty; give an object", "is null; give an object", "is a list [ ]; give an")
        .doesNotContain("Exception");
  }

  /** What is open has been so since nothing that counts. */
  @Test
  void shouldNotAskSinceWhenSomethingIsOpen() throws IOException {
    assertThat(forecast(file("\"in-hand\", \"since\": 540000", "\"open\""))).isZero();
    assertThat(out.toString()).contains("\"onTime\"");
  }

  @Test
  void shouldSayWhyThereIsNothingToExplain() throws IOException {
    assertThat(forecast(FIRST.toString(), "--as-run")).isZero();
    assertThat(err.toString()).contains("No room has started", "startedAt");
    assertThat(out.toString()).contains("rooms");
  }
}
