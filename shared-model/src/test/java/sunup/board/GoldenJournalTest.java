package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sunup.codec.BadJson;
import sunup.codec.Json;

/**
 * Old journals always replay. Each file {@code NAME.journal} in the test resources' folder {@code
 * golden} has one recorded event a line, {@code NAME.state.json} the state that it makes. A new one
 * is written by {@code mvn -pl shared-model test -Dtest=GoldenJournalTest -Dgolden.write=NAME} from
 * {@link GoldenMornings}; one that is there is never written again: old journals do not change.
 */
class GoldenJournalTest {
  private static final Path FOLDER = Path.of("src/test/resources/golden");

  static List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".journal"))
          .map(name -> name.substring(0, name.length() - ".journal".length()))
          .sorted()
          .toList();
    }
  }

  @ParameterizedTest
  @MethodSource("names")
  void shouldReplayToTheStateThatItHadWhenItWasWritten(String name) throws Exception {
    Morning morning = Morning.NONE;
    for (String line : Files.readAllLines(FOLDER.resolve(name + ".journal"))) {
      morning = Board.apply(morning, morning.seq() + 1, Json.read(line, Recorded.class));
    }

    JsonNode expected = Json.mapper().readTree(FOLDER.resolve(name + ".state.json").toFile());
    JsonNode actual = Json.mapper().readTree(Json.write(morning));
    assertThat(actual.toPrettyString()).isEqualTo(expected.toPrettyString());
  }

  @Test
  void shouldHoldAnEventOfEveryTypeInOneJournalOrAnother() throws IOException, BadJson {
    List<String> types =
        Stream.of(Event.class.getPermittedSubclasses()).map(Class::getSimpleName).toList();
    List<String> found = new java.util.ArrayList<>();
    for (String name : names()) {
      for (String line : Files.readAllLines(FOLDER.resolve(name + ".journal"))) {
        found.add(Json.read(line, Recorded.class).event().getClass().getSimpleName());
      }
    }
    assertThat(found).containsAll(types);
  }

  @Test
  void shouldWriteANewJournalWhenAskedTo() throws IOException {
    String name = System.getProperty("golden.write");
    if (name != null) {
      Path journal = FOLDER.resolve(name + ".journal");
      assertThat(journal).as("an old journal is never written again").doesNotExist();
      Day day = GoldenMornings.play(name);
      Files.createDirectories(FOLDER);
      Files.write(journal, day.journal().stream().map(Json::write).toList());
      Files.writeString(
          FOLDER.resolve(name + ".state.json"),
          Json.mapper().readTree(Json.write(day.morning())).toPrettyString() + "\n");
    }
  }
}
