package sunup.journal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.sql.DataSource;

/**
 * Tables that other parts of the board keep beside the journal: {@code PART_...} with their own
 * {@code PART_history}, in the journal's PostgreSQL or in {@code PART.db} beside its file.
 */
final class BackupParts {
  private BackupParts() {}

  /** Which parts there are. */
  static List<String> of(JournalPlace place, Snapshot journal) throws IOException, SQLException {
    if (place.file() == null) {
      return Tables.parts(journal.connection());
    }
    List<String> parts = new ArrayList<>();
    try (Stream<Path> beside = Files.list(place.file().toAbsolutePath().getParent())) {
      for (Path file : beside.sorted().toList()) {
        String name = file.getFileName().toString();
        if (name.matches("[a-z]{1,20}\\.db") && !file.equals(place.file().toAbsolutePath())) {
          parts.add(name.substring(0, name.length() - 3));
        }
      }
    }
    return parts;
  }

  /**
   * Adds a part to a backup, with the tables of the version that it has. What it keeps of people
   * goes by {@code sunup/PART/without-private.sql}, if it is to go and there is any.
   */
  static void write(
      String part, JournalPlace from, DataSource backup, boolean privates, Map<String, Long> rows)
      throws IOException, SQLException {
    try (Snapshot source = Snapshot.of(from.part(part))) {
      String version = source.schema(Migrations.history(part));
      Migrations.part(backup, part, "sqlite", version);
      try (Connection to = backup.getConnection()) {
        to.setAutoCommit(false);
        copy(part, source.connection(), to, rows);
        if (!privates) {
          script(part, "without-private", 0, to);
          count(part, to, rows);
        }
        to.commit();
      }
    }
  }

  /**
   * Puts a part back, brought to this program's tables. What does not outlive a restore is changed
   * by {@code sunup/PART/restored.sql}, if there is any; in it {@code :now} is that moment.
   *
   * @param backup a working copy
   */
  static void restore(
      String part, DataSource backup, JournalPlace to, long now, Map<String, Long> rows)
      throws IOException, SQLException {
    Migrations.part(backup, part, "sqlite", "latest");
    try (Connection c = backup.getConnection()) {
      script(part, "restored", now, c);
    }
    Dialect dialect = to.part(part).dialect();
    try (Connection c = dialect.openWriting()) {
      if (Tables.parts(c).contains(part)) {
        throw new Backup.NotEmpty(
            to + " has tables of " + part + " already. Restore into a new folder or database.");
      }
    }
    Migrations.part(dialect.migrating(), part, dialect.scripts(), "latest");
    try (Connection from = backup.getConnection();
        Connection c = dialect.openWriting()) {
      copy(part, from, c, rows);
      c.commit();
    }
  }

  private static void script(String part, String name, long now, Connection c)
      throws IOException, SQLException {
    String file = "/sunup/" + part + "/" + name + ".sql";
    try (InputStream in = BackupParts.class.getResourceAsStream(file)) {
      if (in == null) {
        return;
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      String bare = text.replaceAll("(?m)--.*$", "").replace(":now", Long.toString(now));
      for (String statement : bare.split(";", -1)) {
        if (!statement.isBlank()) {
          Dialect.run(c, statement);
        }
      }
    }
  }

  private static void count(String part, Connection c, Map<String, Long> rows) throws SQLException {
    for (String table : tables(part, c)) {
      try (Statement s = c.createStatement();
          ResultSet row = s.executeQuery("SELECT count(*) FROM " + table)) {
        row.next();
        rows.put(table, row.getLong(1));
      }
    }
  }

  private static List<String> tables(String part, Connection c) throws SQLException {
    return Tables.names(c).stream().filter(table -> table.startsWith(part + "_")).toList();
  }

  /** What the scripts themselves put into the tables makes way. */
  private static void copy(String part, Connection from, Connection to, Map<String, Long> rows)
      throws SQLException {
    List<String> tables = tables(part, to);
    for (int i = tables.size() - 1; i >= 0; i--) {
      Dialect.run(to, "DELETE FROM " + tables.get(i));
    }
    for (String table : tables) {
      rows.put(table, Tables.copy(from, to, table, ""));
    }
  }
}
