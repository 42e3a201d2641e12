package sunup.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;

/** What differs between the databases that a {@link JdbcJournal} can stand on. */
interface Dialect {
  /**
   * A connection for the one who writes, with automatic commit off and its settings read back.
   *
   * @throws SQLException if it can't be had, or a setting that durability rests on is not as asked
   */
  Connection openWriting() throws SQLException;

  /** A connection for the one who reads, with automatic commit on. */
  Connection openReading() throws SQLException;

  /**
   * A connection that sees the database as it is now, whatever is written meanwhile, and keeps no
   * writer waiting; with automatic commit off.
   */
  Connection openSnapshot() throws SQLException;

  /** Connections for the one who makes the tables, before all others. */
  DataSource migrating();

  /** The folder of the scripts that make the tables. */
  String scripts();

  /**
   * After private values were deleted and the deletion was committed: leave no copy behind.
   *
   * @return false if somebody who reads was in the way; then it is to be done again later
   */
  boolean scrub(Connection writing) throws SQLException;

  /** Whether what failed at the opening may work in a while; then it is tried for a minute. */
  default boolean mayPass(SQLException e) {
    return false;
  }

  /** The journal is open: from now on nobody waits as long as at a start. */
  default void opened() {}

  /** What went wrong, in words that say what to do. */
  String explain(SQLException e);

  static void run(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  /** Runs what may not stand inside a transaction, on a connection that else is always in one. */
  static void runAlone(Connection writing, String sql) throws SQLException {
    writing.setAutoCommit(true);
    try {
      run(writing, sql);
    } finally {
      writing.setAutoCommit(false);
    }
  }
}
