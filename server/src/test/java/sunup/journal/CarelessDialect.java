package sunup.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;

/** A planted mistake: SQLite that does not sync its commits. */
final class CarelessDialect implements Dialect {
  private final Dialect under;

  CarelessDialect(Dialect under) {
    this.under = under;
  }

  @Override
  public Connection openWriting() throws SQLException {
    Connection connection = under.openWriting();
    connection.setAutoCommit(true);
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA synchronous=NORMAL");
    }
    connection.setAutoCommit(false);
    return connection;
  }

  @Override
  public Connection openReading() throws SQLException {
    return under.openReading();
  }

  @Override
  public DataSource migrating() {
    return under.migrating();
  }

  @Override
  public String scripts() {
    return under.scripts();
  }

  @Override
  public Connection openSnapshot() throws SQLException {
    return under.openSnapshot();
  }

  @Override
  public boolean scrub(Connection writing) throws SQLException {
    return under.scrub(writing);
  }

  @Override
  public String explain(SQLException e) {
    return under.explain(e);
  }
}
