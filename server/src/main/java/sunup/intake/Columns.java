package sunup.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import sunup.codec.Fields;
import sunup.codec.Problem;

/** Which column of a case list holds what. */
final class Columns {
  private static final List<String> KNOWN =
      List.of("room", "start", "technique", "options", "procedure", "service", "surgeon", "case");
  private static final List<String> NEEDED = List.of("room", "start", "technique");

  static final String NAMES = "room, start, technique; options, procedure, service, surgeon, case";

  /** Column names that promise a patient's name, number or the like. */
  private static final Pattern OF_A_PATIENT =
      Pattern.compile(
          "patient|person|name|surname|forename|initials|\\bmrn\\b|\\bnhs\\b|\\bssn\\b|\\bpid\\b"
              + "|hospital (no|number|id)|record (no|number)|insurance|birth|\\bdob\\b|born"
              + "|address|phone|mobile|e-?mail|next of kin");

  private final Map<String, Integer> at;
  private final int width;

  private Columns(Map<String, Integer> at, int width) {
    this.at = at;
    this.width = width;
  }

  int width() {
    return width;
  }

  /** The row's cell in a column, empty if the list has no such column. */
  Csv.Cell cell(Csv.Row row, String column) {
    Integer index = at.get(column);
    return index == null || index >= row.cells().size()
        ? new Csv.Cell(row.line(), "")
        : row.cells().get(index);
  }

  /** The separator with which more of the first line's cells are columns that we know. */
  static char separator(String text) {
    int best = -1;
    char found = ',';
    String first = text.stripLeading().lines().findFirst().orElse("");
    for (char separator : new char[] {',', ';', '\t'}) {
      int known = 0;
      for (String cell : first.split(Pattern.quote(String.valueOf(separator)), Csv.MAX_CELLS)) {
        known += KNOWN.contains(plain(cell.replace("\"", ""))) ? 1 : 0;
      }
      if (known > best) {
        best = known;
        found = separator;
      }
    }
    return found;
  }

  private static String plain(String name) {
    return name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_]+", " ");
  }

  /**
   * Reads the header.
   *
   * @return null if the rows can't be read by it
   */
  static Columns of(String file, Csv.Row header, List<Problem> problems, List<Problem> notes) {
    Map<String, Integer> at = new HashMap<>();
    int had = problems.size();
    for (int i = 0; i < header.cells().size(); i++) {
      Csv.Cell cell = header.cells().get(i);
      String name = plain(cell.text());
      String shown = LocalTimes.shortened(cell.text().strip());
      if (name.isEmpty()) {
        continue;
      }
      if (KNOWN.contains(name)) {
        if (at.putIfAbsent(name, i) != null) {
          problems.add(new Problem(file, cell.line(), name, "is a column twice; keep one"));
        }
      } else if (OF_A_PATIENT.matcher(name).find()) {
        problems.add(
            new Problem(
                file,
                cell.line(),
                shown,
                "looks like a patient's or person's name or number; the board keeps none. Take the"
                    + " column out of the list before it leaves your system"));
      } else {
        notes.add(
            new Problem(
                file, cell.line(), shown, "is left aside: column " + Fields.unknown(shown, KNOWN)));
      }
    }
    for (String needed : NEEDED) {
      if (!at.containsKey(needed)) {
        problems.add(
            new Problem(
                file,
                header.line(),
                needed,
                "is no column of this list; the first line must name " + NAMES));
      }
    }
    return problems.size() > had ? null : new Columns(at, header.cells().size());
  }
}
