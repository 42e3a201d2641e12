package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Each answer comes after a sync. Killing a process does not show that, since the page cache
 * survives it; so the system calls of a process under load are read, in their order.
 */
@EnabledOnOs(OS.LINUX)
class SyncTest {
  private static final int COMMANDS = 150;
  private static final List<String> TRACE = List.of("-e", "trace=pwrite64,fdatasync,fsync,write");

  @TempDir Path folder;

  @BeforeEach
  void needStrace() throws Exception {
    ChildProcess.needStrace(folder);
  }

  private Calls.Report run(String care) throws Exception {
    ChildProcess child = new ChildProcess(folder, COMMANDS, care, "none", 0, TRACE);
    assertThat(child.waitForEnd()).as(child.said()).isZero();
    Calls.Report report = Calls.report(Files.readAllLines(child.calls));
    System.out.println(
        care
            + ": "
            + report.answers()
            + " answers in "
            + report.groups()
            + " commits with "
            + report.syncs()
            + " syncs, "
            + report.problems().size()
            + " answers before their sync");
    return report;
  }

  @Test
  void shouldSyncEveryCommitBeforeItsFirstAnswer() throws Exception {
    Calls.Report report = run("careful");
    assertThat(report.answers()).isEqualTo(COMMANDS);
    assertThat(report.groups()).isBetween(1, COMMANDS);
    assertThat(report.syncs()).isGreaterThanOrEqualTo(report.groups());
    assertThat(report.problems()).isEmpty();
  }

  /** That this test can fail at all: a run of its own, which the small ring leaves out. */
  @Test
  @EnabledIfEnvironmentVariable(named = "SUNUP_LONG", matches = "1")
  void shouldNoticeAJournalThatDoesNotSync() throws Exception {
    Calls.Report report = run("careless");
    assertThat(report.answers()).isEqualTo(COMMANDS);
    assertThat(report.problems()).hasSizeGreaterThan(COMMANDS / 2);
  }
}
