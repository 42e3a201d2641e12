package sunup.intake;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import sunup.archive.BroughtCase;
import sunup.board.DelayReason;
import sunup.codec.Fields;
import sunup.codec.Problem;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Reported;
import sunup.review.facts.FirstCaseFact.Settled;

/**
 * First cases of the time before Sunup, one a row: {@code date,room,booked,started} and, if known,
 * {@code service,technique,cancelled,reason}. Nothing is taken while a row is wrong.
 */
public final class History {
  public static final int MAX_BYTES = 40_000_000;

  private static final int ROWS_MAX = 400_000;

  /** More mistakes than these help nobody. */
  private static final int PROBLEMS_MAX = 50;

  private static final List<String> NEEDED = List.of("date", "room", "booked", "started");
  private static final List<String> KNOWN =
      List.of("date", "room", "booked", "started", "service", "technique", "cancelled", "reason");

  private final String file;
  private final SiteFile site;
  private final List<String> rooms;
  private final List<Problem> problems = new ArrayList<>();
  private final List<FirstCaseFact> facts = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  /** Null before the first row. */
  private List<String> header;

  private History(String file, SiteFile site) {
    this.file = file;
    this.site = site;
    this.rooms = site.rooms().stream().map(r -> r.id().value()).toList();
  }

  /** What was read; no facts if there are problems. */
  public record Result(List<FirstCaseFact> facts, List<Problem> problems) {
    public Result {
      facts = List.copyOf(facts);
      problems = List.copyOf(problems);
    }
  }

  /**
   * Reads a file of a site's history.
   *
   * @param file its name as people know it
   */
  public static Result read(String file, byte[] bytes, SiteFile site) {
    History history = new History(file, site);
    history.read(bytes);
    boolean right = history.problems.isEmpty();
    return new Result(right ? history.facts : List.of(), history.problems);
  }

  private void read(byte[] bytes) {
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      problems.add(new Problem(file, 0, "", "is no UTF-8 text; save it as CSV UTF-8"));
      return;
    }
    text = text.startsWith("\uFEFF") ? text.substring(1) : text;
    Csv.each(file, text, separator(text), ROWS_MAX, problems, this::take);
    if (header == null) {
      problems.add(new Problem(file, 1, "", "has no rows; the first one names the columns"));
    }
  }

  /** One row after the other: none is kept but as its fact. */
  private boolean take(Csv.Row row) {
    if (header == null) {
      header(row);
    } else {
      row(row);
    }
    return problems.size() < PROBLEMS_MAX;
  }

  private void header(Csv.Row row) {
    header = row.cells().stream().map(c -> plain(c.text())).toList();
    for (String column : header) {
      if (!column.isEmpty() && !KNOWN.contains(column)) {
        problems.add(
            new Problem(
                file,
                1,
                LocalTimes.shortened(column),
                "is no column of a history; take it out. It has " + String.join(", ", KNOWN)));
      }
    }
    for (String column : NEEDED) {
      if (!header.contains(column)) {
        problems.add(new Problem(file, 1, column, "is missing; the first row names the columns"));
      }
    }
  }

  private static char separator(String text) {
    String first = text.lines().findFirst().orElse("");
    return first.split(Pattern.quote(";"), -1).length > first.split(",", -1).length ? ';' : ',';
  }

  private static String plain(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }

  private String cell(Csv.Row row, String column) {
    int at = header.indexOf(column);
    return at < 0 || at >= row.cells().size() ? "" : row.cells().get(at).text().strip();
  }

  private void problem(Csv.Row row, String column, String message) {
    problems.add(new Problem(file, row.line(), column, message));
  }

  private void row(Csv.Row row) {
    int before = problems.size();
    LocalDate date = date(row);
    String room = room(row);
    boolean cancelled = cancelled(row);
    Reported reported = reported(row);
    if (date == null) {
      return;
    }
    Long booked = time(row, "booked", date, true);
    Long started = time(row, "started", date, false);
    if (!cancelled && started == null && problems.size() == before) {
      problem(row, "started", "is empty; write the time, or yes in the column cancelled");
    }
    if (problems.size() == before && !seen.add(date + " " + room)) {
      problem(row, "room", "room " + room + " stands twice on " + date + "; keep its first case");
    }
    if (problems.size() == before) {
      facts.add(fact(row, date, room, booked, started, cancelled, reported));
    }
  }

  private LocalDate date(Csv.Row row) {
    String text = cell(row, "date");
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException e) {
      problem(
          row, "date", "'" + LocalTimes.shortened(text) + "' is no date; write it as 2026-03-02");
      return null;
    }
  }

  private String room(Csv.Row row) {
    String room = cell(row, "room");
    if (!rooms.contains(room)) {
      problem(row, "room", Fields.unknown(LocalTimes.shortened(room), rooms));
    }
    return room;
  }

  private boolean cancelled(Csv.Row row) {
    String text = plain(cell(row, "cancelled"));
    if (!List.of("", "no", "yes").contains(text)) {
      problem(row, "cancelled", "'" + LocalTimes.shortened(text) + "' is neither yes nor no");
    }
    return text.equals("yes");
  }

  private Reported reported(Csv.Row row) {
    String text = plain(cell(row, "reason"));
    if (text.isEmpty()) {
      return null;
    }
    for (DelayReason reason : DelayReason.values()) {
      if (plain(reason.name()).replace('_', '-').equals(text.replace('_', '-'))) {
        return new Reported(reason, Settled.OPEN, null);
      }
    }
    List<String> known = new ArrayList<>();
    for (DelayReason reason : DelayReason.values()) {
      known.add(plain(reason.name()).replace('_', '-'));
    }
    problem(row, "reason", Fields.unknown(LocalTimes.shortened(text), known));
    return null;
  }

  private Long time(Csv.Row row, String column, LocalDate date, boolean needed) {
    String text = cell(row, column);
    if (text.isEmpty() && !needed) {
      return null;
    }
    LocalTimes.Read read = LocalTimes.read(text, date, site.settings().zoneId());
    if (read.problem() != null) {
      problem(row, column, read.problem());
    }
    return read.at();
  }

  private FirstCaseFact fact(
      Csv.Row row,
      LocalDate date,
      String room,
      long booked,
      Long started,
      boolean cancelled,
      Reported reported) {
    return new BroughtCase(
            date,
            room,
            known(cell(row, "service")),
            known(cell(row, "technique")),
            site.settings().startEvent(),
            site.settings().graceMinutes(),
            booked,
            started,
            cancelled,
            reported)
        .fact(site.suite());
  }

  private static String known(String text) {
    return text.isEmpty() ? null : text;
  }
}
