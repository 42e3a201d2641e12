package sunup.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import sunup.codec.Problem;

/**
 * Comma- or semicolon-separated text (RFC 4180, with either separator and any line break): every
 * cell knows the line in which it begins, also after cells that span lines.
 */
final class Csv {
  /** Rows of a list; the largest suite has 60 rooms and perhaps 8 cases in each. */
  static final int MAX_ROWS = 1_000;

  static final int MAX_CELLS = 60;

  /** Characters of a cell. */
  static final int MAX_CELL = 500;

  /**
   * One cell.
   *
   * @param line in which it begins, counted from 1
   * @param text without its quotes
   */
  record Cell(int line, String text) {}

  /** One row that is not blank. */
  record Row(int line, List<Cell> cells) {}

  private final String file;
  private final String text;
  private final char separator;
  private final int rowsMost;
  private final List<Problem> problems;
  private final Predicate<Row> taker;
  private int taken;
  private int at;
  private int line = 1;

  private Csv(
      String file,
      String text,
      char separator,
      int rowsMost,
      List<Problem> problems,
      Predicate<Row> taker) {
    this.taker = taker;
    this.rowsMost = rowsMost;
    this.file = file;
    this.text = text;
    this.separator = separator;
    this.problems = problems;
  }

  /**
   * Reads all rows.
   *
   * @param problems gets what is wrong; reading stops where it makes no sense to go on
   */
  static List<Row> read(String file, String text, char separator, List<Problem> problems) {
    List<Row> rows = new ArrayList<>();
    each(file, text, separator, MAX_ROWS, problems, rows::add);
    return rows;
  }

  /**
   * Reads row by row and keeps none.
   *
   * @param rowsMost rows at most
   * @param taker gets each; false ends the reading
   */
  static void each(
      String file,
      String text,
      char separator,
      int rowsMost,
      List<Problem> problems,
      Predicate<Row> taker) {
    Csv csv = new Csv(file, text, separator, rowsMost, problems, taker);
    boolean more = true;
    while (more && csv.at < text.length()) {
      more = csv.row();
    }
  }

  /** False if reading can't go on. */
  private boolean row() {
    int from = line;
    List<Cell> cells = new ArrayList<>();
    boolean more = true;
    while (more) {
      int had = problems.size();
      Cell cell = cell();
      if (cell == null) {
        return false;
      }
      if (cells.size() == MAX_CELLS) {
        return stop(from, "has more than " + MAX_CELLS + " cells; is it the right file?");
      }
      if (cell.text().length() > MAX_CELL && problems.size() == had) {
        problem(cell.line(), "a cell has more than " + MAX_CELL + " letters; shorten it");
      }
      cells.add(cell);
      more = at < text.length() && text.charAt(at) == separator;
      if (more) {
        at++;
      }
    }
    lineBreak();
    if (cells.stream().anyMatch(c -> !c.text().isBlank())) {
      if (taken == rowsMost) {
        return stop(from, "is beyond " + rowsMost + " rows; is it the right file?");
      }
      taken++;
      return taker.test(new Row(from, List.copyOf(cells)));
    }
    return true;
  }

  private Cell cell() {
    int from = line;
    int start = at;
    while (at < text.length() && text.charAt(at) == ' ') {
      at++;
    }
    if (at < text.length() && text.charAt(at) == '"') {
      return quoted();
    }
    at = start;
    boolean quote = false;
    while (at < text.length() && !isEnd(text.charAt(at))) {
      quote |= text.charAt(at) == '"';
      at++;
    }
    if (quote) {
      problem(
          from,
          "a quote stands inside a cell; put the whole cell in quotes"
              + " and write the inner one twice");
    }
    return new Cell(from, text.substring(start, at));
  }

  private Cell quoted() {
    int from = line;
    StringBuilder out = new StringBuilder();
    at++;
    while (true) {
      if (at >= text.length()) {
        problem(from, "the quote that opens here is never closed; write another at the cell's end");
        return null;
      }
      char c = text.charAt(at);
      if (c == '"' && at + 1 < text.length() && text.charAt(at + 1) == '"') {
        out.append('"');
        at += 2;
      } else if (c == '"') {
        at++;
        break;
      } else if (c == '\r' || c == '\n') {
        lineBreak();
        out.append('\n');
      } else {
        out.append(c);
        at++;
      }
    }
    while (at < text.length() && text.charAt(at) == ' ') {
      at++;
    }
    if (at < text.length() && !isEnd(text.charAt(at))) {
      problem(line, "something follows the closing quote of a cell; write inner quotes twice");
      while (at < text.length() && !isEnd(text.charAt(at))) {
        at++;
      }
    }
    return new Cell(from, out.toString());
  }

  private boolean isEnd(char c) {
    return c == separator || c == '\r' || c == '\n';
  }

  private void lineBreak() {
    if (at < text.length()) {
      boolean two =
          text.charAt(at) == '\r' && at + 1 < text.length() && text.charAt(at + 1) == '\n';
      at += two ? 2 : 1;
      line++;
    }
  }

  private boolean stop(int where, String message) {
    problem(where, message);
    return false;
  }

  private void problem(int where, String message) {
    problems.add(new Problem(file, where, "", message));
  }
}
