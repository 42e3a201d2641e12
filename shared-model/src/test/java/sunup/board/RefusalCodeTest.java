package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sunup.codec.Json;

class RefusalCodeTest {
  /** Verbs of which a sentence has at least one, so that it says what to do. */
  private static final List<String> WHAT_TO_DO =
      List.of(
          "take a", "open it", "change", "ask", "look", "choose", "say", "send", "give", "add",
          "keep", "write");

  @Test
  void shouldHaveOneCodeEachTheSameInJson() {
    Set<String> codes = new HashSet<>();
    for (RefusalCode code : RefusalCode.values()) {
      assertThat(codes.add(code.code())).as(code.code()).isTrue();
      assertThat(Json.write(code)).isEqualTo("\"" + code.code() + "\"");
    }
  }

  @Test
  void shouldSayWhatToDoWhenTheSentenceIsTheCodesOwn() {
    for (RefusalCode code : RefusalCode.values()) {
      String said = code.say("DETAIL");
      if (!said.equals("DETAIL")) {
        assertThat(WHAT_TO_DO)
            .as(code + ": " + said)
            .anyMatch(verb -> said.toLowerCase(java.util.Locale.ROOT).contains(verb));
      }
    }
  }

  @Test
  void shouldFillADetailWithPercentSignsAndNone() {
    assertThat(RefusalCode.UNKNOWN.say("room 100%s")).contains("room 100%s");
    assertThat(RefusalCode.NOT_OPEN.say(null)).endsWith("report.");
  }
}
