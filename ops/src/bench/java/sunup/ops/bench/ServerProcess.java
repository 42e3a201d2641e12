package sunup.ops.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A server in a process of its own, and what the kernel says that it takes. */
final class ServerProcess implements AutoCloseable {
  private static final double TICKS_PER_SECOND = 100;
  private static final int LINES_MAX = 50;
  private static final long END_S = 20;

  private final Process process;
  private final int port;

  private ServerProcess(Process process, int port) {
    this.process = process;
    this.port = port;
  }

  /**
   * Starts it and waits until it says its port.
   *
   * @param says finds the port as its first group in a line of its output
   */
  static ServerProcess start(List<String> line, Path log, Pattern says) throws IOException {
    Process process =
        new ProcessBuilder(line).redirectError(ProcessBuilder.Redirect.to(log.toFile())).start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    for (int at = 0; at < LINES_MAX; at++) {
      String said = out.readLine();
      Matcher found = said == null ? null : says.matcher(said);
      if (found == null) {
        break;
      }
      if (found.find()) {
        return new ServerProcess(process, Integer.parseInt(found.group(1)));
      }
    }
    process.destroyForcibly();
    throw new IOException(line.get(0) + " did not start: " + Files.readString(log));
  }

  int port() {
    return port;
  }

  long pid() {
    return process.pid();
  }

  boolean alive() {
    return process.isAlive();
  }

  /** Processor seconds until now by threads' names, numbers at their ends left out. */
  Map<String, Double> processorSeconds() throws IOException {
    Map<String, Double> all = new TreeMap<>();
    Path tasks = Path.of("/proc/" + process.pid() + "/task");
    try (DirectoryStream<Path> threads = Files.newDirectoryStream(tasks)) {
      for (Path thread : threads) {
        try {
          String stat = Files.readString(thread.resolve("stat"));
          int close = stat.lastIndexOf(')');
          String name = stat.substring(stat.indexOf('(') + 1, close).replaceAll("[-#0-9]+$", "");
          String[] fields = stat.substring(close + 2).split(" ", -1);
          double ticks = Double.parseDouble(fields[11]) + Double.parseDouble(fields[12]);
          all.merge(name, ticks / TICKS_PER_SECOND, Double::sum);
        } catch (NoSuchFileException ended) {
          // It ended meanwhile.
        }
      }
    }
    return all;
  }

  /** Kilobytes in memory. */
  long residentKb() throws IOException {
    for (String line : Files.readAllLines(Path.of("/proc/" + process.pid() + "/status"))) {
      if (line.startsWith("VmRSS:")) {
        return Long.parseLong(line.replaceAll("[^0-9]", ""));
      }
    }
    return 0;
  }

  @Override
  public void close() {
    process.destroy();
    try {
      if (!process.waitFor(END_S, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }
}
