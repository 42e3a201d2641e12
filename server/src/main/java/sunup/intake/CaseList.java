package sunup.intake;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import sunup.board.CaseId;
import sunup.board.PersonId;
import sunup.board.RoomId;
import sunup.codec.Fields;
import sunup.codec.Problem;
import sunup.sheets.BadSheet;
import sunup.sheets.ComposedSheet;
import sunup.sheets.Sheets;

/** Reads a case list: comma- or semicolon-separated text, one case a row, see INTAKE.md. */
public final class CaseList {
  /** Bytes of a list. */
  public static final int MAX_BYTES = 1 << 20;

  /** Problems that are told at once; who has more has the wrong file. */
  public static final int MAX_PROBLEMS = 100;

  static final int MAX_PROCEDURE = 120;
  static final int MAX_SERVICE = 40;

  /** What to do with a list in which some rows are wrong. */
  public enum Take {
    ALL_OR_NOTHING,
    ROWS_THAT_ARE_RIGHT
  }

  private final String file;
  private final SiteFile site;
  private final LocalDate date;
  private final Sheets sheets;

  /** Most cases of a list ask for the same: composed once. */
  private final Map<String, ComposedSheet> composed = new HashMap<>();

  private final List<Problem> problems = new ArrayList<>();
  private final List<Problem> notes = new ArrayList<>();

  private CaseList(String file, SiteFile site, LocalDate date, Sheets sheets) {
    this.file = file;
    this.site = site;
    this.date = date;
    this.sheets = sheets;
  }

  /** Reads a list, all of it or nothing. */
  public static CaseListResult read(byte[] csv, SiteFile site, LocalDate date, Sheets sheets) {
    return read(Planner.LIST, csv, site, date, sheets, Take.ALL_OR_NOTHING);
  }

  /**
   * Reads a list.
   *
   * @param file its name, for messages
   * @param date the day that it is for
   */
  public static CaseListResult read(
      String file, byte[] csv, SiteFile site, LocalDate date, Sheets sheets, Take take) {
    CaseList list = new CaseList(file, site, date, sheets);
    List<ListedCase> cases = list.cases(csv);
    List<Problem> problems = list.problems;
    if (problems.size() > MAX_PROBLEMS) {
      int more = problems.size() - MAX_PROBLEMS;
      problems = new ArrayList<>(problems.subList(0, MAX_PROBLEMS));
      problems.add(new Problem(file, 0, "", "and " + more + " more problems"));
    }
    if (problems.isEmpty() || take == Take.ALL_OR_NOTHING || cases.isEmpty()) {
      List<ListedCase> kept = problems.isEmpty() ? cases : List.of();
      return new CaseListResult(kept, problems, list.notes, false);
    }
    List<Problem> notes = new ArrayList<>(problems);
    notes.addAll(list.notes);
    return new CaseListResult(cases, List.of(), notes, true);
  }

  private List<ListedCase> cases(byte[] csv) {
    String text = decode(csv);
    if (text == null) {
      return List.of();
    }
    int header = 1;
    char separator = 0;
    if (text.regionMatches(true, 0, "sep=", 0, 4) && text.length() > 5) {
      // A line with which some spreadsheets say what separates the cells.
      separator = text.charAt(4);
      int end = text.indexOf('\n');
      // Kept as an empty line, so that the lines of messages stay those of the file.
      text = end < 0 ? "" : text.substring(end);
      header = 2;
    }
    if (separator == 0) {
      separator = Columns.separator(text);
    }
    if (separator != ',' && separator != ';') {
      problem(
          header, "", "cells must be separated by commas or semicolons; save it as CSV like that");
      return List.of();
    }
    List<Csv.Row> rows = Csv.read(file, text, separator, problems);
    if (rows.isEmpty()) {
      if (problems.isEmpty()) {
        problem(0, "", "is empty; the first line names the columns: " + Columns.NAMES);
      }
      return List.of();
    }
    Columns columns = Columns.of(file, rows.get(0), problems, notes);
    if (columns == null) {
      return List.of();
    }
    List<ListedCase> read = new ArrayList<>();
    for (Csv.Row row : rows.subList(1, rows.size())) {
      ListedCase one = listed(columns, row);
      if (one != null) {
        read.add(one);
      }
    }
    if (rows.size() == 1 && problems.isEmpty()) {
      problem(0, "", "has no cases under its header; to cancel all, cancel each at the desk");
    }
    return firstCases(read);
  }

  private String decode(byte[] csv) {
    if (csv.length > MAX_BYTES) {
      problem(0, "", "is larger than " + (MAX_BYTES >> 10) + " KB; is it the right file?");
      return null;
    }
    if (csv.length >= 2
        && ((csv[0] == (byte) 0xFE && csv[1] == (byte) 0xFF)
            || (csv[0] == (byte) 0xFF && csv[1] == (byte) 0xFE))) {
      problem(1, "", "is UTF-16; save it as CSV UTF-8");
      return null;
    }
    ByteBuffer in = ByteBuffer.wrap(csv);
    try {
      String text =
          StandardCharsets.UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(in)
              .toString();
      if (text.indexOf('\0') >= 0) {
        problem(0, "", "is not text; save it as CSV UTF-8");
        return null;
      }
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      int line = 1;
      for (int i = 0; i < in.position(); i++) {
        line += csv[i] == '\n' ? 1 : 0;
      }
      problem(line, "", "has letters that are not UTF-8; save it as CSV UTF-8");
      return null;
    }
  }

  private ListedCase listed(Columns columns, Csv.Row row) {
    int had = problems.size();
    if (row.cells().stream().skip(columns.width()).anyMatch(c -> !c.text().isBlank())) {
      problem(
          row.line(),
          "",
          "has more cells than the header has columns; put a cell with a separator in quotes");
      return null;
    }
    RoomId room = room(columns.cell(row, "room"));
    Csv.Cell start = columns.cell(row, "start");
    LocalTimes.Read time = LocalTimes.read(start.text(), date, site.settings().zoneId());
    if (time.problem() != null) {
      problem(start.line(), "start", time.problem());
    }
    String technique = technique(columns.cell(row, "technique"));
    Csv.Cell optionCell = columns.cell(row, "options");
    List<String> options = options(optionCell, room);
    CaseId id = id(columns.cell(row, "case"));
    PersonId surgeon = surgeon(columns.cell(row, "surgeon"));
    String procedure = words(columns.cell(row, "procedure"), "procedure", MAX_PROCEDURE);
    String service = words(columns.cell(row, "service"), "service", MAX_SERVICE);
    if (problems.size() > had) {
      return null;
    }
    try {
      String asked = technique + " " + options;
      ComposedSheet sheet = composed.get(asked);
      if (sheet == null) {
        sheet = sheets.compose(technique, options);
        composed.put(asked, sheet);
      }
      return new ListedCase(
          row.line(), id, room, time.at(), technique, options, procedure, service, surgeon, sheet);
    } catch (BadSheet e) {
      e.problems().forEach(p -> problem(optionCell.line(), "options", p.toString()));
      return null;
    }
  }

  private RoomId room(Csv.Cell cell) {
    String text = cell.text().strip();
    if (text.isEmpty()) {
      problem(cell.line(), "room", "is empty; write the room as the site's file names it");
      return null;
    }
    for (SiteFile.Room room : site.rooms()) {
      if (room.id().value().equalsIgnoreCase(text)) {
        return room.id();
      }
    }
    problem(
        cell.line(),
        "room",
        Fields.unknown(text, site.rooms().stream().map(r -> r.id().value()).toList())
            + " (rooms stand in the site's file)");
    return null;
  }

  private String technique(Csv.Cell cell) {
    String text = cell.text().strip().toLowerCase(Locale.ROOT);
    if (text.isEmpty()) {
      problem(cell.line(), "technique", "is empty; write " + String.join(" or ", techniques()));
      return null;
    }
    String word = site.words().getOrDefault(text, text);
    if (techniques().contains(word)) {
      return word;
    }
    String said =
        options().contains(word)
            ? "'" + LocalTimes.shortened(text) + "' is an option; write it in column options"
            : Fields.unknown(LocalTimes.shortened(text), withWords(techniques()));
    problem(cell.line(), "technique", said);
    return null;
  }

  private List<String> techniques() {
    return sheets.techniques().stream().map(Sheets.Choice::name).toList();
  }

  private List<String> options() {
    return sheets.options().stream().map(Sheets.Choice::name).toList();
  }

  /** Those names with the site's own words for them. */
  private List<String> withWords(List<String> names) {
    List<String> all = new ArrayList<>(names);
    site.words()
        .forEach(
            (word, meaning) -> {
              if (names.contains(meaning)) {
                all.add(word);
              }
            });
    return all;
  }

  /** The row's options with those that the room always has, sorted. */
  private List<String> options(Csv.Cell cell, RoomId room) {
    TreeSet<String> options = new TreeSet<>();
    List<String> known = options();
    String text = cell.text().strip().toLowerCase(Locale.ROOT);
    for (String part : Arrays.asList(text.split("[\\s,;+|/]+", -1))) {
      if (part.isEmpty() || part.equals("-") || part.equals("none")) {
        continue;
      }
      String word = site.words().getOrDefault(part, part);
      if (known.contains(word)) {
        options.add(word);
      } else if (techniques().contains(word)) {
        String said = "'" + part + "' is a technique; write it in column technique";
        problem(cell.line(), "options", said);
      } else {
        String said = Fields.unknown(LocalTimes.shortened(part), withWords(known));
        problem(cell.line(), "options", said);
      }
    }
    if (room != null) {
      options.addAll(site.room(room).options());
    }
    return List.copyOf(options);
  }

  private CaseId id(Csv.Cell cell) {
    String text = cell.text().strip();
    if (text.isEmpty()) {
      return null;
    }
    if (Identifying.number(text)) {
      note(
          cell.line(),
          "case",
          "has seven digits or more. It is kept for good: if it is a hospital's or a patient's"
              + " number, give the case another id");
    }
    try {
      return new CaseId(text);
    } catch (IllegalArgumentException e) {
      problem(cell.line(), "case", "'" + LocalTimes.shortened(text) + "': " + e.getMessage());
      return null;
    }
  }

  private PersonId surgeon(Csv.Cell cell) {
    String text = cell.text().strip();
    if (text.isEmpty()) {
      return null;
    }
    try {
      return new PersonId(text);
    } catch (IllegalArgumentException e) {
      problem(
          cell.line(),
          "surgeon",
          "must be a pseudonym or code, not a name: 1 to 40 letters, digits, dots or dashes without"
              + " spaces, for example surgeon-12");
      return null;
    }
  }

  private String words(Csv.Cell cell, String column, int longest) {
    String text = cell.text().strip().replaceAll("\\s+", " ");
    if (text.codePointCount(0, text.length()) > longest) {
      problem(cell.line(), column, "has more than " + longest + " letters; say it shorter");
      return null;
    }
    if (Identifying.seems(text)) {
      note(
          cell.line(),
          column,
          "looks like a person's name or number and was left out: the board keeps none. Take it out"
              + " of the list before it leaves your system");
      return null;
    }
    return text.isEmpty() ? null : text;
  }

  /** Keeps the earliest case of each room, in the wall's order; later ones are noted. */
  private List<ListedCase> firstCases(List<ListedCase> read) {
    Map<CaseId, ListedCase> ids = new HashMap<>();
    Map<RoomId, ListedCase> first = new HashMap<>();
    List<ListedCase> byTime = new ArrayList<>(read);
    byTime.sort(Comparator.comparingLong(ListedCase::bookedAt));
    for (ListedCase one : byTime) {
      ListedCase same = one.id() == null ? null : ids.putIfAbsent(one.id(), one);
      if (same != null) {
        problem(
            Math.max(one.line(), same.line()),
            "case",
            "'" + one.id() + "' stands in line " + Math.min(one.line(), same.line()) + " too");
        continue;
      }
      ListedCase earlier = first.putIfAbsent(one.room(), one);
      if (earlier != null && earlier.bookedAt() == one.bookedAt()) {
        problem(
            Math.max(one.line(), earlier.line()),
            "room",
            "room "
                + one.room()
                + " has two cases at the same time, the other in line "
                + Math.min(one.line(), earlier.line())
                + "; which is first?");
      } else if (earlier != null) {
        notes.add(
            new Problem(
                file,
                one.line(),
                "room",
                "a later case of room " + one.room() + "; only first cases are on the board"));
      }
    }
    return site.rooms().stream().map(r -> first.get(r.id())).filter(c -> c != null).toList();
  }

  private void note(int line, String field, String message) {
    notes.add(new Problem(file, line, field, message));
  }

  private void problem(int line, String field, String message) {
    problems.add(new Problem(file, line, field, message));
  }
}
