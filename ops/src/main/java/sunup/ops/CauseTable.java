package sunup.ops;

import java.io.PrintWriter;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import sunup.board.RoomId;

/** Prints when each cause of a late start shows, as a page of the documents. */
final class CauseTable {
  /** The date is part of the plan; it is fixed so that the table is the same on any day. */
  static final LocalDate DATE = LocalDate.of(2026, 11, 25);

  private static final int TRIALS = 400;
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  private CauseTable() {}

  /**
   * @return 0, or 1 if a cause shows too late or never
   */
  static int print(Causes causes, long seed, PrintWriter out) throws Wrong {
    ZoneId zone = causes.demo().site().settings().zoneId();
    int late = 0;
    out.printf(
        "| Cause | Room | Act by | Shows since | At the desk, one of | On the wall by then |%n");
    out.printf("|---|---|---|---|---|---|%n");
    for (CauseWatch.Shown s : causes.watch(DATE, seed, TRIALS, 1)) {
      late += s.since() == null ? 1 : 0;
      RoomId room = s.room() == null ? s.cause().rooms().get(0) : s.room();
      out.printf(
          "| %s | %s | %s | %s | %s | %s |%n",
          s.cause().name(),
          room,
          clock(s.by(), zone),
          s.since() == null ? "**not in time**" : clock(s.since(), zone),
          or(s.words()) + " (" + s.lines() + ")",
          or(s.wall()));
    }
    out.flush();
    return late == 0 ? 0 : Main.FAILED;
  }

  private static String clock(Long at, ZoneId zone) {
    return at == null ? "-" : CLOCK.format(Instant.ofEpochMilli(at).atZone(zone));
  }

  private static String or(String words) {
    return words == null ? "-" : words;
  }
}
