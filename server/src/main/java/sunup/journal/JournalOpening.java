package sunup.journal;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Opens a database as one expects of a start: one that is itself still starting, or a machine that
 * is busy with it, is waited for.
 */
final class JournalOpening {
  /** How long it is tried. */
  static final long TRIES_MS = 60_000;

  private static final long BETWEEN_MS = 1_000;
  private static final Logger LOG = LoggerFactory.getLogger(JournalOpening.class);

  private JournalOpening() {}

  /**
   * Makes the tables if need be.
   *
   * @return the writer's connection
   * @throws SQLException that waiting does not help against, or the last one
   */
  static Connection patiently(Dialect dialect) throws IOException, SQLException {
    long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(TRIES_MS);
    while (true) {
      try {
        Migrations.run(dialect.migrating(), dialect.scripts());
        return dialect.openWriting();
      } catch (SQLException e) {
        long left = end - System.nanoTime();
        if (left <= 0 || !dialect.mayPass(e)) {
          throw e;
        }
        LOG.warn(
            "{} It is tried for another {} s.",
            dialect.explain(e),
            TimeUnit.NANOSECONDS.toSeconds(left));
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(BETWEEN_MS));
      if (Thread.currentThread().isInterrupted()) {
        throw new IOException("The opening of the journal was interrupted.");
      }
    }
  }
}
