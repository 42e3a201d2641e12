package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The small ring of real faults: three nodes in networks of their own, one owner killed and one cut
 * off while people write. {@code ops/faults processes} is the long ring.
 */
class RealFaultsTest {
  private static final long LIMIT_S = 240;

  @TempDir Path folder;

  @Test
  void shouldLoseNothingAndShowNothingOldWhenOwnersAreKilledAndCutOff() throws Exception {
    Path said = folder.resolve("said");
    List<String> line = new ArrayList<>(Network.APART);
    line.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-cp",
            System.getProperty("java.class.path"),
            FaultRing.class.getName(),
            "--small"));
    Process process;
    try {
      process =
          new ProcessBuilder(line).redirectErrorStream(true).redirectOutput(said.toFile()).start();
    } catch (java.io.IOException e) {
      throw new AssertionError(Network.NEEDS, e);
    }
    boolean ended = process.waitFor(LIMIT_S, TimeUnit.SECONDS);
    process.destroyForcibly();
    String all = Files.readString(said);
    System.out.println(all);
    assertThat(all)
        .as(Network.NEEDS)
        .doesNotContain("unshare failed")
        .doesNotContain("Cannot run program")
        .doesNotContain("Operation not permitted");
    assertThat(ended).as("ended within " + LIMIT_S + " s").isTrue();
    assertThat(process.exitValue()).as(all).isZero();
  }
}
