package sunup.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import sunup.bedside.BedsideFigures;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;

/** The pharmacy looks at a figure's page, releases it and takes it back. */
class BedsideCommandTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void write() throws Exception {
    file = folder.resolve("site.json");
    Files.writeString(file, DemoFolder.resource("plain/site.json"));
  }

  private int exit(String... args) {
    out.getBuffer().setLength(0);
    CommandLine line = Main.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    return line.execute(args);
  }

  private String at() {
    return file.toString();
  }

  @Test
  void shouldReleaseAFigureByTheFingerprintOnItsPageAndTakeItBack() {
    assertThat(exit("bedside", "page", at(), "mac")).isZero();
    assertThat(out.toString()).contains("released     no", "formula", "source", "range", "caution");
    String print = out.toString().replaceAll("(?s).*fingerprint +([0-9a-f]+).*", "$1");
    assertThat(exit("bedside", "release", at(), "mac=" + print, "--by", "B. Doe")).isZero();
    assertThat(exit("bedside", "list", at())).isZero();
    assertThat(out.toString()).containsPattern("mac .*released by B. Doe on ");
    assertThat(out.toString()).contains("off until the site's pharmacy releases it");
    assertThat(exit("bedside", "withdraw", at(), "mac")).isZero();
    exit("bedside", "list", at());
    assertThat(out.toString()).doesNotContain("released by");
  }

  @Test
  void shouldReleaseNothingWhoseFingerprintIsNotThatOfThePage() throws Exception {
    String before = Files.readString(file);
    assertThat(exit("bedside", "release", at(), "mac=0123456789ab", "--by", "B. Doe")).isEqualTo(2);
    assertThat(err.toString()).contains("look at its page again", "Nothing was released");
    assertThat(exit("bedside", "page", at(), "mca")).isEqualTo(2);
    assertThat(err.toString()).contains("did you mean 'mac'?");
    assertThat(Files.readString(file)).isEqualTo(before);
  }

  /** After a change of a page: look at it, then put the new fingerprint into the demo's file. */
  @Test
  void shouldHaveEveryFigureOfTheDemoHospitalReleasedByItsPharmacist() throws Exception {
    SiteFile site = SiteReader.read("demo", DemoFolder.resource("demo/site.json")).site();
    assertThat(new BedsideFigures(site.bedside()).list(LocalDate.now(site.settings().zoneId())))
        .allSatisfy(f -> assertThat(f.off()).as(f.card().name() + " " + f.fingerprint()).isNull());
  }
}
