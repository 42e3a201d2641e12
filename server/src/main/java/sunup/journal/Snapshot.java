package sunup.journal;

import java.io.IOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import sunup.board.MorningId;

/**
 * A journal as it stood when this was opened, whatever a board writes to it meanwhile. It writes
 * nothing and keeps no writer waiting. For one thread.
 */
public final class Snapshot implements AutoCloseable {
  private final Dialect dialect;
  private final Connection connection;

  private Snapshot(Dialect dialect, Connection connection) {
    this.dialect = dialect;
    this.connection = connection;
  }

  /**
   * @throws IOException if there is no journal, or it can't be read; the message says what to do
   */
  public static Snapshot of(JournalPlace place) throws IOException {
    place.mustExist();
    Dialect dialect = place.dialect();
    try {
      return new Snapshot(dialect, dialect.openSnapshot());
    } catch (SQLException e) {
      throw new IOException(dialect.explain(e), e);
    }
  }

  private interface Question<T> {
    T ask(Connection c) throws SQLException;
  }

  private <T> T ask(Question<T> question) throws IOException {
    try {
      return question.ask(connection);
    } catch (SQLException e) {
      throw new IOException(dialect.explain(e), e);
    }
  }

  /** Every morning that it names, by suite and date. */
  public List<MorningId> mornings() throws IOException {
    return ask(JdbcStore::named);
  }

  public Head head(MorningId morning) throws IOException {
    return ask(c -> JdbcStore.head(c, morning));
  }

  /** How many commands of a morning were answered, the refused ones too. */
  public long receipts(MorningId morning) throws IOException {
    return ask(c -> JdbcStore.receiptCount(c, morning));
  }

  public Stored load(MorningId morning) throws IOException {
    return ask(c -> JdbcStore.load(c, morning, 0));
  }

  /** The version of its tables, as the scripts that made them are numbered. */
  String schema() throws IOException {
    return schema(Migrations.TABLE);
  }

  /** The same of another part's tables. */
  String schema(String history) throws IOException {
    return ask(
        c -> {
          String last =
              "SELECT version FROM "
                  + history
                  + " WHERE success AND version IS NOT NULL ORDER BY installed_rank DESC LIMIT 1";
          try (Statement s = c.createStatement();
              ResultSet row = s.executeQuery(last)) {
            return row.next() ? row.getString(1) : "0";
          }
        });
  }

  Connection connection() {
    return connection;
  }

  @Override
  public void close() {
    JdbcJournal.letGo(connection);
  }
}
