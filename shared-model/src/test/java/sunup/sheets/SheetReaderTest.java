package sunup.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sunup.codec.Problem;

/** What whoever edits a sheet is told of mistakes. */
class SheetReaderTest {
  /** A small base: each line of the text is a line of the file. */
  private static final String BASE =
      """
      {"sheet": "small", "version": 1, "kind": "base", "title": "Small",\
       "kinds": ["table", "probe"],
       "items": [\
        {"key": "machine.bag", "belongs" : "room", "desk": "b", "wall": "b", "core" : true,\
         "who": ["trainee"], "hands" : {"usual" : 1, "oneInTen" : 1}, "gates" : "induction"},\
        {"key": "machine.supplies", "belongs" : "room", "desk": "s", "wall": "s", "core" : true,\
         "who": ["trainee"], "hands" : {"usual" : 1, "oneInTen" : 1}, "gates" : "induction"},\
        {"key": "machine.cylinder", "belongs" : "room", "desk": "c", "wall": "c", "core" : true,\
         "who": ["trainee"], "hands" : {"usual" : 1, "oneInTen" : 1}, "gates" : "induction"},
        {"key": "machine.look", "belongs": "room", "desk": "looked at", "wall": "machine",
         "who": ["anaesthetist"], "hands": {"usual": 1, "oneInTen": 2}, "gates": "induction"},\
        {"key": "suction.strong", "belongs" : "room", "desk": "s", "wall": "s", "core" : true,\
         "who": ["trainee"], "hands" : {"usual" : 1, "oneInTen" : 1}, "gates" : "induction"},\
        {"key": "monitors.basic", "belongs" : "room", "desk": "m", "wall": "m", "core" : true,\
         "who": ["trainee"], "hands" : {"usual" : 1, "oneInTen" : 1}, "gates" : "induction"},
        {"key": "room.table", "belongs": "case", "desk": "table", "wall": "table",
         "who": ["circulating or scrub"], "hands": {"usual": 4, "oneInTen": 8}},\
        {"key": "start.check", "belongs": "case", "desk": "c", "wall": "c", "core" : true,\
         "who": ["trainee"], "hands" : {"usual" : 1, "oneInTen" : 1}, "gates" : "induction"},
        {"key": "start.induction", "belongs": "case", "desk": "induction", "wall": "induction",
         "marks": "induction"}
      ]}
      """;

  private static List<String> problems(String... files) {
    Map<String, String> named = new LinkedHashMap<>();
    for (int i = 0; i < files.length; i++) {
      named.put(i == 0 ? "base.json" : "more-" + i + ".json", files[i]);
    }
    try {
      Sheets.of(named);
      return List.of();
    } catch (BadSheet e) {
      return e.problems().stream().map(Problem::toString).toList();
    }
  }

  private static List<String> with(String right, String wrong) {
    assertThat(BASE).contains(right);
    return problems(BASE.replace(right, wrong));
  }

  private static String option(String name, String rest) {
    return "{\"sheet\": \""
        + name
        + "\", \"version\": 1, \"kind\": \"option\", \"title\": \"x\",\n"
        + rest
        + "}";
  }

  @Test
  void shouldFindNothingWrongWithARightSheet() {
    assertThat(problems(BASE)).isEmpty();
    assertThat(problems("\uFEFF" + BASE)).isEmpty();
  }

  @Test
  void shouldNameTheLineAndTheNearestWordOfAnUnknownOne() {
    assertThat(with("\"hands\": {\"usual\": 1,", "\"hand\": {\"usual\": 1,"))
        .containsExactly(
            "base.json, line 4, machine.look: hand: 'hand' is not known; did you mean 'hands'?",
            "base.json, line 3, machine.look: hands: is missing; write {\"usual\": minutes,"
                + " \"oneInTen\": minutes}");
    assertThat(with("[\"anaesthetist\"]", "[\"anesthetist\"]"))
        .containsExactly(
            "base.json, line 4, machine.look: who: role 'anesthetist' is not known; did you mean"
                + " 'anaesthetist'?");
    assertThat(with("machine.look", "machin.look"))
        .containsExactly(
            "base.json, line 3, machin.look: key: section 'machin' is not known; did you mean"
                + " 'machine'?");
    assertThat(with("\"gates\": \"induction\"", "\"gates\": \"inductoin\""))
        .containsExactly(
            "base.json, line 4, machine.look: gates: 'inductoin' is not known; did you mean"
                + " 'induction'?");
  }

  @Test
  void shouldRefuseNumbersThatCannotBeMeant() {
    assertThat(with("\"usual\": 1, \"oneInTen\": 2", "\"usual\": 3, \"oneInTen\": 2"))
        .containsExactly(
            "base.json, line 4, machine.look: hands: oneInTen: must not be less than usual: one in"
                + " ten takes longer than it");
    assertThat(with("\"usual\": 1, \"oneInTen\": 2", "\"usual\": -1, \"oneInTen\": 2"))
        .containsExactly(
            "base.json, line 4, machine.look: hands: usual: is -1; it must be 0 to 1440");
    assertThat(with("\"usual\": 1, \"oneInTen\": 2", "\"usual\": \"1\", \"oneInTen\": 2"))
        .contains("base.json, line 4, machine.look: hands: usual: must be a number, not a text");
    assertThat(with("\"oneInTen\": 2}", "\"oneInTen\": 1e999}")).hasSize(1);
  }

  @Test
  void shouldRefuseAWallWordingThatDoesNotFit() {
    assertThat(with("\"wall\": \"machine\"", "\"wall\": \"machine and all that is on\""))
        .containsExactly(
            "base.json, line 3, machine.look: wall: has 26 letters; at most 24 fit, say it"
                + " shorter");
  }

  @Test
  void shouldRefuseKeysAndFieldsGivenTwice() {
    assertThat(with("room.table", "machine.look"))
        .containsExactly(
            "base.json, line 5, machine.look: key: is there already, in line 3; give one of them"
                + " another key");
    assertThat(with("\"belongs\": \"room\"", "\"belongs\": \"room\", \"belongs\": \"case\""))
        .singleElement()
        .asString()
        .contains("line 3, items.belongs: stands here for the second time");
  }

  @Test
  void shouldRefuseNamesThatLeadNowhereAndCircles() {
    String table = "\"hands\": {\"usual\": 4, \"oneInTen\": 8}";
    assertThat(with(table, table + ", \"after\": [\"machine.lok\"]"))
        .containsExactly(
            "base.json, line 6, room.table: after: item 'machine.lok' is not known; did you mean"
                + " 'machine.look'?");
    assertThat(with(table, table + ", \"gates\": \"incision\""))
        .containsExactly(
            "base.json, line 6, room.table: gates: gates incision, which no item marks; add one"
                + " with \"marks\"");
    assertThat(with(table, table + ", \"gates\": \"induction\", \"after\": [\"start.induction\"]"))
        .singleElement()
        .asString()
        .contains("waits for itself: ")
        .contains("room.table waits for start.induction");
    assertThat(with(table, table + ", \"uses\": [{\"kind\": \"prob\"}]"))
        .singleElement()
        .asString()
        .contains("kind 'prob' is not known; did you mean 'probe'?");
  }

  @Test
  void shouldRefuseALifeThatEndsWhileTheItemIsRedone() {
    String gates = "\"gates\": \"induction\"";
    String life = ", \"life\": {\"minutes\": %d, \"source\": \"x\"}";
    assertThat(with(gates, gates + life.formatted(4))).isEmpty();
    assertThat(with(gates, gates + life.formatted(3)))
        .singleElement()
        .asString()
        .startsWith(
            "base.json, line 4, machine.look: life: is 3 min, but one in ten takes 2.0 min");
  }

  @Test
  void shouldRefuseEvidenceThatAsksForNothingClear() {
    String gates = "\"gates\": \"induction\"";
    String number = ", \"evidence\": {\"kind\": \"number\", \"least\": 0, \"most\": 10%s}";
    assertThat(with(gates, gates + number.formatted(", \"unit\": \"psi\", \"low\": 2"))).isEmpty();
    assertThat(with(gates, gates + number.formatted(", \"low\": 2")))
        .singleElement()
        .asString()
        .contains("evidence: unit: is missing");
    assertThat(with(gates, gates + number.formatted(", \"unit\": \"kPa\", \"low\": 2"))).isEmpty();
    assertThat(with(gates, gates + number.formatted(", \"unit\": \"KPA\", \"low\": 2")))
        .singleElement()
        .asString()
        .contains("evidence: unit: 'KPA' is not known; write kPa");
    assertThat(with(gates, gates + number.formatted(", \"unit\": \"psi\"")))
        .singleElement()
        .asString()
        .contains("must say what is good");
    assertThat(with(gates, gates + number.formatted(", \"unit\": \"psi\", \"low\": 11")))
        .singleElement()
        .asString()
        .contains("must be a band within least to most");
    assertThat(
            with(
                gates,
                gates + ", \"evidence\": {\"kind\": \"choice\", \"choices\": [\"!a\", \"!b\"]}"))
        .singleElement()
        .asString()
        .contains("at least one word that means good");
  }

  @Test
  void shouldRefuseEquipmentTakenInTwoOrders() {
    // Holds the probe till the end and needs the table on the way, against table before probe.
    String probe =
        option(
            "probe",
            """
            "adds": [{"key": "special.probe", "belongs": "case", "desk": "p", "wall": "p",
              "who": ["technician"], "hands": {"usual": 1, "oneInTen": 2}, "gates": "induction",
              "uses": [{"kind": "probe", "until": "start.induction"}]}],
            "changes": [{"key": "room.table", "gates": "induction", "uses": [{"kind": "table"}]}]
            """);
    assertThat(problems(BASE, probe))
        .singleElement()
        .asString()
        .contains("takes table while probe is held for start.induction since special.probe");
    assertThat(
            problems(
                BASE,
                probe.replace(
                    "\"gates\": \"induction\",\n",
                    "\"gates\":" + " \"induction\", \"after\": [\"room.table\"],\n")))
        .isEmpty();
  }

  @Test
  void shouldNameBothPlacesWhereAdditionsContradict() throws BadSheet {
    String slow =
        option(
            "slow",
            "\"changes\": [{\"key\": \"room.table\",\n"
                + " \"hands\": {\"usual\": 9, \"oneInTen\": 9}}]");
    String fast = slow.replace("slow", "fast").replace("9", "2");
    String none = option("none", "\"takes\": [\"room.table\"]");
    Sheets sheets =
        Sheets.of(
            Map.of("base.json", BASE, "slow.json", slow, "fast.json", fast, "none.json", none));
    assertThat(refused(sheets, "slow", "fast"))
        .containsExactly(
            "slow.json, line 3, room.table: hands: is changed by 'slow' and otherwise by 'fast' in"
                + " fast.json, line 3; the two don't go together");
    assertThat(refused(sheets, "slow", "none"))
        .containsExactly(
            "slow.json, line 2, room.table: is changed by 'slow' but taken away by 'none' in"
                + " none.json, line 2; the two don't go together, or write \"ifThere\": true");
    assertThat(refused(sheets, "slwo"))
        .containsExactly("sheets, options: 'slwo' is not known; did you mean 'slow'?");
  }

  @Test
  void shouldSayWhereASheetNamesAnotherThatThereIsNot() {
    String change = "\"changes\": [{\"key\": \"room.table\", \"desk\": \"t\"}]";
    assertThat(problems(BASE, option("slow", "\"brings\": [\"fats\"],\n" + change)))
        .containsExactly("more-1.json, line 2, brings: option 'fats' is not known; use slow");
    assertThat(problems(BASE, option("slow", "\"notWith\": [\"smal\"],\n" + change)))
        .containsExactly(
            "more-1.json, line 2, notWith: sheet 'smal' is not known; did you mean 'small'?");
    assertThat(problems(BASE, option("slow", "\"notWith\": [3],\n" + change)))
        .containsExactly("more-1.json, line 2, notWith: must be a list of sheet names in quotes");
  }

  private static List<String> refused(Sheets sheets, String... options) {
    try {
      sheets.compose("small", List.of(options));
      throw new AssertionError("was composed");
    } catch (BadSheet e) {
      return e.problems().stream().map(Problem::toString).toList();
    }
  }

  @Test
  void shouldPutAnAddedItemWhereItAsksOrAtTheEndOfItsSection() throws BadSheet {
    String item =
        "{\"key\": \"machine.%s\", \"belongs\": \"room\", \"desk\": \"d\", \"wall\": \"w\","
            + " \"who\": [\"trainee\"], \"hands\": {\"usual\": 1, \"oneInTen\": 1}%s}";
    String more =
        option(
            "more",
            "\"adds\": ["
                + item.formatted("last", "")
                + ","
                + item.formatted("next", ", \"follows\": \"machine.look\"")
                + "]");
    Sheets sheets = Sheets.of(Map.of("base.json", BASE, "more.json", more));
    assertThat(sheets.compose("small", List.of("more")).byKey().keySet())
        .containsExactly(
            "machine.bag",
            "machine.supplies",
            "machine.cylinder",
            "machine.look",
            "machine.next",
            "machine.last",
            "suction.strong",
            "monitors.basic",
            "room.table",
            "start.check",
            "start.induction");
  }

  @Test
  void shouldTellWhereTheTextIsNoJsonAndStopAtItsLimit() {
    assertThat(problems(BASE.replace("\"marks\": \"induction\"}", "\"marks\": }")))
        .singleElement()
        .asString()
        .startsWith("base.json, line 8: is not JSON");
    assertThat(problems("[".repeat(10_000))).singleElement().asString().contains("is not JSON");
    assertThat(problems(" ".repeat(1_000_001)))
        .singleElement()
        .asString()
        .contains("longer than 1000000 characters");
    assertThat(problems("{}")).anyMatch(p -> p.contains("kind: is missing"));
  }

  @Test
  void shouldReadTheExampleOfThePageOnTopOfTheStandardSheets() throws Exception {
    String page = Files.readString(Path.of("SHEETS.md"));
    int from = page.indexOf("```json") + 7;
    String example = page.substring(from, page.indexOf("```", from));
    String general;
    try (var in = Sheets.class.getResourceAsStream("general.json")) {
      general = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    Sheets sheets = Sheets.of(Map.of("general.json", general, "awake-scope.json", example));
    assertThat(sheets.compose("general", List.of("awake-scope")).byKey())
        .containsKey("airway.awake")
        .doesNotContainKey("airway.tubes");
  }
}
