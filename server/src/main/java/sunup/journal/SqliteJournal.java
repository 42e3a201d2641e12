package sunup.journal;

import java.io.IOException;
import java.nio.file.Path;

/** Opens the journal that needs no database server: SQLite in one file of a data folder. */
public final class SqliteJournal {
  /** The journal's file in its data folder. */
  public static final String FILE = "journal.db";

  private SqliteJournal() {}

  /**
   * Opens it, making what is missing. The folder is held until the journal is closed.
   *
   * @throws IOException if another process holds the folder, the disk does not let it be durable,
   *     or a newer Sunup wrote it; the message says what to do
   */
  public static JdbcJournal open(Path folder) throws IOException {
    return open(folder, SqliteDialect.MAX_PAGES, Moments.NOBODY);
  }

  static JdbcJournal open(Path folder, long maxPages, Moments moments) throws IOException {
    DataFolder held = DataFolder.hold(folder);
    return JdbcJournal.open(new SqliteDialect(held.file(FILE), maxPages), held, moments);
  }
}
