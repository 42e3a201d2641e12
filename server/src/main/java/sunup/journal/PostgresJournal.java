package sunup.journal;

import java.io.IOException;

/** Opens the journal that several nodes share: a PostgreSQL. */
public final class PostgresJournal {
  private PostgresJournal() {}

  /**
   * Opens it, making its tables if they are missing.
   *
   * @throws IOException if the database can't be reached, would not be durable, or a newer Sunup
   *     wrote it; the message says what to do
   */
  public static JdbcJournal open(PostgresAddress address) throws IOException {
    return open(address, Moments.NOBODY);
  }

  static JdbcJournal open(PostgresAddress address, Moments moments) throws IOException {
    return JdbcJournal.open(new PostgresDialect(address), () -> {}, moments);
  }
}
