package sunup.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sunup.codec.Problem;

/** Bag, suction, oxygen, CO2 and a qualified person stay, whoever writes a sheet. */
class UnwaivableCoreTest {
  static List<String> keys() {
    return UnwaivableCore.keys();
  }

  private static List<String> problems(String base, String option) {
    try {
      Sheets.of(Map.of("general.json", base, "mine.json", option));
      return List.of();
    } catch (BadSheet e) {
      return e.problems().stream().map(Problem::toString).toList();
    }
  }

  private static List<String> option(String rest) {
    return problems(Files.general(), Files.option("mine", rest));
  }

  private static final String HARMLESS =
      Files.option("mine", "\"changes\": [{\"key\": \"room.table\", \"desk\": \"t\"}]");

  @Test
  void shouldNameBagSuctionOxygenCarbonDioxideAndPerson() {
    assertThat(keys())
        .containsExactly(
            "machine.bag",
            "machine.supplies",
            "machine.cylinder",
            "suction.strong",
            "monitors.basic",
            "start.check");
  }

  @ParameterizedTest
  @MethodSource("keys")
  void shouldRefuseAnAdditionThatTakesItAndNameBothPlaces(String key) {
    assertThat(option("\"takes\": [\"" + key + "\"]"))
        .singleElement()
        .asString()
        .startsWith("mine.json, line 2, " + key + ": is taken away by 'mine'")
        .contains("may never be left out")
        .contains("general.json, line ");
  }

  @ParameterizedTest
  @MethodSource("keys")
  void shouldRefuseAnAdditionThatMakesItAdvisoryOrMovesItBehindInduction(String key) {
    String change = "\"changes\": [{\"key\": \"" + key + "\", %s}]";
    assertThat(option(change.formatted("\"core\": false")))
        .anyMatch(p -> p.contains("mine.json, line 2") && p.contains("general.json, line "));
    assertThat(option(change.formatted("\"gates\": \"incision\"")))
        .anyMatch(p -> p.contains("makes less of what may never be left out"));
  }

  @ParameterizedTest
  @MethodSource("keys")
  void shouldRefuseASitesOwnBaseWithoutIt(String key) {
    assertThat(problems(Files.general(), HARMLESS)).isEmpty();
    // Another name for the same thing is not the thing.
    String base = Files.general().replace('"' + key + '"', '"' + key + "-2\"");
    assertThat(problems(base, HARMLESS))
        .contains(
            "general.json, line 1, "
                + key
                + ": is missing: "
                + words(key)
                + " may never be left out; every list has it as core before induction");
  }

  private static String words(String key) {
    return switch (key) {
      case "machine.bag" -> "self-inflating bag";
      case "machine.supplies" -> "oxygen supply";
      case "machine.cylinder" -> "oxygen in reserve";
      case "suction.strong" -> "suction";
      case "monitors.basic" -> "CO2 and the other basic monitors";
      default -> "check by a qualified person";
    };
  }

  @Test
  void shouldRefuseACheckWithoutAQualifiedPerson() {
    assertThat(option("\"changes\": [{\"key\": \"start.check\", \"who\": [\"porter\", \"desk\"]}]"))
        .anyMatch(p -> p.contains("start.check: takes nobody of the anaesthetic team"));
  }

  @Test
  void shouldStillLetASiteChangeWhoAndHowLongAndGateEarlier() {
    assertThat(
            option(
                "\"changes\": [{\"key\": \"machine.bag\", \"who\": [\"technician\"],"
                    + " \"hands\": {\"usual\": 2, \"oneInTen\": 3}, \"gates\": \"wheels-in\"}]"))
        .isEmpty();
  }
}
