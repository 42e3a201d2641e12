package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static sunup.journal.Waiting.answer;
import static sunup.journal.Waiting.known;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** kill -9 at stated points: what was acknowledged is there after the restart, once. */
class KillTest {
  private static final int COMMANDS = 100_000;
  private static final Pattern ACK = Pattern.compile("ack \\S+ (\\S+) (\\d+)");
  private static final EventCodec CODEC =
      new EventCodec(
          count -> {
            throw new IllegalStateException("nothing is written here");
          });

  /** The how manieth group is stopped: late enough that many commands were answered before it. */
  private static final int NTH = 40;

  /** Different points inside a commit, found within so many tries. */
  private static final int POINTS = "1".equals(System.getenv("SUNUP_LONG")) ? 4 : 2;

  private static final int TRIES = 8;

  /** A write to the files late enough that many commands were answered before it. */
  private static final int FIRST_WRITE = 300;

  @TempDir Path folder;
  private int runs;

  @ParameterizedTest
  @EnumSource(Moments.Moment.class)
  void shouldKeepWhatWasAcknowledgedWhenKilledAt(Moments.Moment moment) throws Exception {
    ChildProcess child =
        new ChildProcess(folder, COMMANDS, "careful", moment.name(), NTH, List.of());
    child.waitFor("standing");
    child.kill();
    checkAfter(child);
  }

  /**
   * The kernel kills the child at the entry of a system call inside of a commit: at one of the
   * writes to the log, or at the sync.
   */
  @Test
  @EnabledOnOs(OS.LINUX)
  void shouldKeepWhatWasAcknowledgedWhenKilledInsideACommit() throws Exception {
    ChildProcess.needStrace(folder);
    Set<String> points = new LinkedHashSet<>();
    points.add(killedAt("fdatasync,fsync:signal=KILL:when=40"));
    assertThat(points).allMatch(point -> point.startsWith("at the sync"));
    for (int nth = FIRST_WRITE; points.size() < POINTS && nth < FIRST_WRITE + TRIES; nth++) {
      points.add(killedAt("pwrite64:signal=KILL:when=" + nth));
    }
    System.out.println("killed inside a commit: " + points);
    assertThat(points).hasSizeGreaterThanOrEqualTo(POINTS);
  }

  private String killedAt(String inject) throws Exception {
    Path here = Files.createDirectories(folder.resolve("run-" + ++runs));
    List<String> strace = List.of("-e", "trace=pwrite64,fdatasync,fsync", "-e", "inject=" + inject);
    ChildProcess child = new ChildProcess(here, COMMANDS, "careful", "none", 0, strace);
    child.waitForEnd();
    checkAfter(child);
    return Calls.lastPoint(Files.readAllLines(child.calls));
  }

  /** A sync that fails leaves a commit in doubt; the owner asks the receipts and goes on. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void shouldGoOnAfterASyncThatFailed() throws Exception {
    ChildProcess.needStrace(folder);
    ChildProcess child =
        new ChildProcess(
            folder,
            300,
            "careful",
            "none",
            0,
            List.of(
                "-e", "trace=fdatasync,fsync", "-e", "inject=fdatasync,fsync:error=EIO:when=25"));
    assertThat(child.waitForEnd()).as(child.said()).isZero();
    List<String> lines = child.lines();
    assertThat(lines).anyMatch(line -> line.startsWith("not-durable")).contains("end");
    assertThat(lines.stream().filter(line -> line.startsWith("ack"))).hasSize(300);
    checkAfter(child);
  }

  private static void checkAfter(ChildProcess child) throws Exception {
    List<String> acks = child.lines().stream().filter(l -> l.startsWith("ack ")).toList();
    assertThat(acks).as(child.said()).hasSizeGreaterThan(5);
    try (Journal journal = SqliteJournal.open(child.data)) {
      Map<String, Receipt> receipts = new HashMap<>();
      Map<String, Integer> counts = new HashMap<>();
      for (int number = 0; number < LoadedChild.MORNINGS; number++) {
        int morning = number;
        Answer<Stored> answer = answer(t -> journal.load(LoadedChild.morning(morning), t));
        Stored stored = known(answer);
        assertThat(JournalCheck.checkReadable(stored, CODEC).problems()).isEmpty();
        stored.receipts().forEach(r -> receipts.put(r.command().value(), r));
        for (Stored.Event event : stored.events()) {
          String id = CODEC.decode(event.bytes(), stored.privates()).command().value();
          counts.merge(id, 1, Integer::sum);
          assertThat(receipts.get(id).toSeq()).isEqualTo(event.seq());
          assertThat(text(event, stored)).contains("note " + id);
        }
      }
      for (String ack : acks) {
        Matcher parts = ACK.matcher(ack);
        assertThat(parts.matches()).as(ack).isTrue();
        assertThat(receipts).as(ack).containsKey(parts.group(1));
        assertThat(receipts.get(parts.group(1)).toSeq()).isEqualTo(Long.parseLong(parts.group(2)));
        assertThat(counts.get(parts.group(1))).as(ack).isEqualTo(1);
      }
    }
  }

  private static String text(Stored.Event event, Stored stored) throws UnreadableEvent {
    return CODEC.decode(event.bytes(), stored.privates()).event().toString();
  }
}
