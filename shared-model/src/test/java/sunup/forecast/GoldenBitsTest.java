package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import sunup.codec.BadJson;
import sunup.codec.Json;

/**
 * Every figure of the example files and of random mornings with every feature, to the last bit: a
 * kernel made faster must not show. Where the model itself is changed on purpose the file is
 * written anew with {@code -Dsunup.golden.write=true}, and the change of it is part of that commit.
 */
class GoldenBitsTest {
  private static final Path FOLDER = Path.of("src/test/resources/forecast");
  private static final Path FILE = Path.of("src/test/resources/forecast-bits.txt");
  private static final int MORNINGS = 120;
  private static final int TRIALS = 300;

  @Test
  void shouldGiveTheSameBitsAsBefore() throws IOException, BadJson {
    List<String> now = new ArrayList<>();
    try (Stream<Path> files = Files.list(FOLDER)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".json")).sorted().toList()) {
        ForecastInput in = Json.read(Files.readAllBytes(file), ForecastInput.class);
        now.add(file.getFileName() + " " + bits(in));
      }
    }
    for (int seed = 1; seed <= MORNINGS; seed++) {
      now.add("morning " + seed + " " + bits(EveryFeature.of(seed, TRIALS, new TreeMap<>())));
    }
    if (Boolean.getBoolean("sunup.golden.write")) {
      Files.write(FILE, now);
    }
    assertThat(now).isEqualTo(Files.readAllLines(FILE));
  }

  private static String bits(ForecastInput in) {
    try {
      byte[] all = Json.bytes(Forecaster.run(in));
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(all), 0, 12);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
