package sunup.editions;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.codec.Json;
import sunup.journal.SideDatabase;

/** The table of editions, statement by statement; the same on both databases. */
final class EditionStore {
  private EditionStore() {}

  /** The newest edition of a suite; 0 if there is none. */
  static int newest(Connection c, String suite) throws SQLException {
    String sql = "SELECT coalesce(max(number), 0) AS n FROM editions_edition WHERE suite = ?";
    try (PreparedStatement s = SideDatabase.prepare(c, sql, suite);
        ResultSet row = s.executeQuery()) {
      row.next();
      return row.getInt("n");
    }
  }

  /** The edition that a draft became; 0 if it became none. */
  static int of(Connection c, String suite, String draft) throws SQLException {
    String sql = "SELECT number FROM editions_edition WHERE suite = ? AND draft = ?";
    try (PreparedStatement s = SideDatabase.prepare(c, sql, suite, draft);
        ResultSet row = s.executeQuery()) {
      return row.next() ? row.getInt("number") : 0;
    }
  }

  /** The texts of an edition by file name, or null. */
  static Map<String, String> files(Connection c, String suite, int number) throws SQLException {
    String sql = "SELECT files FROM editions_edition WHERE suite = ? AND number = ?";
    try (PreparedStatement s = SideDatabase.prepare(c, sql, suite, (long) number);
        ResultSet row = s.executeQuery()) {
      return row.next()
          ? read(row.getString("files"), new TypeReference<LinkedHashMap<String, String>>() {})
          : null;
    }
  }

  /** The newest editions, newest first. */
  static List<Published> list(Connection c, String suite, int most) throws SQLException {
    String sql =
        "SELECT number, at, by_role, by_person, by_screen, note, changes FROM editions_edition"
            + " WHERE suite = ? ORDER BY number DESC LIMIT ?";
    try (PreparedStatement s = SideDatabase.prepare(c, sql, suite, (long) most);
        ResultSet row = s.executeQuery()) {
      List<Published> all = new ArrayList<>();
      while (row.next()) {
        all.add(
            new Published(
                row.getInt("number"),
                row.getLong("at"),
                row.getString("by_role"),
                row.getString("by_person"),
                row.getString("by_screen"),
                row.getString("note"),
                read(row.getString("changes"), new TypeReference<List<String>>() {})));
      }
      return all;
    }
  }

  static void add(
      Connection c, String suite, String draft, Map<String, String> files, Published edition)
      throws SQLException {
    String sql =
        "INSERT INTO editions_edition (suite, number, draft, files, changes, note, by_role,"
            + " by_person, by_screen, at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";
    try (PreparedStatement s =
        SideDatabase.prepare(
            c,
            sql,
            suite,
            (long) edition.edition(),
            draft,
            Json.write(files),
            Json.write(edition.changes()),
            edition.note(),
            edition.role(),
            edition.person(),
            edition.screen(),
            edition.at())) {
      s.executeUpdate();
    }
  }

  private static <T> T read(String json, TypeReference<T> type) throws SQLException {
    try {
      return Json.mapper().readValue(json, type);
    } catch (JsonProcessingException e) {
      throw new SQLException("an edition of the sheets can't be read", e);
    }
  }
}
