package sunup.ops;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.stream.Stream;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.codec.Maybe;

/**
 * The folder of a demo: what was played when it was last seen alive, so that a demo that was killed
 * goes on where it stood. Its clock stands still while the board is down.
 */
final class DemoFolder {
  private static final String KEPT = "demo.json";

  /**
   * What is kept.
   *
   * @param seed of the rehearsal
   * @param morningClock the morning's time when it was last written, epoch milliseconds
   * @param past what is still to be laid down of its past, or null
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Kept(long seed, long morningClock, @Maybe Past past) {}

  /**
   * Mornings before a demo's morning.
   *
   * @param before that morning's date
   * @param mornings how many
   */
  record Past(LocalDate before, int mornings) {}

  private final Path folder;

  DemoFolder(Path folder) throws IOException {
    this.folder = folder;
    Files.createDirectories(folder);
  }

  Path folder() {
    return folder;
  }

  /** What an earlier run left, or null. */
  Kept kept() throws IOException, Wrong {
    Path file = folder.resolve(KEPT);
    if (!Files.exists(file)) {
      return null;
    }
    try {
      return Json.read(Files.readAllBytes(file), Kept.class);
    } catch (BadJson e) {
      throw Wrong.input(
          file + " can't be read (" + e.getMessage() + "). Remove its folder to begin a new demo.");
    }
  }

  /** Replaces it whole, so that a kill leaves the old or the new one. */
  void keep(Kept kept) throws IOException {
    Path next = folder.resolve(KEPT + ".next");
    Files.write(next, Json.bytes(kept));
    replace(next, folder.resolve(KEPT));
  }

  /** A kill leaves the old file or the new one. */
  static void replace(Path next, Path file) throws IOException {
    Files.move(next, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** A file of the program copied into the folder, unless it is there already. */
  Path file(String name) throws IOException {
    Path file = folder.resolve(name);
    if (!Files.exists(file)) {
      Files.writeString(file, resource("demo/" + name));
    }
    return file;
  }

  /** Removes a folder and all that is in it. */
  static void remove(Path folder) throws IOException {
    try (Stream<Path> inside = Files.walk(folder)) {
      for (Path path : inside.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }

  /** A text that comes with the program. */
  static String resource(String name) throws IOException {
    try (InputStream in = DemoFolder.class.getClassLoader().getResourceAsStream(name)) {
      if (in == null) {
        throw new IOException(name + " is missing from the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
