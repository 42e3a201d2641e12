package sunup.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where a journal is kept: a data folder, a PostgreSQL, or the one file of a backup. */
public final class JournalPlace {
  private final Path file;
  private final PostgresAddress database;

  private JournalPlace(Path file, PostgresAddress database) {
    this.file = file;
    this.database = database;
  }

  /** The journal in a data folder. */
  public static JournalPlace folder(Path folder) {
    return new JournalPlace(folder.resolve(SqliteJournal.FILE), null);
  }

  public static JournalPlace database(PostgresAddress address) {
    return new JournalPlace(null, address);
  }

  /** A journal in a file of another name. */
  public static JournalPlace file(Path file) {
    return new JournalPlace(file, null);
  }

  /** Its file, or null for a PostgreSQL. */
  Path file() {
    return file;
  }

  /** Where another part of the board keeps its tables: beside the file, or in the database. */
  JournalPlace part(String part) {
    return database == null ? new JournalPlace(file.resolveSibling(part + ".db"), null) : this;
  }

  Dialect dialect() throws IOException {
    return database == null
        ? new SqliteDialect(file.toAbsolutePath(), SqliteDialect.MAX_PAGES)
        : new PostgresDialect(database);
  }

  /**
   * @throws IOException if there is none; the message says so
   */
  void mustExist() throws IOException {
    if (file != null && !Files.isRegularFile(file)) {
      throw new IOException(
          "There is no journal " + file + ". Name the folder or file that it is in.");
    }
  }

  @Override
  public String toString() {
    return database == null ? file.toString() : database.url();
  }
}
