package sunup.journal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import javax.sql.DataSource;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteErrorCode;

/** SQLite in one file: WAL, full sync. The file is opened by this process alone. */
final class SqliteDialect implements Dialect {
  /** The journal's file may grow to this many pages of 4 KiB, 64 GiB; beyond it is a full disk. */
  static final long MAX_PAGES = 16L * 1024 * 1024;

  private static final int BUSY_MS = 5_000;

  /** How long the writer waits for readers when it cuts the log. */
  private static final int SCRUB_BUSY_MS = 100;

  private final String address;
  private final long maxPages;

  SqliteDialect(Path file, long maxPages) {
    this.address = "jdbc:sqlite:" + file;
    this.maxPages = maxPages;
  }

  @Override
  public Connection openWriting() throws SQLException {
    Connection connection = connect();
    try {
      Dialect.run(connection, "PRAGMA secure_delete=ON");
      Dialect.run(connection, "PRAGMA max_page_count=" + maxPages);
      check(connection, "journal_mode", "wal");
      check(connection, "synchronous", "2");
      check(connection, "secure_delete", "1");
      connection.setAutoCommit(false);
      return connection;
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
  }

  @Override
  public Connection openReading() throws SQLException {
    Connection connection = connect();
    Dialect.run(connection, "PRAGMA query_only=ON");
    return connection;
  }

  @Override
  public Connection openSnapshot() throws SQLException {
    // How the file is kept stays as it is: it may be a backup.
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_MS);
    config.setTransactionMode(SQLiteConfig.TransactionMode.DEFERRED);
    Connection connection = config.createConnection(address);
    try {
      Dialect.run(connection, "PRAGMA query_only=ON");
      connection.setAutoCommit(false);
      // The first read fixes what is seen.
      Dialect.run(connection, "SELECT count(*) FROM sqlite_master");
      return connection;
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
  }

  private Connection connect() throws SQLException {
    SQLiteConfig config = durable();
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    return config.createConnection(address);
  }

  private static SQLiteConfig durable() {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setBusyTimeout(BUSY_MS);
    return config;
  }

  /** Reads a setting back on the connection that writes: a PRAGMA can be ignored in silence. */
  private static void check(Connection connection, String pragma, String wanted)
      throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA " + pragma)) {
      String found = row.next() ? row.getString(1).toLowerCase(Locale.ROOT) : "nothing";
      if (!found.equals(wanted)) {
        throw new SQLException(
            "SQLite's "
                + pragma
                + " is "
                + found
                + " and not "
                + wanted
                + ": the journal would not be durable. Put the data folder on a local disk whose"
                + " file system supports shared memory and locks.");
      }
    }
  }

  @Override
  public DataSource migrating() {
    SQLiteConfig config = durable();
    config.setTransactionMode(SQLiteConfig.TransactionMode.DEFERRED);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl(address);
    return source;
  }

  @Override
  public String scripts() {
    return "sqlite";
  }

  /**
   * The deleted values are overwritten in the file; older pages of the log still hold them. Who
   * reads an older state, a backup for example, needs that log: the writer does not wait for it.
   */
  @Override
  public boolean scrub(Connection writing) throws SQLException {
    // A checkpoint may not run inside a transaction.
    writing.setAutoCommit(true);
    try {
      Dialect.run(writing, "PRAGMA busy_timeout=" + SCRUB_BUSY_MS);
      try (Statement statement = writing.createStatement();
          ResultSet row = statement.executeQuery("PRAGMA wal_checkpoint(TRUNCATE)")) {
        return row.next() && row.getInt(1) == 0;
      }
    } finally {
      Dialect.run(writing, "PRAGMA busy_timeout=" + BUSY_MS);
      writing.setAutoCommit(false);
    }
  }

  @Override
  public String explain(SQLException e) {
    int code = e.getErrorCode() & 0xff;
    if (code == SQLiteErrorCode.SQLITE_FULL.code) {
      return "The journal's disk is full. Make room on it; what was sent is kept at the screens.";
    }
    if (code == SQLiteErrorCode.SQLITE_IOERR.code || code == SQLiteErrorCode.SQLITE_CORRUPT.code) {
      return "The journal's disk reports an error (" + e.getMessage() + "). Look at the disk.";
    }
    return "The journal does not answer (" + e.getMessage() + ").";
  }
}
