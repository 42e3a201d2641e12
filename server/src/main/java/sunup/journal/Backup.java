package sunup.journal;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * A backup is one SQLite file with all tables of the journal as they stood at one moment, wherever
 * the journal is kept, and the files that belong to it. So the same backup goes back into a data
 * folder or into a PostgreSQL, and whatever reads a journal reads it.
 */
public final class Backup {
  /** Files beside the tables; no table of a journal's database. */
  private static final String FILES = "kept_file";

  private static final int FILE_BYTES_MAX = 4 * 1024 * 1024;
  private static final String PRIVATE = "private";

  private Backup() {}

  /** Sees a journal before it is put back. */
  public interface Look {
    Look NONE = place -> {};

    void at(JournalPlace place) throws IOException;
  }

  /** Something is there already; the message says what. */
  public static final class NotEmpty extends IOException {
    private static final long serialVersionUID = 1L;

    NotEmpty(String message) {
      super(message);
    }
  }

  /**
   * Writes a backup. A board may run on the journal and is not kept waiting.
   *
   * @param to the file; it appears only when it is whole and synced, and is its owner's alone
   * @param files to keep with it, by their names
   * @param privates false leaves the private values out: they read as erased, and it may be kept
   *     longer than they may
   * @return how many rows of each table are in it
   * @throws NotEmpty if there is a file of this name
   */
  public static Map<String, Long> write(
      JournalPlace from, Path to, Map<String, byte[]> files, boolean privates) throws IOException {
    Path target = to.toAbsolutePath();
    if (Files.exists(target)) {
      throw new NotEmpty(target + " is there already. Give the backup another name.");
    }
    if (!Files.isDirectory(target.getParent())) {
      throw new IOException("There is no folder " + target.getParent() + " for the backup.");
    }
    Path part = target.resolveSibling(target.getFileName() + ".part");
    Files.deleteIfExists(part);
    Files.createFile(part, SecretFile.attributes(target));
    try (Snapshot source = Snapshot.of(from)) {
      Map<String, Long> rows = new TreeMap<>();
      prepare(part, source.schema());
      try (Connection c = plain(part).getConnection()) {
        c.setAutoCommit(false);
        copyAll(source.connection(), c, privates ? "" : " WHERE false", rows);
        keep(c, files);
        c.commit();
      }
      // After the journal, so that whatever its events name is in the parts too.
      for (String name : BackupParts.of(from, source)) {
        BackupParts.write(name, from, plain(part), privates, rows);
      }
      sync(part);
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
      sync(target.getParent());
      return rows;
    } catch (SQLException e) {
      throw new IOException("The backup could not be written: " + e.getMessage(), e);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /** Tables of the version that the source has: rows go over as they are. */
  private static void prepare(Path file, String version) throws IOException, SQLException {
    if (version.equals("0")) {
      throw new IOException(
          "This journal is from before its tables were numbered. Start the board on it once, then"
              + " make the backup.");
    }
    SQLiteDataSource made = plain(file);
    try {
      Migrations.run(made, "sqlite", version);
    } catch (IOException e) {
      throw new IOException(
          "The journal has tables of version "
              + version
              + ", which this Sunup does not know. Use the Sunup that wrote it, or a newer one.",
          e);
    }
  }

  /** One file and nothing beside it, also while it is written. */
  private static SQLiteDataSource plain(Path file) {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.DELETE);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    return source;
  }

  private static void copyAll(
      Connection from, Connection to, String privates, Map<String, Long> rows)
      throws SQLException, IOException {
    List<String> known = Tables.names(to);
    List<String> parts = Tables.parts(from);
    for (String table : Tables.names(from)) {
      boolean ofAPart = parts.stream().anyMatch(part -> table.startsWith(part + "_"));
      if (table.equals(FILES) || ofAPart) {
        continue;
      }
      if (!known.contains(table)) {
        throw new IOException(
            "The journal has a table "
                + table
                + " that this Sunup does not know. Use a newer one.");
      }
      rows.put(table, Tables.copy(from, to, table, table.equals(PRIVATE) ? privates : ""));
    }
  }

  private static void keep(Connection c, Map<String, byte[]> files)
      throws SQLException, IOException {
    Dialect.run(c, "CREATE TABLE " + FILES + " (name TEXT PRIMARY KEY, bytes BLOB NOT NULL)");
    try (PreparedStatement s = c.prepareStatement("INSERT INTO " + FILES + " VALUES (?, ?)")) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        if (file.getValue().length > FILE_BYTES_MAX) {
          throw new IOException("The file " + file.getKey() + " is too large to keep.");
        }
        s.setString(1, file.getKey());
        s.setBytes(2, file.getValue());
        s.executeUpdate();
      }
    }
  }

  /** The files that a backup keeps, by name. */
  public static Map<String, byte[]> files(Path backup) throws IOException {
    JournalPlace.file(backup).mustExist();
    Map<String, byte[]> files = new TreeMap<>();
    try (Snapshot open = Snapshot.of(JournalPlace.file(backup));
        Statement s = open.connection().createStatement();
        ResultSet row = s.executeQuery("SELECT name, bytes FROM " + FILES)) {
      while (row.next()) {
        files.put(row.getString(1), row.getBytes(2));
      }
      return files;
    } catch (SQLException | IOException e) {
      throw new IOException(backup + " is no backup of a journal: " + e.getMessage(), e);
    }
  }

  /**
   * Puts a backup into an empty place, all of it or nothing. A backup of an older Sunup is brought
   * to this one's tables on the way; what was due for erasing meanwhile is left out.
   *
   * @param now epoch milliseconds
   * @param look sees the backup as it is put back, with the tables of this Sunup
   * @return how many rows of each table it has now
   * @throws NotEmpty if anything is there already
   */
  public static Map<String, Long> restore(Path backup, JournalPlace to, long now, Look look)
      throws IOException {
    files(backup);
    Path work = Files.createTempDirectory("sunup-restore-");
    Path copy = work.resolve("journal.db");
    // A folder is held while it is filled, so that no board starts on half of it.
    DataFolder held =
        to.file() == null ? null : DataFolder.hold(to.file().toAbsolutePath().getParent());
    try {
      Files.copy(backup, copy);
      SQLiteDataSource source = plain(copy);
      Migrations.run(source, "sqlite");
      look.at(JournalPlace.file(copy));
      Dialect dialect = to.dialect();
      Migrations.run(dialect.migrating(), dialect.scripts());
      Map<String, Long> rows = new TreeMap<>();
      try (Connection from = source.getConnection();
          Connection c = dialect.openWriting()) {
        mustBeEmpty(c, to);
        // A PostgreSQL does not wait in an open transaction for as long as parts may take.
        c.rollback();
        for (String name : Tables.parts(from)) {
          BackupParts.restore(name, source, to, now, rows);
        }
        mustBeEmpty(c, to);
        copyAll(from, c, " WHERE erase_after > " + now, rows);
        c.commit();
        return rows;
      }
    } catch (SQLException e) {
      throw new IOException("The backup could not be put back: " + e.getMessage(), e);
    } finally {
      JdbcJournal.letGo(held);
      Files.deleteIfExists(copy);
      Files.deleteIfExists(work);
    }
  }

  private static void mustBeEmpty(Connection c, JournalPlace to) throws SQLException, NotEmpty {
    List<String> parts = Tables.parts(c);
    for (String table : Tables.names(c)) {
      boolean ofAPart = parts.stream().anyMatch(part -> table.startsWith(part + "_"));
      if (!ofAPart && !Tables.empty(c, table)) {
        throw new NotEmpty(
            to
                + " is not empty: its table "
                + table
                + " holds something. Restore into a new folder or database.");
      }
    }
  }

  private static void sync(Path path) throws IOException {
    try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }
}
