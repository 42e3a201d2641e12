package sunup.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

class CommandLineTest {
  private final StringWriter err = new StringWriter();

  @Test
  void shouldSayWhatThereIsWhenNothingIsAskedFor() {
    assertThat(exit()).isEqualTo(2);
    assertThat(err.toString()).contains("run").contains("rehearse");
  }

  @Test
  void shouldRefuseASpeedThatNobodyCanFollow() {
    assertThat(exit("run", "--speed", "61")).isEqualTo(2);
    assertThat(err.toString()).contains("--speed must be 1 to 60");
  }

  @Test
  void shouldNotMixASiteOfOnesOwnWithTheDemo() {
    assertThat(exit("run", "--site", "mine.json")).isEqualTo(2);
    assertThat(err.toString()).contains("--empty");
  }

  @Test
  void shouldSayWhichFileCanNotBeReadWhenTheSiteIsMissing() {
    assertThat(exit("run", "--empty", "--site", "no/such/site.json")).isEqualTo(2);
    assertThat(err.toString()).contains("no/such/site.json").doesNotContain("Exception");
  }

  private int exit(String... args) {
    CommandLine line = Main.commandLine();
    line.setErr(new PrintWriter(err, true));
    return line.execute(args);
  }
}
