package sunup.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

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
  void shouldLetAsManyScreensComeFromAProxyAsIsSaid() {
    assertThat(exit("run", "--empty", "--screens-from-one-address", "5000")).isEqualTo(2);
    assertThat(err.toString()).contains("--screens-from-one-address must be 1 to 4096");
    DoorOptions doors = new DoorOptions();
    new CommandLine(CommandSpec.create().addMixin("doors", CommandSpec.forAnnotatedObject(doors)))
        .parseArgs("--screens-from-one-address", "3000");
    assertThat(doors.limits().socketsPerAddressMax()).isEqualTo(3_000);
    assertThat(doors.doors(Path.of("board")).connectionsPerAddressMax()).isEqualTo(6_000);
  }

  @Test
  void shouldSayHowADatabaseIsNamed() {
    assertThat(exit("run", "--database-user", "sunup")).isEqualTo(2);
    assertThat(err.toString()).contains("go with --database");
    assertThat(exit("run", "--database", "db.example/sunup")).isEqualTo(2);
    assertThat(err.toString()).contains("looks like jdbc:postgresql://");
  }

  @Test
  void shouldSayWhichFileCanNotBeReadWhenTheSiteIsMissing() {
    assertThat(exit("run", "--empty", "--site", "no/such/site.json")).isEqualTo(2);
    assertThat(err.toString()).contains("no/such/site.json").doesNotContain("Exception");
  }

  @Test
  void shouldSayWhichSiteAnEmptyBoardIsForAndWhenItIsMarkedAsADemo(@TempDir Path folder)
      throws Exception {
    Path plain = folder.resolve("plain.json");
    Files.writeString(plain, DemoFolder.resource("plain/site.json"));
    assertThat(RunCommand.aboutSite(plain))
        .contains("Our hospital", "12 rooms", "Put your own rooms")
        .doesNotContain("demo", "Kestrel Bay");

    Path demo = folder.resolve("demo.json");
    Files.writeString(demo, DemoFolder.resource("demo/site.json"));
    assertThat(RunCommand.aboutSite(demo)).contains("Kestrel Bay", "marked as a demo");
  }

  @Test
  void shouldSayFromWhenADemoRunsAndWhereAnEndedOneGoesOn() {
    ZoneId zone = ZoneId.of("Europe/Lisbon");
    long at = LocalDateTime.of(2026, 11, 25, 7, 12).atZone(zone).toInstant().toEpochMilli();
    assertThat(RunCommand.aboutDemo(zone, at, 10, false))
        .isEqualTo(
            "A demo: an invented morning that runs from 07:12, 10 times as fast as real time.");
    assertThat(RunCommand.aboutDemo(zone, at, 2.5, true))
        .contains("goes on where it was ended, at 07:12, 2.5 times as fast");
  }

  @Test
  void shouldSayWhatToDoWhenThereIsNothingToBackUpOrNoKeyToSignWith(@TempDir Path folder) {
    String none = folder.resolve("none").toString();
    String file = folder.resolve("a.backup").toString();
    assertThat(exit("backup", file, "--data", none)).isEqualTo(1);
    assertThat(err.toString()).contains("There is no journal").doesNotContain("Exception");
    assertThat(exit("restore", file, "--data", none)).isEqualTo(1);
    assertThat(exit("audit", "--data", none, "--heads", file)).isEqualTo(2);
    assertThat(err.toString()).contains("--heads and --key go together");
  }

  @Test
  void shouldMakeAPairOfKeysThatOnlyItsOwnerCanReadAndMakeNoneOverAnother(@TempDir Path folder)
      throws Exception {
    Path key = folder.resolve("signing.pem");
    assertThat(exit("audit", "key", key.toString())).isZero();
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(key)))
        .isEqualTo("rw-------");
    assertThat(exit("audit", "key", key.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("is there already");
  }

  @Test
  void shouldSayWhatAnAddressToListenOnGoesWith() {
    assertThat(exit("run", "--host", "127.0.0.2")).isEqualTo(2);
    assertThat(err.toString()).contains("--host goes with --empty");
    assertThat(exit("run", "--empty", "--host", "0.0.0.0")).isEqualTo(2);
    assertThat(err.toString()).contains("--host goes with --pair and --tls");
    assertThat(exit("run", "--empty", "--pair", "--tls", "--host", "0.0.0.0")).isEqualTo(2);
    assertThat(err.toString()).contains("--host 0.0.0.0 needs --tls-name");
  }

  @Test
  void shouldSayThatThisMachineHasNoSuchAddress(@TempDir Path folder) {
    String[] run = {"run", "--empty", "--pair", "--tls", "--port", "0", "--host", "192.0.2.77"};
    assertThat(exit(with(run, "--data", folder.toString()))).isEqualTo(1);
    assertThat(err.toString()).contains("has no address 192.0.2.77").doesNotContain("Exception");
  }

  @Test
  void shouldSayWhenThereIsNoBoardToRehearseWith() {
    assertThat(exit("rehearse", "--url", "http://127.0.0.1:1/")).isEqualTo(1);
    assertThat(err.toString()).contains("No board answers at 127.0.0.1:1", "ops/run");
  }

  @Test
  void shouldSayWhichFolderCanNotBeUsed(@TempDir Path folder) throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "");
    assertThat(exit("run", "--empty", "--data", file.toString())).isEqualTo(1);
    assertThat(err.toString()).contains(file.toString()).doesNotContain("Exception");
  }

  private static String[] with(String[] one, String... more) {
    return Stream.concat(Stream.of(one), Stream.of(more)).toArray(String[]::new);
  }

  @Test
  void shouldSayHowTlsIsAskedFor() {
    assertThat(exit("run", "--tls")).isEqualTo(2);
    assertThat(err.toString()).contains("--empty");
    assertThat(exit("run", "--empty", "--tls-certificate", "a.pem")).isEqualTo(2);
    assertThat(err.toString()).contains("go together");
    assertThat(exit("run", "--empty", "--tls-name", "board.example")).isEqualTo(2);
    assertThat(err.toString()).contains("--tls-name goes with");
  }

  private int exit(String... args) {
    CommandLine line = Main.commandLine();
    line.setErr(new PrintWriter(err, true));
    return line.execute(args);
  }
}
