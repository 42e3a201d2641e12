package sunup.ops.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What the project's own files keep to, beside what compilers and formatters see. */
class TidyTest {
  private static final int WIDTH = 100;
  private static final int LINES = 450;
  private static final Set<String> CODE = Set.of("java", "ts", "mjs", "css", "html", "sh");
  private static final Set<String> TEXT =
      Set.of("java", "ts", "mjs", "css", "html", "sh", "md", "json", "xml", "csv", "yaml", "");

  /** Written apart so that this file does not hold what it looks for. */
  private static final List<String> NEVER =
      List.of(
          "registry." + "npmjs",
          "repo1." + "maven",
          "repo." + "maven.apache",
          "deb." + "debian",
          "/wo" + "rk/",
          "/tmp" + "/wt",
          "/ro" + "ot/",
          "trans" + "cript",
          "seed " + "document",
          "TO" + "DO",
          "FIX" + "ME",
          "X" + "XX");

  private static final Pattern SLEEPS =
      Pattern.compile("Thread\\.sle" + "ep\\(|TimeUnit\\.\\w+\\.sle" + "ep|waitFor" + "Timeout");
  private static final Pattern BLANK_AT_END = Pattern.compile("[ \\t]+$");

  private final Path root = root();

  @Test
  void shouldHaveFilesToLookAt() throws IOException {
    assertThat(files(CODE)).hasSizeGreaterThan(50);
  }

  @Test
  void shouldKeepLinesShortAndWithoutBlanksAtTheirEnd() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : files(CODE)) {
      List<String> lines = lines(file);
      for (int i = 0; i < lines.size(); i++) {
        String line = lines.get(i);
        boolean wide = line.length() > WIDTH && wraps(file) && !line.startsWith("import ");
        if (wide || BLANK_AT_END.matcher(line).find()) {
          wrong.add(at(file, i, wide ? "is longer than " + WIDTH : "ends in blanks"));
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void shouldSplitAFileThatHoldsTwoSubjects() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : files(CODE)) {
      int lines = lines(file).size();
      if (lines > LINES) {
        wrong.add(root.relativize(file) + " has " + lines + " lines; at most " + LINES);
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void shouldNameNoMachineNoRegistryAndNothingLeftToDo() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : files(TEXT)) {
      List<String> lines = lines(file);
      for (int i = 0; i < lines.size(); i++) {
        for (String word : NEVER) {
          if (lines.get(i).contains(word)) {
            wrong.add(at(file, i, "has " + word));
          }
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void shouldWaitForConditionsAndNeverForTime() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : files(CODE)) {
      List<String> lines = lines(file);
      for (int i = 0; i < lines.size(); i++) {
        if (SLEEPS.matcher(lines.get(i)).find()) {
          wrong.add(at(file, i, "sleeps"));
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  private static boolean wraps(Path file) {
    // What prettier could not wrap in a page's template has no better place to break.
    return file.toString().endsWith(".java");
  }

  private String at(Path file, int line, String what) {
    return root.relativize(file) + ":" + (line + 1) + " " + what;
  }

  private List<Path> files(Set<String> kinds) throws IOException {
    Set<String> left = Set.of("target", "node_modules", "dist", ".git", "generated", "data");
    List<Path> found = new ArrayList<>();
    Files.walkFileTree(
        root,
        new java.nio.file.SimpleFileVisitor<>() {
          @Override
          public java.nio.file.FileVisitResult preVisitDirectory(
              Path folder, java.nio.file.attribute.BasicFileAttributes a) {
            return left.contains(folder.getFileName().toString())
                ? java.nio.file.FileVisitResult.SKIP_SUBTREE
                : java.nio.file.FileVisitResult.CONTINUE;
          }

          @Override
          public java.nio.file.FileVisitResult visitFile(
              Path file, java.nio.file.attribute.BasicFileAttributes a) {
            if (kinds.contains(kind(file)) && a.isRegularFile()) {
              found.add(file);
            }
            return java.nio.file.FileVisitResult.CONTINUE;
          }
        });
    found.removeIf(f -> f.endsWith("package-lock.json"));
    return found.stream().sorted().toList();
  }

  private static String kind(Path file) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return dot < 0 ? "" : name.substring(dot + 1);
  }

  private static List<String> lines(Path file) throws IOException {
    return List.of(Files.readString(file, StandardCharsets.UTF_8).split("\n", -1));
  }

  private static Path root() {
    Path here = Path.of("").toAbsolutePath();
    while (here != null && !Files.isDirectory(here.resolve("shared-model"))) {
      here = here.getParent();
    }
    if (here == null) {
      throw new IllegalStateException("the tests run in the project's folder or below");
    }
    return here;
  }
}
