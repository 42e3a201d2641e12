package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** A {@link LoadedChild} as its parent sees it, if need be under strace. */
final class ChildProcess {
  private static final long LIMIT_S = 120;
  private static final long LOOK_EVERY_NS = 5_000_000;

  final Path data;
  final Path words;
  final Path calls;
  private final Path output;
  private final Process process;

  /**
   * @param strace arguments for strace, or none to run without it
   */
  ChildProcess(Path folder, int commands, String care, String moment, int nth, List<String> strace)
      throws IOException {
    this.data = folder.resolve("data");
    this.words = folder.resolve("words");
    this.calls = folder.resolve("calls");
    this.output = folder.resolve("output");
    List<String> line = new ArrayList<>();
    if (!strace.isEmpty()) {
      line.addAll(List.of("strace", "-f", "-y", "-ttt", "-o", calls.toString()));
      line.addAll(strace);
    }
    line.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Xmx256m",
            "-cp",
            System.getProperty("java.class.path"),
            LoadedChild.class.getName(),
            data.toString(),
            words.toString(),
            Integer.toString(commands),
            care,
            moment,
            Integer.toString(nth)));
    this.process =
        new ProcessBuilder(line).redirectErrorStream(true).redirectOutput(output.toFile()).start();
  }

  /** Waits until the child has written down a line that begins so. */
  void waitFor(String word) throws IOException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(LIMIT_S);
    while (lines().stream().noneMatch(line -> line.startsWith(word))) {
      if (System.nanoTime() > end || !process.isAlive()) {
        endAll();
        throw new AssertionError("the child did not say '" + word + "': " + said());
      }
      LockSupport.parkNanos(LOOK_EVERY_NS);
    }
  }

  /** Waits for its end; answers how it ended. */
  int waitForEnd() throws InterruptedException, IOException {
    if (!process.waitFor(LIMIT_S, TimeUnit.SECONDS)) {
      endAll();
      throw new AssertionError("the child did not end: " + said());
    }
    return process.exitValue();
  }

  /** kill -9. */
  void kill() throws InterruptedException {
    endAll();
    assertThat(process.waitFor(LIMIT_S, TimeUnit.SECONDS)).isTrue();
  }

  /** Also what strace started: it would go on without strace. */
  private void endAll() {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly();
  }

  /** Whole lines that it wrote down. */
  List<String> lines() throws IOException {
    if (!Files.exists(words)) {
      return List.of();
    }
    String all = Files.readString(words);
    int end = all.lastIndexOf('\n');
    return end < 0 ? List.of() : all.substring(0, end).lines().toList();
  }

  String said() throws IOException {
    return lines().size() + " lines; " + Files.readString(output, StandardCharsets.ISO_8859_1);
  }

  /** Fails with words that say what to do where strace can't be used on Linux. */
  static void needStrace(Path folder) throws IOException, InterruptedException {
    Process tried;
    try {
      File out = folder.resolve("tried").toFile();
      tried =
          new ProcessBuilder("strace", "-o", "/dev/null", "true")
              .redirectErrorStream(true)
              .redirectOutput(out)
              .start();
      assertThat(tried.waitFor())
          .as("strace must be allowed to trace: %s", Files.readString(out.toPath()))
          .isZero();
    } catch (IOException e) {
      throw new AssertionError(
          "This test counts the journal's syncs with strace and can't find it. Install it:"
              + " apt-get install strace",
          e);
    }
  }
}
