package sunup.ops;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sunup.audit.Audit;
import sunup.audit.SignedHeads;
import sunup.audit.Signer;
import sunup.audit.SigningKeys;
import sunup.journal.JournalPlace;
import sunup.journal.Snapshot;

/** Whether a journal or a backup is what it was. */
@Command(
    name = "audit",
    mixinStandardHelpOptions = true,
    description = {
      "Walks every chain, replays every morning and, with signed heads, shows what was altered,"
          + " removed or cut off by somebody who could write to the journal.",
      "Exit code 0 if all is well, 1 if not. It changes nothing; the board may run."
    },
    subcommands = {AuditCommand.Key.class, AuditCommand.Sign.class})
final class AuditCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private JournalOptions journal;

  @Option(names = "--backup", paramLabel = "FILE", description = "Look at this backup instead.")
  private Path backup;

  @Option(names = "--heads", paramLabel = "FILE", description = "Heads signed by audit sign.")
  private Path heads;

  @Option(
      names = "--key",
      paramLabel = "FILE",
      description = "The public key that they were signed for.")
  private Path key;

  @Option(names = "--refused", description = "List the commands that were refused.")
  private boolean refused;

  @Option(
      names = "--within",
      paramLabel = "MINUTES",
      description = "The last signature must not be older than this.")
  private Long within;

  @Override
  public Integer call() throws Wrong {
    if ((heads == null) != (key == null) || (within != null && heads == null)) {
      throw Wrong.input("--heads and --key go together, and --within with them.");
    }
    PrintWriter out = spec.commandLine().getOut();
    try (Snapshot open =
        Snapshot.of(backup == null ? journal.place() : JournalPlace.file(backup))) {
      SignedHeads signed =
          heads == null ? null : SignedHeads.read(heads, SigningKeys.readPublic(key));
      Audit.Report found = Audit.of(open, signed, Long.MIN_VALUE);
      told(out, found);
      if (refused) {
        found.refused().forEach(words -> out.println("  refused: " + words));
      }
      boolean fresh = signed == null || fresh(out, signed.moments());
      out.flush();
      return found.good() && fresh ? 0 : Main.FAILED;
    } catch (IOException e) {
      throw Wrong.failed(e.getMessage());
    }
  }

  private boolean fresh(PrintWriter out, List<SignedHeads.Moment> moments) {
    if (moments.isEmpty()) {
      out.println("NOT GOOD: no head was ever signed");
      return false;
    }
    Instant last = Instant.parse(moments.get(moments.size() - 1).at());
    out.println("  signed " + moments.size() + " times, last at " + last);
    if (within != null && last.isBefore(Instant.now().minus(Duration.ofMinutes(within)))) {
      out.println("NOT GOOD: nothing was signed for " + within + " minutes: who should sign?");
      return false;
    }
    return true;
  }

  static void told(PrintWriter out, Audit.Report found) {
    out.println(
        "  "
            + found.mornings()
            + " mornings, "
            + found.events()
            + " events, "
            + found.refused().size()
            + " refused commands; heads "
            + found.heads()
            + ", replays "
            + found.states());
    if (found.good()) {
      out.println("  every chain fits and every morning replays");
    }
    found.findings().forEach(words -> out.println("NOT GOOD: " + words));
  }

  /** Makes the pair of keys. */
  @Command(
      name = "key",
      mixinStandardHelpOptions = true,
      description =
          "Makes a pair of Ed25519 keys: FILE to sign with, to be kept where the board and its"
              + " administrators can't read it, and FILE.pub to check with.")
  static final class Key implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The private key's file.")
    private Path file;

    @Override
    public Integer call() throws Wrong {
      try {
        SigningKeys.make(file);
        PrintWriter out = spec.commandLine().getOut();
        out.println("made " + file + " and " + SigningKeys.publicFile(file));
        out.flush();
        return 0;
      } catch (IOException e) {
        throw Wrong.input(e.getMessage());
      }
    }
  }

  /** Signs heads, once or on a schedule. */
  @Command(
      name = "sign",
      mixinStandardHelpOptions = true,
      description = {
        "Signs the heads of all mornings that changed, and adds them to a file.",
        "Run it as another user or on another machine than the board, so that who can write to the"
            + " journal can neither sign nor change the file."
      })
  static final class Sign implements Callable<Integer> {
    @Spec private CommandSpec spec;
    @Mixin private JournalOptions journal;

    @Option(
        names = "--heads",
        paramLabel = "FILE",
        required = true,
        description = "The file of signed heads; made if it is not there.")
    private Path heads;

    @Option(
        names = "--key",
        paramLabel = "FILE",
        required = true,
        description = "The private key; FILE.pub is beside it.")
    private Path key;

    @Option(
        names = "--every",
        paramLabel = "MINUTES",
        description = "Go on, and sign this often; without it once.")
    private Long every;

    @Override
    public Integer call() throws Exception {
      if (every != null && every < 1) {
        throw Wrong.input("--every is at least 1 minute.");
      }
      int result = once();
      CountDownLatch never = new CountDownLatch(1);
      while (every != null && !never.await(every, TimeUnit.MINUTES)) {
        try {
          once();
        } catch (Wrong e) {
          // A database that is away comes back; what is signed then covers the gap.
          spec.commandLine().getErr().println(Instant.now() + " not signed: " + e.getMessage());
        }
      }
      return result;
    }

    private int once() throws Wrong {
      PrintWriter out = spec.commandLine().getOut();
      try (Snapshot open = Snapshot.of(journal.place())) {
        PrivateKey signing = SigningKeys.readPrivate(key);
        PublicKey checking = SigningKeys.readPublic(SigningKeys.publicFile(key));
        Signer.Done done =
            new Signer(SignedHeads.read(heads, checking), signing).sign(open, Instant.now());
        out.println("signed " + done.signed() + " heads that changed, at " + Instant.now());
        done.findings().forEach(words -> out.println("NOT SIGNED: " + words));
        out.flush();
        return done.findings().isEmpty() ? 0 : Main.FAILED;
      } catch (IOException e) {
        throw Wrong.failed(e.getMessage());
      }
    }
  }
}
