package sunup.ops;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sunup.audit.Audit;
import sunup.journal.Backup;
import sunup.journal.JournalPlace;
import sunup.journal.Snapshot;

/** Writes the journal of a board, running or not, into one file. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    description = {
      "Writes a board's journal and site files, as they are at one moment, into one file.",
      "The board may run meanwhile. The file holds private values that are not erased yet: keep it"
          + " no longer than you may keep those, or leave them out."
    })
final class BackupCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private JournalOptions journal;

  @Parameters(paramLabel = "FILE", description = "The backup; there must be no such file yet.")
  private Path file;

  @Option(
      names = "--without-private",
      description = "Leaves private values out: they read as erased, and the file may be kept.")
  private boolean withoutPrivate;

  @Override
  public Integer call() throws Wrong {
    PrintWriter out = spec.commandLine().getOut();
    try {
      JournalPlace from = journal.place();
      Map<String, Long> rows = Backup.write(from, file, journal.files(), !withoutPrivate);
      Audit.Report found;
      try (Snapshot made = Snapshot.of(JournalPlace.file(file))) {
        found = Audit.of(made, null, System.currentTimeMillis());
      }
      out.println("backed up " + from + " to " + file);
      told(out, rows, found);
      return found.good() ? 0 : Main.FAILED;
    } catch (Backup.NotEmpty e) {
      throw Wrong.input(e.getMessage());
    } catch (IOException e) {
      throw Wrong.failed(e.getMessage());
    }
  }

  /** What was copied, in figures that can be compared. */
  static void told(PrintWriter out, Map<String, Long> rows, Audit.Report found) {
    out.println(
        "  "
            + rows.entrySet().stream()
                .map(table -> table.getValue() + " " + table.getKey())
                .collect(java.util.stream.Collectors.joining(", ")));
    AuditCommand.told(out, found);
    out.flush();
  }
}
