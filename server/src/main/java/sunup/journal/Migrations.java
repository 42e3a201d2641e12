package sunup.journal;

import java.io.IOException;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;

/** Brings a database to the schema that this program reads. */
final class Migrations {
  /** The table that says what was done. */
  static final String TABLE = "schema_history";

  private Migrations() {}

  /**
   * Several nodes may do it at once: one of them does, the others wait for it.
   *
   * @param scripts name of the folder with the dialect's scripts
   * @throws IOException if a newer Sunup wrote the journal, or a script failed
   * @throws SQLException if the database does not answer
   */
  static void run(DataSource database, String scripts) throws IOException, SQLException {
    run(database, scripts, "latest");
  }

  /**
   * The tables of another part of the board, up to a version.
   *
   * @param part names its scripts and its own table of what was done
   */
  static void part(DataSource database, String part, String scripts, String version)
      throws IOException, SQLException {
    run(database, "sunup/" + part + "/" + scripts, history(part), version);
  }

  /** The table in which a part says what was done. */
  static String history(String part) {
    return part + "_history";
  }

  /**
   * The same up to a version.
   *
   * @param version as the table of another database tells it
   */
  static void run(DataSource database, String scripts, String version)
      throws IOException, SQLException {
    run(database, "sunup/journal/" + scripts, TABLE, version);
  }

  private static void run(DataSource database, String location, String table, String version)
      throws IOException, SQLException {
    try {
      Flyway flyway =
          Flyway.configure(Migrations.class.getClassLoader())
              .dataSource(database)
              .locations("classpath:" + location)
              .table(table)
              .baselineOnMigrate(true)
              .baselineVersion("0")
              .cleanDisabled(true)
              .target(version)
              .load();
      MigrationInfo[] all = flyway.info().all();
      for (MigrationInfo one : all) {
        if (one.getState() == MigrationState.FUTURE_SUCCESS) {
          throw new IOException(
              "This journal has schema "
                  + one.getVersion()
                  + " and this Sunup does not know it. Run the Sunup that wrote it, or a newer"
                  + " one.");
        }
      }
      flyway.migrate();
    } catch (FlywayException e) {
      for (Throwable cause = e; cause != null; cause = cause.getCause()) {
        if (cause instanceof SQLException sql) {
          throw sql;
        }
      }
      throw new IOException("The journal's tables could not be made: " + e.getMessage(), e);
    }
  }
}
