package sunup.outlook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.board.ItemState;
import sunup.board.Section;
import sunup.board.Step;
import sunup.outlook.RoomSheet.Line;
import sunup.sheets.SheetItem;

/**
 * When the items of a room that are good became so. People tell a thing after it happened, so words
 * of what follows may come before words of what went before. What the start's chain has passed was
 * over by the earliest step told of those after it. What gates a step, or must be good before an
 * item that is, and was told within {@link FirstSettings#TOLD_AFTER} of that, was good by then; so
 * were its own prerequisites. Otherwise the chain of the start would take it for no cause at all.
 */
final class GoodTimes {
  private final RoomSheet sheet;

  /** Of each key the lines that are good and may not begin before it is. */
  private final Map<String, List<Line>> followers = new HashMap<>();

  private final Map<String, Long> found = new HashMap<>();

  GoodTimes(RoomSheet sheet) {
    this.sheet = sheet;
    for (Line line : sheet.lines()) {
      if (line.state() == ItemState.GOOD) {
        for (String before : line.asks().after()) {
          followers.computeIfAbsent(before, k -> new ArrayList<>()).add(line);
        }
      }
    }
  }

  /** Of a line that is good; epoch milliseconds. */
  long of(Line line) {
    String key = line.asks().key();
    Long known = found.get(key);
    if (known != null) {
      return known;
    }
    long said = said(line);
    long good = line.asks().section() == Section.START ? inChain(line, said) : gated(line, said);
    found.put(key, good);
    if (line.asks().section() != Section.START) {
      for (Line next : followers.getOrDefault(key, List.of())) {
        good = Math.min(good, by(of(next), said));
      }
      found.put(key, good);
    }
    return good;
  }

  private long said(Line line) {
    Long step = stepAt(line);
    return step != null ? step : line.item().since();
  }

  /** The start event stays as it was told; what was not told is bounded by what was. */
  private long inChain(Line line, long said) {
    boolean told = stepAt(line) != null || line.item().state() == ItemState.GOOD;
    if (told && line.asks().marks() == sheet.startStep()) {
      return said;
    }
    Long next = firstAfter(line);
    return next == null ? said : told ? Math.min(said, next) : next;
  }

  private long gated(Line line, long said) {
    SheetItem asks = line.asks();
    Long step = asks.gates() == null ? null : sheet.caseDay().reachedBy(asks.gates());
    return step == null ? said : by(step, said);
  }

  /** A moment by which it must have been good, if it was told soon enough after that. */
  private static long by(long moment, long said) {
    return said > moment && said - moment <= FirstSettings.TOLD_AFTER ? moment : said;
  }

  /** The earliest step told of the lines after this one, or null. */
  private Long firstAfter(Line line) {
    Long first = null;
    for (Line other : sheet.lines()) {
      Long at = other.order() > line.order() ? stepAt(other) : null;
      first = at == null || (first != null && first <= at) ? first : at;
    }
    return first;
  }

  private Long stepAt(Line line) {
    Step marks = line.asks().marks();
    return marks == null ? null : sheet.caseDay().steps().get(marks);
  }
}
