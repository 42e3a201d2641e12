package sunup.ops;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The board as a process of its own, as a person starts it; it can be killed without warning. */
final class BoardProcess implements AutoCloseable {
  private static final int END_SECONDS = 30;
  private final Process process;
  private final int port;

  private BoardProcess(Process process, int port) {
    this.process = process;
    this.port = port;
  }

  /**
   * @param log where its log goes
   * @param args after {@code run --port 0}
   */
  static BoardProcess start(Path log, String... args) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-cp",
                System.getProperty("java.class.path"),
                "sunup.ops.Main",
                "run",
                "--cold",
                "--past",
                "0",
                "--port",
                "0"));
    command.addAll(List.of(args));
    Process process =
        new ProcessBuilder(command)
            .redirectError(ProcessBuilder.Redirect.appendTo(log.toFile()))
            .start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = out.readLine();
    if (line == null || !line.startsWith("board http://127.0.0.1:")) {
      process.destroyForcibly();
      throw new IOException("the board did not start: " + line + ", see " + log);
    }
    String root = line.substring("board http://127.0.0.1:".length());
    return new BoardProcess(process, Integer.parseInt(root.substring(0, root.indexOf('/'))));
  }

  int port() {
    return port;
  }

  /** As if the plug were pulled: SIGKILL. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor(END_SECONDS, TimeUnit.SECONDS);
  }

  /** Asks it to end and says how it did: the exit code. */
  int end() throws InterruptedException {
    process.destroy();
    if (!process.waitFor(END_SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new IllegalStateException("the board did not end when it was asked to");
    }
    return process.exitValue();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
