package sunup.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The tables of a journal's database as rows, whatever they hold: so that none is forgotten. */
final class Tables {
  /** Rows, or bytes, that go over at once. */
  private static final int ROWS = 500;

  private static final long BYTES = 4 * 1024 * 1024;

  /** How the migrations' own tables end. */
  private static final String HISTORY = "_history";

  private Tables() {}

  /** All but what the migrations write about themselves; those that others refer to first. */
  static List<String> names(Connection c) throws SQLException {
    List<String> names = all(c);
    Set<String> ordered = new LinkedHashSet<>();
    for (String name : names) {
      after(c, name, names, ordered);
    }
    ordered.removeIf(name -> name.endsWith(HISTORY));
    return List.copyOf(ordered);
  }

  private static void after(Connection c, String name, List<String> names, Set<String> ordered)
      throws SQLException {
    if (ordered.contains(name)) {
      return;
    }
    try (ResultSet row = c.getMetaData().getImportedKeys(null, c.getSchema(), name)) {
      List<String> needs = new ArrayList<>();
      while (row.next()) {
        needs.add(row.getString("PKTABLE_NAME").toLowerCase(Locale.ROOT));
      }
      for (String need : needs) {
        if (!need.equals(name) && names.contains(need)) {
          after(c, need, names, ordered);
        }
      }
    }
    ordered.add(name);
  }

  /** Other parts of the board that keep tables of their own here. */
  static List<String> parts(Connection c) throws SQLException {
    return all(c).stream()
        .filter(name -> name.endsWith(HISTORY))
        .map(name -> name.substring(0, name.length() - HISTORY.length()))
        .toList();
  }

  private static List<String> all(Connection c) throws SQLException {
    List<String> names = new ArrayList<>();
    String schema = c.getSchema();
    try (ResultSet row = c.getMetaData().getTables(null, schema, "%", new String[] {"TABLE"})) {
      while (row.next()) {
        String name = row.getString("TABLE_NAME").toLowerCase(Locale.ROOT);
        // The second is how the first Sunup numbered its tables.
        if (!name.equals(Migrations.TABLE)
            && !name.equals("schema_version")
            && !name.startsWith("sqlite_")) {
          names.add(name);
        }
      }
    }
    Collections.sort(names);
    return names;
  }

  static boolean empty(Connection c, String table) throws SQLException {
    try (Statement s = c.createStatement();
        ResultSet row = s.executeQuery("SELECT 1 FROM " + table + " LIMIT 1")) {
      return !row.next();
    }
  }

  /**
   * @param where which rows, beginning with a blank, or nothing for all
   * @return how many
   */
  static long copy(Connection from, Connection to, String table, String where) throws SQLException {
    try (Statement s = from.createStatement()) {
      s.setFetchSize(ROWS);
      try (ResultSet row = s.executeQuery("SELECT * FROM " + table + where)) {
        ResultSetMetaData columns = row.getMetaData();
        List<String> names = new ArrayList<>();
        for (int i = 1; i <= columns.getColumnCount(); i++) {
          names.add(columns.getColumnName(i));
        }
        return rows(row, to, table, names);
      }
    }
  }

  private static long rows(ResultSet row, Connection to, String table, List<String> names)
      throws SQLException {
    boolean[] flags = flags(to, table, names);
    String marks = "?" + ", ?".repeat(names.size() - 1);
    String sql =
        "INSERT INTO " + table + " (" + String.join(", ", names) + ") VALUES (" + marks + ")";
    long count = 0;
    long bytes = 0;
    try (PreparedStatement insert = to.prepareStatement(sql)) {
      while (row.next()) {
        for (int i = 1; i <= names.size(); i++) {
          Object value = row.getObject(i);
          if (value instanceof byte[] raw) {
            insert.setBytes(i, raw);
            bytes += raw.length;
          } else {
            insert.setObject(
                i, flags[i - 1] && value instanceof Number n ? n.intValue() != 0 : value);
          }
        }
        insert.addBatch();
        count++;
        if (count % ROWS == 0 || bytes > BYTES) {
          insert.executeBatch();
          bytes = 0;
        }
      }
      insert.executeBatch();
    }
    return count;
  }

  /** Which columns take true and false: SQLite keeps those as numbers. */
  private static boolean[] flags(Connection c, String table, List<String> names)
      throws SQLException {
    boolean[] flags = new boolean[names.size()];
    try (Statement s = c.createStatement();
        ResultSet none =
            s.executeQuery("SELECT " + String.join(", ", names) + " FROM " + table + " LIMIT 0")) {
      for (int i = 0; i < flags.length; i++) {
        int type = none.getMetaData().getColumnType(i + 1);
        flags[i] = type == Types.BOOLEAN || type == Types.BIT;
      }
    }
    return flags;
  }
}
