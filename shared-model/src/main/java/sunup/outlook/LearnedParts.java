package sunup.outlook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sunup.board.LearnedTimes;
import sunup.board.LearnedTimes.Reporting;
import sunup.board.Morning;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.Silence;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;
import sunup.wire.LearnedHow;
import sunup.wire.LearnedTime;
import sunup.wire.Part;
import sunup.wire.Part.LearnedPart;

/**
 * What of this morning's durations was learned, for the desk: those that its lists ask for; and how
 * people report.
 */
final class LearnedParts {
  private LearnedParts() {}

  static void addTo(List<Part> parts, Morning morning) {
    LearnedTimes learned = morning.learned();
    if (learned == null) {
      return;
    }
    Map<LearnedTimes.Time, SheetItem> asked = new HashMap<>();
    for (ComposedSheet sheet : morning.sheets().values()) {
      for (SheetItem item : sheet.items()) {
        LearnedTimes.Time time = learned.of(item.work());
        if (time != null) {
          asked.putIfAbsent(time, item);
        }
      }
    }
    List<LearnedTime> times = new ArrayList<>();
    for (LearnedTimes.Time time : learned.items()) {
      if (asked.containsKey(time)) {
        times.add(
            new LearnedTime(
                asked.get(time).desk(),
                time.sheet().usual(),
                time.sheet().oneInTen(),
                time.hands().usual(),
                time.hands().oneInTen(),
                time.measured()));
      }
    }
    List<LearnedHow> how = learned.reporting() == null ? List.of() : how(learned.reporting());
    parts.add(
        new LearnedPart("learned", learned.upTo().toString(), learned.mornings(), times, how));
  }

  private static List<LearnedHow> how(Reporting now) {
    Silence first = Silence.DEFAULT;
    return List.of(
        new LearnedHow(
            "Rooms report",
            shares(first.eachItem(), first.eachSection(), first.atEnd(), first.never()),
            shares(now.eachItem(), now.eachSection(), now.atEnd(), now.never()),
            now.rooms() + " rooms of mornings"),
        new LearnedHow(
            "Done and nobody said so",
            percent(ForecastInput.Settings.DEFAULT.forgottenTouch()),
            percent(now.forgotten()),
            now.begun() + " items begun by touch"),
        new LearnedHow(
            "Words come",
            "at once",
            now.delayOneInTenMs() == null
                ? "at once"
                : "one in ten over " + Math.round(now.delayOneInTenMs() / 1000.0) + " s later",
            now.told() + " words"));
  }

  private static String shares(double item, double section, double end, double never) {
    return String.format(
        Locale.ROOT,
        "each item %.0f, each section %.0f, at the end %.0f, never %.0f in 100",
        100 * item,
        100 * section,
        100 * end,
        100 * never);
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.1f in 100", 100 * share);
  }
}
