package sunup.journal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads what strace wrote of a {@link LoadedChild}: writes to the log, syncs, words. */
final class Calls {
  private static final String LOG = SqliteJournal.FILE + "-wal>";
  private static final Pattern LINE = Pattern.compile("^(\\d+) +(\\d+\\.\\d+) (.*)$");
  private static final Pattern WORD =
      Pattern.compile("^p?write(?:64)?\\(\\d+<[^>]*/words>, \"(.*?)\\\\n\"");

  private Calls() {}

  /**
   * @param syncs of the log, all ended well
   * @param groups transactions that were committed, by the child's own word
   * @param answers words that a command is durable
   * @param problems an answer with a write to the log not yet synced, or with no sync of its group
   */
  record Report(int syncs, int groups, int answers, List<String> problems) {}

  static Report report(List<String> lines) {
    Map<String, String> open = new HashMap<>();
    List<String> problems = new ArrayList<>();
    int syncs = 0;
    int groups = 0;
    int answers = 0;
    boolean dirty = false;
    boolean syncedSinceCommit = false;
    for (String line : lines) {
      Matcher m = LINE.matcher(line);
      if (!m.matches()) {
        continue;
      }
      String call = m.group(3);
      boolean begun = call.endsWith("<unfinished ...>");
      if (begun) {
        open.put(m.group(1), call);
      }
      boolean resumed = call.startsWith("<... ");
      String whole = resumed ? open.getOrDefault(m.group(1), "") : call;
      if (whole.startsWith("pwrite64(") && whole.contains(LOG) && !resumed) {
        dirty = true;
      } else if (isSync(whole) && !begun && call.endsWith("= 0")) {
        syncs++;
        dirty = false;
        syncedSinceCommit = true;
      }
      Matcher word = WORD.matcher(whole);
      if (!resumed && word.find()) {
        String said = word.group(1);
        if (said.equals("commit")) {
          groups++;
          syncedSinceCommit = false;
        } else if (said.startsWith("durable ")) {
          answers++;
          if (dirty || !syncedSinceCommit) {
            problems.add("'" + said + "' at " + m.group(2) + " was said before its sync");
          }
        }
      }
    }
    return new Report(syncs, groups, answers, problems);
  }

  private static boolean isSync(String call) {
    return (call.startsWith("fdatasync(") || call.startsWith("fsync(")) && call.contains(LOG);
  }

  /** Where in a commit the process was when it was killed. */
  static String lastPoint(List<String> lines) {
    int writes = 0;
    String last = "";
    for (String line : lines) {
      Matcher m = LINE.matcher(line);
      if (!m.matches() || m.group(3).startsWith("+++")) {
        continue;
      }
      String call = m.group(3);
      if (call.startsWith("pwrite64(") && call.contains(LOG)) {
        writes++;
        last = "at write " + writes + " to the log";
      } else if (isSync(call)) {
        last = "at the sync after " + writes + " writes";
        writes = 0;
      } else if (call.startsWith("pwrite64(") || call.startsWith("f")) {
        last = "at " + call.substring(0, call.indexOf('(')) + " of another file";
      }
    }
    return last;
  }
}
