package sunup.ops;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import sunup.journal.JournalPlace;
import sunup.journal.SqliteJournal;

/** Which board's journal is meant, told as {@code run} is told it. */
final class JournalOptions {
  @Option(
      names = "--data",
      paramLabel = "FOLDER",
      description =
          "The folder given to run, or the one below it that holds the journal; without it data/.")
  private Path data;

  @Mixin private DatabaseOptions database;

  /** The folder with the board's own files, and with its journal if no database is named. */
  Path folder() {
    Path home = Path.of(System.getProperty("sunup.home", "."));
    Path given = data != null ? data : home.resolve("data");
    return Files.exists(given.resolve(SqliteJournal.FILE)) ? given : given.resolve("board");
  }

  JournalPlace place() throws Wrong {
    database.check();
    return database.address() == null
        ? JournalPlace.folder(folder())
        : JournalPlace.database(database.address());
  }

  /** The site's files and what else the board was told in JSON, by name. */
  Map<String, byte[]> files() throws IOException {
    Map<String, byte[]> files = new TreeMap<>();
    if (Files.isDirectory(folder())) {
      try (Stream<Path> all = Files.list(folder())) {
        for (Path file : all.filter(f -> f.toString().endsWith(".json")).toList()) {
          files.put(file.getFileName().toString(), Files.readAllBytes(file));
        }
      }
    }
    return files;
  }

  /** Refuses files that can't be put: one that is there with other contents is not touched. */
  void check(Map<String, byte[]> files) throws IOException, Wrong {
    Path folder = folder();
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Path path = folder.resolve(file.getKey());
      boolean inside = path.normalize().getParent().equals(folder.normalize());
      if (!inside) {
        throw Wrong.input("The backup holds a file " + file.getKey() + ": it is none of ours.");
      }
      if (Files.exists(path)
          && !java.util.Arrays.equals(Files.readAllBytes(path), file.getValue())) {
        throw Wrong.input(path + " is there already and is another. Restore into a new folder.");
      }
    }
  }

  /** Writes files that were checked. */
  List<String> put(Map<String, byte[]> files) throws IOException {
    Path folder = folder();
    Files.createDirectories(folder);
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Files.write(folder.resolve(file.getKey()), file.getValue());
    }
    return List.copyOf(files.keySet());
  }
}
