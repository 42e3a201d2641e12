package sunup.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sunup.board.Command;
import sunup.forecast.Draw;
import sunup.forecast.ForecastInput;
import sunup.wire.ClientMessage;

/** Whoever writes JSON for us is told where it is wrong, what stands there and what may. */
class BadJsonTest {
  private static String refusal(String text, Class<?> type) {
    List<String> both = new ArrayList<>();
    try {
      Json.read(text, type);
    } catch (BadJson e) {
      both.add(e.getMessage());
    }
    try {
      Json.read(text.getBytes(StandardCharsets.UTF_8), type);
    } catch (BadJson e) {
      both.add(e.getMessage());
    }
    assertThat(both).as("refused as text and as bytes").hasSize(2);
    // Within a token that ends too soon the two readers stop at neighbouring letters.
    assertThat(withoutColumn(both.get(1))).isEqualTo(withoutColumn(both.get(0)));
    assertThat(both.get(0)).doesNotContainPattern("[a-z]\\.[a-z]+\\.[A-Z]|`");
    return both.get(0);
  }

  private static String withoutColumn(String told) {
    return told.replaceFirst("column [0-9]+", "");
  }

  /** A morning with one room, one item and one person, of which one line is another. */
  private static String morning(String was, String is) {
    String right =
        """
        {"version": 1, "now": 1000, "seed": 1, "trials": 1,
         "people": [{"id": "nora", "roles": ["n"], "plannedAt": 0, "arrivalReported": true}],
         "rooms": [{"id": "1", "caseId": "c", "target": 2000, "begins": 0, "startStep": "s",
          "items": [
           {"key": "count", "ofCase": false, "inRoom": false, "asked": false,
            "who": [["n"]],
            "hands": {"kind": "constant", "ms": 60000},
            "progress": {"state": "in-hand", "since": 900}}]}]}
        """;
    assertThat(right).contains(was);
    return right.replace(was, is);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "\"ms\": 60000 | \"ms\": NaN | field rooms[0].items[0].hands.ms: NaN is no number in JSON",
        "\"ms\": 60000 | \"ms\": \"NaN\" | hands.ms: is \"NaN\"; give a whole number",
        "\"ms\": 60000 | \"ms\": 1.5 | hands.ms: is 1.5; give a whole number",
        "\"ms\": 60000 | \"ms\": 1e400 | hands.ms: is 1e400; give a whole number",
        "\"ms\": 60000 | \"ms\": \"12\" | hands.ms: is \"12\"; give a whole number",
        "\"ms\": 60000 | \"ms\": true | hands.ms: is true; give a whole number",
        "\"ms\": 60000 | \"ms\": null | hands.ms: is null; give a whole number",
        "\"ms\": 60000 | \"ms\": [1] | hands.ms: is a list [ ]; give a whole number",
        "\"ms\": 60000 | \"ms\": 99999999999999999999 | hands.ms: is 99999999999999999999;"
            + " give a whole number, at most 9223372036854775807",
        "\"seed\": 1, | \"seed\": 2.7, | line 1, column 37: field seed: is 2.7; give a"
            + " whole number",
        "\"seed\": 1, | ~~ | field seed: is missing; give a whole number",
        "\"trials\": 1, | \"trials\": 3000000000, | trials: is 3000000000; give a whole"
            + " number, at most 2147483647",
        "\"kind\": \"constant\", | ~~ | line 7, column 27: field rooms[0].items[0].hands: lacks"
            + " \"kind\"; give it as one of [constant, exponential, log-normal, three-point]",
        "{\"kind\": \"constant\", \"ms\": 60000} | 60000 | hands: is 60000; give an object { } with"
            + " \"kind\" as one of [constant,",
        "{\"kind\": \"constant\", \"ms\": 60000} | [60000] | hands: is a list [ ]; give an"
            + " object { }",
        "\"key\": \"count\" | \"key\": \"count\", \"key\": \"count\" | line 5, column 21: field"
            + " rooms[0].items[0].key: stands here for the second time; keep one",
        "\"ms\": 60000 | \"ms\": 60000, \"ms\": 1 | hands.ms: stands here for the second time",
        "[[\"n\"]] | [\"n\"] | items[0].who[0]: is \"n\"; give a list [ ]",
        "[[\"n\"]] | [[1]] | items[0].who[0][0]: is 1; give a text in quotes",
        "[[\"n\"]] | [null] | items[0]: who[0] is null; take it out of the list",
        "[[\"n\"]] | [[\"n\", null]] | items[0]: who[0][1] is null; take it out of the list",
        "\"key\": \"count\" | \"key\": 5 | items[0].key: is 5; give a text in quotes",
        "\"ofCase\": false, | ~~ | items[0].ofCase: is missing; give true or false",
        "\"ofCase\": false | \"ofCase\": \"false\" | items[0].ofCase: is \"false\"; give"
            + " true or false",
        "\"ofCase\": false | \"ofCase\": 0 | items[0].ofCase: is 0; give true or false",
        "\"in-hand\" | \"broken\" | progress.state: \"broken\" is none of [open, in-hand,"
            + " good, fault,",
        "\"in-hand\" | 1 | progress.state: is 1; give one of [open, in-hand, good, fault,"
            + " left-out]",
        "\"seed\": 1, | \"colour\": 1, \"seed\": 1, | field colour: is not known here; known are [",
      })
  void shouldSayWhereItIsWrongWhatWasFoundAndWhatToGive(String was, String is, String says) {
    String told = refusal(morning(was, is), ForecastInput.class);
    assertThat(told).startsWith("line ").contains(says);
  }

  @Test
  void shouldTakeAWholeNumberAsOtherLanguagesWriteIt() throws BadJson {
    assertThat(Json.read("{\"kind\": \"constant\", \"ms\": 600000.0}", Draw.class))
        .isEqualTo(new Draw.Constant(600_000));
    assertThat(Json.read("{\"kind\": \"constant\", \"ms\": 6e5}", Draw.class))
        .isEqualTo(new Draw.Constant(600_000));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "~~ | is empty; give an object { }",
        "null | is null; give an object { }",
        "[] | line 1, column 1: is a list [ ]; give an object { }",
        "5 | line 1, column 1: is 5; give an object { }",
        "{\"version\": 1} {} | line 1, column 17: something follows the end of it; take that away",
        "{\"version\": 1 | the text ends here, and a bracket or a quote is still open; close it",
        "{\"version\": 1, } | '}' can't stand here; look for a comma",
        "{version: 1} | 'v' can't stand here",
        "{\"version\": 01} | field version: a number is not written as JSON writes it",
        "{\"version\": +1} | field version: a number is not written as JSON writes it",
        "{\"version\": 1.} | field version: a number is not written as JSON writes it",
        "{\"version\": -Infinity} | field version: -Infinity is no number in JSON; give a number",
        "{\"version\": None} | field version: None is nothing that JSON knows; texts and"
            + " names stand",
        "{\"version\": 1] | a bracket is closed by one of another kind",
        "{\"version\": \"\\x\"} | field version: after a backslash in a text only",
        "{'version': 1} | ''' can't stand here; look for a comma, quote or bracket",
      })
  void shouldSayWhereTheTextIsNoJson(String text, String says) {
    assertThat(refusal(text, ForecastInput.class)).contains(says);
  }

  @Test
  void shouldSayWhatIsNoText() {
    assertThat(refusal("{\"a\": \"x\ny\"}", ForecastInput.class))
        .contains("field a: a line break or other control character stands in a text");
    assertThat(refusal("{\"a\": ".repeat(65), ForecastInput.class)).contains("more than 64 deep");
    assertThat(refusal("{\"a\": " + "9".repeat(1_001) + "}", ForecastInput.class))
        .contains("field a: a number has too many digits");
    byte[] latin = "{\"a\": \"Zürich\"}".getBytes(StandardCharsets.ISO_8859_1);
    assertThatThrownBy(() -> Json.read(latin, ForecastInput.class))
        .isInstanceOf(BadJson.class)
        .hasMessageContaining("this is not text in UTF-8; save it as UTF-8");
  }

  /** Site files, sheets and releases are read line by line, and say it so too. */
  @Test
  void shouldSayItOfFilesThatASiteWrites() {
    List<Problem> problems = new ArrayList<>();
    assertThat(Lined.parse("site.json", "{\n\"graceMinutes\": NaN}", problems)).isNull();
    assertThat(problems)
        .extracting(Problem::toString)
        .containsExactly("site.json, line 2: is not JSON: NaN is no number in JSON; give a number");
  }

  /** Screens' commands are told in the same words; people read them in logs and refusals. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "{\"room\": \"7\"} | lacks \"type\"; give it as one of [add-case, add-note,",
        "{\"type\": \"fly\"} | \"fly\" is none of [add-case, add-note,",
        "{\"type\": \"report-ready\", \"room\": 7} | field room: is 7; give a text in quotes",
        "{\"type\": \"report-ready\", \"room\": {}} | field room: is an object { }; give a text in",
        "{\"type\": \"expect-person\", \"person\": \"p1\", \"at\": 1.5} | field at: is 1.5;"
            + " give a whole",
        "{\"type\": \"expect-person\", \"person\": \"p1\", \"at\": \"7\"} | field at: is"
            + " \"7\"; give a",
        "{\"type\": \"reopen\", \"item\": \"x\"} | an item is written room:<room>/<key> or",
      })
  void shouldTellScreensTheSame(String text, String says) {
    assertThat(refusal(text, Command.class)).contains(says);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"m\": \"send\", \"id\": 5}",
        "{\"m\": \"hello\", \"screen\": [], \"page\": \"wall\"}",
        "{\"m\": \"sign-on\", \"code\": \"a\", \"pin\": \"1\", \"role\": 3}",
        "{\"m\": \"tick\", \"sentAt\": \"x\"}",
        "{\"m\": 5}",
        "\"hello\"",
      })
  void shouldHaveNoNamesOfClassesInAnyRefusal(String text) {
    assertThat(refusal(text, ClientMessage.class)).doesNotContain("sunup", "java", "Cannot");
  }
}
