package sunup.outlook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.LearnedTimes;
import sunup.board.Morning;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;
import sunup.wire.LearnedTime;
import sunup.wire.Part;
import sunup.wire.Part.LearnedPart;

/** What of this morning's durations was learned, for the desk: those that its lists ask for. */
final class LearnedParts {
  private LearnedParts() {}

  static void addTo(List<Part> parts, Morning morning) {
    LearnedTimes learned = morning.learned();
    if (learned == null) {
      return;
    }
    Map<String, SheetItem> asked = new LinkedHashMap<>();
    for (ComposedSheet sheet : morning.sheets().values()) {
      sheet.items().forEach(item -> asked.putIfAbsent(item.key(), item));
    }
    List<LearnedTime> times = new ArrayList<>();
    for (LearnedTimes.Time time : learned.items()) {
      SheetItem item = asked.get(time.key());
      if (item != null && item.hands().equals(time.sheet())) {
        times.add(
            new LearnedTime(
                item.desk(),
                time.sheet().usual(),
                time.sheet().oneInTen(),
                time.hands().usual(),
                time.hands().oneInTen(),
                time.measured()));
      }
    }
    parts.add(new LearnedPart("learned", learned.upTo().toString(), learned.mornings(), times));
  }
}
