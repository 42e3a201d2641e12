package sunup.ops;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sunup.audit.Audit;
import sunup.journal.Backup;
import sunup.journal.JournalPlace;
import sunup.journal.Snapshot;

/** Puts a backup into an empty folder or database and compares the replays of both. */
@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    description = {
      "Puts a backup into an empty data folder or database.",
      "A backup of a folder may go into a database and the other way round. It is refused where"
          + " anything is kept already. What became due for erasing meanwhile stays out."
    })
final class RestoreCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private JournalOptions journal;

  @Parameters(paramLabel = "FILE", description = "The backup.")
  private Path file;

  @Override
  public Integer call() throws Wrong {
    PrintWriter out = spec.commandLine().getOut();
    long now = System.currentTimeMillis();
    try {
      JournalPlace to = journal.place();
      Map<String, byte[]> files = Backup.files(file);
      journal.check(files);
      AtomicReference<Audit.Report> before = new AtomicReference<>();
      Map<String, Long> rows =
          Backup.restore(file, to, now, upgraded -> before.set(audit(upgraded, now)));
      journal.put(files).forEach(name -> out.println("site file " + name));
      Audit.Report was = before.get();
      Audit.Report is = audit(to, now);
      out.println("restored " + file + " to " + to);
      BackupCommand.told(out, rows, is);
      if (!was.heads().equals(is.heads()) || !was.states().equals(is.states())) {
        throw Wrong.failed("What was restored does not replay as the backup does: don't use it.");
      }
      if (rows.getOrDefault("access_person", 0L) > 0) {
        out.println(
            "Screens and people are those of the backup, and nobody is signed on. Revoke again what"
                + " was revoked since. PINs need the pepper's file of the old board, which is in no"
                + " backup: put it back, or start once with --pepper-lost.");
      }
      out.println("It replays as the backup does, chain by chain and morning by morning.");
      out.flush();
      return is.good() ? 0 : Main.FAILED;
    } catch (Backup.NotEmpty e) {
      throw Wrong.input(e.getMessage());
    } catch (IOException e) {
      throw Wrong.failed(e.getMessage());
    }
  }

  private static Audit.Report audit(JournalPlace place, long now) throws IOException {
    try (Snapshot open = Snapshot.of(place)) {
      return Audit.of(open, null, now);
    }
  }
}
