package sunup.archive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import sunup.board.LearnedTimes;
import sunup.board.MorningId;
import sunup.codec.Json;
import sunup.review.learn.Closing;
import sunup.review.learn.Lessons;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** The lessons of closed mornings, one row each, and the sheets of the newest. */
final class LessonTable {
  /** A step of a quarter goes on from what one of so many of the newest mornings went by. */
  static final int WENT_FROM = 30;

  private LessonTable() {}

  static boolean isThere(Connection c) throws SQLException {
    try (Statement s = c.createStatement();
        ResultSet row =
            s.executeQuery("SELECT count(*) FROM duckdb_tables() WHERE table_name = 'lesson'")) {
      row.next();
      return row.getLong(1) > 0;
    }
  }

  static void make(Connection c) throws SQLException {
    try (Statement s = c.createStatement()) {
      s.execute(
          "CREATE TABLE lesson (suite VARCHAR NOT NULL, day INTEGER NOT NULL, body VARCHAR NOT"
              + " NULL, sheets VARCHAR)");
    }
  }

  /** What came later: before it no morning went by anything but its sheets. */
  static void makeLater(Connection c) throws SQLException {
    try (Statement s = c.createStatement()) {
      s.execute("ALTER TABLE lesson ADD COLUMN IF NOT EXISTS went VARCHAR");
    }
  }

  /** Of one morning of which nothing stands there; within the caller's transaction. */
  static void put(Connection c, MorningId morning, FactStore.Taught taught) throws SQLException {
    String suite = morning.suite().value();
    int day = (int) morning.date().toEpochDay();
    try (PreparedStatement s =
        c.prepareStatement(
            "INSERT INTO lesson (suite, day, body, sheets, went) VALUES (?, ?, ?, ?, ?)")) {
      s.setString(1, suite);
      s.setInt(2, day);
      s.setString(3, Json.write(taught.lessons()));
      s.setString(4, Json.write(taught.sheets()));
      s.setString(5, taught.went() == null ? null : Json.write(taught.went()));
      s.executeUpdate();
    }
    String older =
        "UPDATE lesson SET sheets = NULL WHERE suite = ? AND sheets IS NOT NULL AND day < (SELECT"
            + " max(day) FROM lesson WHERE suite = ?)";
    try (PreparedStatement s = c.prepareStatement(older)) {
      s.setString(1, suite);
      s.setString(2, suite);
      s.executeUpdate();
    }
  }

  /** What the last closing of a suite taught. */
  static Closing closing(Connection c, String suite) throws SQLException {
    List<Lessons> lessons = new ArrayList<>();
    List<ComposedSheet> sheets = new ArrayList<>();
    LocalDate last = null;
    LearnedTimes went = null;
    String words =
        "SELECT day, body, sheets, went FROM lesson WHERE suite = ? ORDER BY day DESC LIMIT ";
    try (PreparedStatement s = c.prepareStatement(words + Closing.LEARNED_FROM)) {
      s.setString(1, suite);
      try (ResultSet row = s.executeQuery()) {
        while (row.next()) {
          if (last == null) {
            last = LocalDate.ofEpochDay(row.getInt(1));
            sheets.addAll(read(row.getString(3), new TypeReference<List<ComposedSheet>>() {}));
          }
          // A morning goes by its sheets too where it was opened while the archive could not be
          // read, or a node beside it did not know such events: that takes nothing back.
          String by = row.getString(4);
          if (went == null && by != null && lessons.size() < WENT_FROM) {
            went = read(by, new TypeReference<LearnedTimes>() {});
          }
          lessons.add(read(row.getString(2), new TypeReference<Lessons>() {}));
        }
      }
    }
    Collections.reverse(lessons);
    return Closing.of(last, sheets, lessons, went);
  }

  /** The items of the sheets that a suite's last closed morning was worked by. */
  static List<SheetItem> items(Connection c, String suite) throws SQLException {
    String words = "SELECT sheets FROM lesson WHERE suite = ? ORDER BY day DESC LIMIT 1";
    try (PreparedStatement s = c.prepareStatement(words)) {
      s.setString(1, suite);
      try (ResultSet row = s.executeQuery()) {
        return row.next()
            ? read(row.getString(1), new TypeReference<List<ComposedSheet>>() {}).stream()
                .flatMap(sheet -> sheet.items().stream())
                .toList()
            : List.of();
      }
    }
  }

  private static <T> T read(String json, TypeReference<T> type) throws SQLException {
    try {
      return Json.mapper().readValue(json, type);
    } catch (JsonProcessingException e) {
      throw new SQLException("the lessons of a morning can't be read", e);
    }
  }
}
