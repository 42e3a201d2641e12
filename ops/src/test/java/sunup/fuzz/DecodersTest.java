package sunup.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * All decoders on right inputs and on those that once broke something; in the long tests for a few
 * seconds under the fuzzer, too. For minutes they are by {@code ops/fuzz}.
 */
class DecodersTest {
  /** Inputs that once broke something: {@code fuzz/DECODER/what}. */
  private static final String ONCE_BROKE = "ops/src/test/resources/fuzz";

  private static final int SECONDS = 2;

  static List<Decoder> decoders() {
    return Decoders.all();
  }

  @ParameterizedTest
  @MethodSource("decoders")
  void shouldTakeARightInputAndHoldOnEveryOther(Decoder decoder) throws Exception {
    int taken = 0;
    for (byte[] seed : decoder.seeds()) {
      taken += decoder.holds().of(seed) ? 1 : 0;
    }
    if (!decoder.name().equals("signed-heads")) {
      assertThat(taken).as("right inputs that are taken").isPositive();
    }
    for (Path once : onceBroke(decoder.name())) {
      decoder.holds().of(Files.readAllBytes(once));
    }
  }

  private static List<Path> onceBroke(String decoder) throws IOException {
    Path folder = Project.root().resolve(ONCE_BROKE).resolve(decoder);
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  @Test
  @EnabledIfEnvironmentVariable(named = "SUNUP_LONG", matches = "1")
  void shouldHoldForSecondsUnderTheFuzzer(@TempDir Path folder) throws Exception {
    FuzzRun.Outcome outcome = new FuzzRun(Decoders.together(), 1, SECONDS, 1).in(folder);
    assertThat(outcome.found()).as("see the inputs; ops/fuzz DECODER finds them again").isEmpty();
    assertThat(outcome.edges()).isGreaterThan(1_000);
  }

  @Test
  @EnabledIfEnvironmentVariable(named = "SUNUP_LONG", matches = "1")
  void shouldSeeAPlantedMistake(@TempDir Path folder) throws Exception {
    Decoder planted = Decoders.named("planted-fixed-length");
    assertThat(new FuzzRun(planted, 1, 20, 1).in(folder).found()).isNotEmpty();
  }
}
