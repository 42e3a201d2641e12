package sunup.archive;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.duckdb.DuckDBConnection;

/**
 * Questions that are asked together: all see the archive as it was at one moment, whatever is
 * written meanwhile. On a connection of its own, so that those of several threads go side by side.
 */
final class Snapshot implements AutoCloseable {
  private final Connection connection;

  Snapshot(DuckDBConnection archive) {
    try {
      connection = archive.duplicate();
      connection.setAutoCommit(false);
    } catch (SQLException e) {
      throw DuckFacts.trouble(e);
    }
  }

  /** What is read of one row. */
  interface Reading {
    void row(ResultSet row) throws SQLException;
  }

  /** One row as a value. */
  interface One<T> {
    T of(ResultSet row) throws SQLException;
  }

  /**
   * Asks one question.
   *
   * @param words with {@code $WHERE} where the condition stands; parameters of its own come before
   */
  void ask(String words, Where where, Reading reading) {
    try (PreparedStatement s =
        connection.prepareStatement(words.replace("$WHERE", where.toString()))) {
      where.fill(s);
      try (ResultSet row = s.executeQuery()) {
        while (row.next()) {
          reading.row(row);
        }
      }
    } catch (SQLException e) {
      throw DuckFacts.trouble(e);
    }
  }

  <T> List<T> list(String words, Where where, One<T> one) {
    List<T> all = new ArrayList<>();
    ask(words, where, row -> all.add(one.of(row)));
    return all;
  }

  @Override
  public void close() {
    try (Connection done = connection) {
      done.rollback();
    } catch (SQLException e) {
      throw DuckFacts.trouble(e);
    }
  }
}
