package sunup.ops;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import sunup.journal.PostgresAddress;

/** Where the journal is kept if not in a file: options, or the environment for services. */
final class DatabaseOptions {
  private static final String NONE = Option.NULL_VALUE;

  @Option(
      names = "--database",
      paramLabel = "URL",
      description =
          "Keep the journal in this PostgreSQL, for example"
              + " jdbc:postgresql://db.example/sunup (environment: SUNUP_DATABASE). Without it the"
              + " journal is a file in the data folder.",
      defaultValue = "${env:SUNUP_DATABASE:-" + NONE + "}")
  private String url;

  @Option(
      names = "--database-user",
      paramLabel = "USER",
      description = "The database's user (SUNUP_DATABASE_USER).",
      defaultValue = "${env:SUNUP_DATABASE_USER:-" + NONE + "}")
  private String user;

  @Option(
      names = "--database-password-file",
      paramLabel = "FILE",
      description =
          "A file that only the board may read, with the password in its first line"
              + " (SUNUP_DATABASE_PASSWORD_FILE).",
      defaultValue = "${env:SUNUP_DATABASE_PASSWORD_FILE:-" + NONE + "}")
  private Path passwordFile;

  void check() throws Wrong {
    if (url == null && (user != null || passwordFile != null)) {
      throw Wrong.input("--database-user and --database-password-file go with --database.");
    }
  }

  /** The database, or null for the data folder. */
  PostgresAddress address() {
    return url == null ? null : new PostgresAddress(url, user, passwordFile);
  }
}
