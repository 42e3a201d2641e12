package sunup.board;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;

/** One suite on one date; written {@code suite/2026-11-25}. */
public record MorningId(SuiteId suite, LocalDate date) {
  @JsonCreator
  public static MorningId parse(String text) {
    int slash = text.indexOf('/');
    if (slash < 0) {
      throw new IllegalArgumentException("a morning is written suite/yyyy-mm-dd, not " + text);
    }
    return new MorningId(
        new SuiteId(text.substring(0, slash)), LocalDate.parse(text.substring(slash + 1)));
  }

  @JsonValue
  @Override
  public String toString() {
    return suite + "/" + date;
  }
}
