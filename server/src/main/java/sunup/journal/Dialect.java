package sunup.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;

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

  /** The statements that make the tables where they are missing. */
  List<String> schema();

  /** After private values were deleted and the deletion was committed: leave no copy behind. */
  void scrub(Connection writing) throws SQLException;

  /** What went wrong, in words that say what to do. */
  String explain(SQLException e);
}
