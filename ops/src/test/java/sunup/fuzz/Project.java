package sunup.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The project's own examples, as seeds. */
public final class Project {
  private Project() {}

  static Path root() {
    Path here = Path.of("").toAbsolutePath();
    while (here != null && !Files.isDirectory(here.resolve("shared-model"))) {
      here = here.getParent();
    }
    if (here == null) {
      throw new IllegalStateException("it runs in the project's folder or below");
    }
    return here;
  }

  /** The texts of the files of a folder whose names end so. */
  public static List<String> texts(String folder, String end) {
    try (Stream<Path> files = Files.list(root().resolve(folder))) {
      List<Path> found = files.filter(f -> f.toString().endsWith(end)).sorted().toList();
      return found.stream().map(Project::text).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
