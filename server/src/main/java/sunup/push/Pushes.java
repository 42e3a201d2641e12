package sunup.push;

import java.util.Map;
import sunup.board.SuiteId;

/**
 * Which suites of this board tell phones, on which terms and by which way.
 *
 * @param terms of those suites whose site's file says so
 */
public record Pushes(Map<SuiteId, PushTerms> terms, PushWay way) {
  public static final Pushes NONE = new Pushes(Map.of(), PushWay.PUBLIC);

  public Pushes {
    terms = Map.copyOf(terms);
  }
}
