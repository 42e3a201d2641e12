package sunup.fuzz;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One decoder under the fuzzer, in a process of its own: what it does with a loop without end or
 * memory without end ends that process and is told.
 *
 * @param decoder which
 * @param seed of the fuzzer's choices
 * @param seconds how long
 * @param findings after how many it ends
 */
record FuzzRun(Decoder decoder, long seed, int seconds, int findings) {
  private static final int LONGEST_INPUT = 8_192;

  /** Of one input, in seconds; the slowest right ones take some hundredths. */
  private static final int LONGEST_S = 10;

  /** How the fuzzer names inputs on which something was thrown. */
  private static final String BROKEN = "crash-";

  /** What the process may take to begin and end, in seconds. */
  private static final int AROUND_S = 120;

  private static final Pattern WORD = Pattern.compile("\"([A-Za-z0-9.-]{2,30})\"");
  private static final Pattern EDGES = Pattern.compile("\\bcov: (\\d+)");
  private static final Pattern INPUTS = Pattern.compile("number_of_executed_units: (\\d+)");
  private static final Pattern BEGUN = Pattern.compile("(?m)^#(\\d+)\\s");
  private static final Pattern TOOK = Pattern.compile(Pattern.quote(Fuzzed.TOOK) + "(\\d+)");

  /** What numbers and texts have at their ends, beside what the fuzzer knows by itself. */
  private static final List<String> ENDS =
      List.of(
          "NaN",
          "\\\"NaN\\\"",
          "\\\"-Infinity\\\"",
          "1e999",
          "-1e999",
          "1e999999999",
          "-0.0",
          "9223372036854775807",
          "-9223372036854775808",
          "2147483648",
          "null",
          "true",
          "[]",
          "{}",
          "\\\\u0000",
          "\\\\ud800",
          "\\xEF\\xBB\\xBF",
          "\\x1D",
          "+999999999-12-31",
          "0000-01-01",
          "24:00",
          "02:30",
          "\\\"\\\"",
          "\\x0D\\x0A");

  /**
   * What came of it.
   *
   * @param inputs tried
   * @param took of them the decoder took
   * @param edges of the program's branches that were gone through
   * @param found files with what broke something, or had to be given up
   */
  record Outcome(Decoder decoder, long inputs, long took, long edges, List<Path> found) {
    /** Those that broke something, without what was only given up: a machine may be slow. */
    List<Path> broken() {
      return found.stream().filter(f -> f.getFileName().toString().startsWith(BROKEN)).toList();
    }
  }

  /** Runs it, with its files in this folder. */
  Outcome in(Path folder) throws IOException, InterruptedException {
    clear(folder);
    Path seeds = Files.createDirectories(folder.resolve("seeds"));
    Path corpus = Files.createDirectories(folder.resolve("corpus"));
    Path found = Files.createDirectories(folder.resolve("found"));
    Path log = folder.resolve("log");
    Path words = folder.resolve("words");
    Set<String> dictionary = new TreeSet<>();
    for (int i = 0; i < decoder.seeds().size(); i++) {
      byte[] one = decoder.seeds().get(i);
      Files.write(seeds.resolve("seed-" + i), one);
      Matcher m = WORD.matcher(new String(one, StandardCharsets.UTF_8));
      while (m.find()) {
        dictionary.add("\"" + m.group(1) + "\"");
      }
    }
    ENDS.forEach(end -> dictionary.add("\"" + end + "\""));
    Files.write(words, dictionary);
    Process process =
        new ProcessBuilder(command(corpus, seeds, found, words))
            .redirectErrorStream(true)
            .redirectOutput(log.toFile())
            .start();
    try {
      boolean ended = process.waitFor(seconds + AROUND_S, TimeUnit.SECONDS);
      return outcome(read(log), found, ended);
    } finally {
      process.destroyForcibly();
    }
  }

  private List<String> command(Path corpus, Path seeds, Path found, Path words) {
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:+EnableDynamicAgentLoading",
        "-Xmx768m",
        "-D" + Fuzzed.DECODER + "=" + decoder.name(),
        "-cp",
        System.getProperty("java.class.path"),
        "com.code_intelligence.jazzer.Jazzer",
        "--target_class=" + Fuzzed.class.getName(),
        "--instrumentation_includes=sunup.**:com.fasterxml.jackson.core.**",
        "--custom_hook_includes=sunup.**",
        // A file that the site's own settings name is meant to be looked for.
        "--disabled_hooks=com.code_intelligence.jazzer.sanitizers.FilePathTraversal",
        "--keep_going=" + findings,
        "--reproducer_path=" + found,
        "-artifact_prefix=" + found + "/",
        "-seed=" + seed,
        "-max_total_time=" + seconds,
        "-max_len=" + LONGEST_INPUT,
        "-timeout=" + LONGEST_S,
        "-rss_limit_mb=0",
        "-use_value_profile=1",
        "-print_final_stats=1",
        "-dict=" + words,
        corpus.toString(),
        seeds.toString());
  }

  private Outcome outcome(String log, Path found, boolean ended) throws IOException {
    List<Path> files = new ArrayList<>();
    try (Stream<Path> all = Files.list(found)) {
      all.filter(f -> !f.toString().endsWith(".java")).sorted().forEach(files::add);
    }
    long inputs = Math.max(last(INPUTS, log), last(BEGUN, log));
    if (inputs < decoder.seeds().size() && files.isEmpty()) {
      throw new IOException(
          "the fuzzer did not run on " + decoder.name() + (ended ? "" : ", or hung") + ": " + log);
    }
    return new Outcome(decoder, inputs, last(TOOK, log), last(EDGES, log), files);
  }

  private static String read(Path log) throws IOException {
    return new String(Files.readAllBytes(log), StandardCharsets.ISO_8859_1);
  }

  private static long last(Pattern pattern, String text) {
    Matcher m = pattern.matcher(text);
    long last = 0;
    while (m.find()) {
      last = Long.parseLong(m.group(1));
    }
    return last;
  }

  private static void clear(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(one);
        }
      }
    }
  }
}
