package sunup.journal;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;

/**
 * Tables of another part of the board beside the journal, as durable as it is: a file of their own
 * in its data folder, or tables in its PostgreSQL. One thread uses it at a time.
 */
public final class SideDatabase implements AutoCloseable {
  private final Dialect dialect;
  private Connection connection;

  private SideDatabase(Dialect dialect, Connection connection) {
    this.dialect = dialect;
    this.connection = connection;
  }

  /**
   * What is done in a transaction.
   *
   * @param <E> thrown when it is not to be done after all
   */
  public interface Work<T, E extends Exception> {
    T on(Connection connection) throws SQLException, E;
  }

  /**
   * Beside a journal: in its PostgreSQL, or without one in a file of its folder.
   *
   * @param address null for a file
   */
  public static SideDatabase beside(Path folder, PostgresAddress address, String part)
      throws IOException {
    return address == null ? sqlite(folder, part) : postgres(address, part);
  }

  /** A statement with its values set; to be closed by whoever asked for it. */
  public static PreparedStatement prepare(Connection c, String sql, Object... with)
      throws SQLException {
    PreparedStatement s = c.prepareStatement(sql);
    try {
      for (int i = 0; i < with.length; i++) {
        if (with[i] instanceof byte[] bytes) {
          s.setBytes(i + 1, bytes);
        } else {
          s.setObject(i + 1, with[i]);
        }
      }
      return s;
    } catch (SQLException | RuntimeException e) {
      s.close();
      throw e;
    }
  }

  /**
   * In a file of a folder that the journal holds.
   *
   * @param part names the file and the scripts, {@code sunup/PART/sqlite}
   */
  public static SideDatabase sqlite(Path folder, String part) throws IOException {
    Path file = folder.toAbsolutePath().normalize().resolve(part + ".db");
    return open(new SqliteDialect(file, SqliteDialect.MAX_PAGES), part);
  }

  /** In the journal's PostgreSQL. */
  public static SideDatabase postgres(PostgresAddress address, String part) throws IOException {
    return open(new PostgresDialect(address), part);
  }

  private static SideDatabase open(Dialect dialect, String part) throws IOException {
    try {
      Migrations.part(dialect.migrating(), part, dialect.scripts(), "latest");
      Connection connection = dialect.openWriting();
      dialect.opened();
      return new SideDatabase(dialect, connection);
    } catch (SQLException e) {
      throw new IOException(dialect.explain(e), e);
    }
  }

  /**
   * Does the work in one transaction. After a failure nothing of it is done, unless the commit
   * itself was cut off; the next work gets a new connection.
   */
  public <T, E extends Exception> T inOne(Work<T, E> work) throws SQLException, E {
    if (connection == null) {
      connection = dialect.openWriting();
    }
    boolean broken = true;
    try {
      T done;
      try {
        done = work.on(connection);
      } catch (SQLException | RuntimeException e) {
        throw e;
      } catch (Exception notToBeDone) {
        connection.rollback();
        broken = false;
        throw notToBeDone;
      }
      connection.commit();
      broken = false;
      return done;
    } finally {
      if (broken) {
        drop();
      }
    }
  }

  private void drop() {
    try {
      connection.close();
    } catch (SQLException e) {
      // It was broken already.
    }
    connection = null;
  }

  @Override
  public void close() {
    if (connection != null) {
      drop();
    }
  }
}
