package sunup.journal;

import java.io.EOFException;
import java.io.IOException;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Properties;
import javax.sql.DataSource;
import org.postgresql.Driver;
import org.postgresql.PGProperty;
import org.postgresql.ds.PGSimpleDataSource;

/** A PostgreSQL that several nodes share. */
final class PostgresDialect implements Dialect {
  /** Seconds to reach the server, and until it must have let us in. */
  private static final int CONNECT_S = 2;

  private static final int LOGIN_S = 4;

  /** The same, and until each byte, while the journal is being opened. */
  private static final int OPENING_S = 20;

  /** Seconds without a byte of an answer after which the connection is given up. */
  private static final int SILENT_S = 5;

  /** A load of a large morning may take longer than a write. */
  private static final int SILENT_READING_S = 20;

  /** It has no room for one more connection; no answer came in time. */
  private static final String TOO_MANY = "53300";

  private static final String UNABLE = "08001";

  /**
   * The server ends a transaction that nobody goes on with: a node that was stopped in the middle
   * of one must not keep others from its mornings.
   */
  private static final String LIMITS =
      "SET statement_timeout = '4s'; SET lock_timeout = '3s';"
          + " SET idle_in_transaction_session_timeout = '2s';";

  private static final String WRITING =
      LIMITS + " SET synchronous_commit = on; SET default_transaction_isolation = 'read committed'";

  private static final String READING =
      "SET statement_timeout = '18s'; SET default_transaction_read_only = on";

  private final String url;
  private final Properties given;
  private volatile boolean open;

  PostgresDialect(PostgresAddress address) throws IOException {
    this.url = address.url();
    this.given = address.properties();
    PGProperty.APPLICATION_NAME.set(given, "sunup");
    PGProperty.TARGET_SERVER_TYPE.set(given, "primary");
    PGProperty.TCP_KEEP_ALIVE.set(given, true);
    PGProperty.CONNECT_TIMEOUT.set(given, CONNECT_S);
    PGProperty.REWRITE_BATCHED_INSERTS.set(given, true);
  }

  @Override
  public Connection openWriting() throws SQLException {
    Connection connection = connect(SILENT_S);
    try {
      Dialect.run(connection, WRITING);
      check(connection, "synchronous_commit", "on");
      check(connection, "fsync", "on");
      check(connection, "full_page_writes", "on");
      check(connection, "server_encoding", "UTF8");
      connection.setAutoCommit(false);
      return connection;
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
  }

  @Override
  public Connection openReading() throws SQLException {
    Connection connection = connect(SILENT_READING_S);
    try {
      Dialect.run(connection, READING);
      return connection;
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
  }

  @Override
  public Connection openSnapshot() throws SQLException {
    Connection connection = openReading();
    try {
      connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
      connection.setAutoCommit(false);
      // The first question fixes what is seen.
      Dialect.run(connection, "SELECT 1");
      return connection;
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
  }

  private Connection connect(int silentSeconds) throws SQLException {
    Properties with = new Properties();
    with.putAll(given);
    PGProperty.LOGIN_TIMEOUT.set(with, open ? LOGIN_S : OPENING_S);
    PGProperty.SOCKET_TIMEOUT.set(with, open ? silentSeconds : OPENING_S);
    Connection made = new Driver().connect(url, with);
    if (!open) {
      made.setNetworkTimeout(Runnable::run, silentSeconds * 1_000);
    }
    return made;
  }

  @Override
  public void opened() {
    open = true;
  }

  /** Not a wrong certificate, name, user or setting: those stay wrong. */
  @Override
  public boolean mayPass(SQLException e) {
    for (Throwable cause = e.getCause(); cause != null; cause = cause.getCause()) {
      if (cause instanceof SocketException
          || cause instanceof SocketTimeoutException
          || cause instanceof EOFException
          || cause instanceof UnknownHostException) {
        return true;
      }
    }
    String state = e.getSQLState() == null ? "" : e.getSQLState();
    return state.startsWith("57P") || state.equals(TOO_MANY) || state.equals(UNABLE);
  }

  /** Reads a setting back: the server's own may forbid what was asked for. */
  private static void check(Connection connection, String setting, String wanted)
      throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SHOW " + setting)) {
      String found = row.next() ? row.getString(1) : "nothing";
      if (!found.equals(wanted)) {
        throw new SQLException(
            "PostgreSQL's "
                + setting
                + " is "
                + found
                + " and not "
                + wanted
                + ": the journal would not be durable. Change it in the server's settings.");
      }
    }
  }

  @Override
  public DataSource migrating() {
    PGSimpleDataSource source = new PGSimpleDataSource();
    source.setUrl(url);
    source.setLoginTimeout(OPENING_S);
    for (String name : given.stringPropertyNames()) {
      try {
        source.setProperty(name, given.getProperty(name));
      } catch (SQLException e) {
        throw new IllegalStateException(name + " is no option of the driver", e);
      }
    }
    return source;
  }

  @Override
  public String scripts() {
    return "postgresql";
  }

  @Override
  public boolean scrub(Connection writing) throws SQLException {
    // The deleted rows leave the table's pages; the server's log, copies and backups keep them
    // until they go by themselves. Vacuum may not run inside a transaction.
    Dialect.runAlone(writing, "VACUUM private");
    return true;
  }

  @Override
  public String explain(SQLException e) {
    String state = e.getSQLState() == null ? "" : e.getSQLState();
    if (state.equals("53100")) {
      return "The database's disk is full. Make room on it; what was sent is kept at the screens.";
    }
    if (state.startsWith("28")) {
      return "The database does not let the board in ("
          + e.getMessage()
          + "). Look at its user and password file.";
    }
    if (state.startsWith("08") || state.startsWith("57P")) {
      return "The database can't be reached (" + e.getMessage() + ").";
    }
    return "The database does not answer (" + e.getMessage() + ").";
  }
}
