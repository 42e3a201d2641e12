package sunup.ops;

import java.io.PrintWriter;
import java.nio.file.FileSystemException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import sunup.ops.bench.BenchCommand;

/**
 * The one command line. Exit codes: 0 done, 1 it could not be done, 2 the command line or a file
 * given on it was wrong; the message says what to do.
 */
@Command(
    name = "sunup",
    mixinStandardHelpOptions = true,
    version = "Sunup 0.1.0",
    description = "A live readiness board for the first cases of the day.",
    subcommands = {
      RunCommand.class,
      RehearseCommand.class,
      ForecastCommand.class,
      BackupCommand.class,
      RestoreCommand.class,
      AuditCommand.class,
      BedsideCommand.class,
      YearCommand.class,
      TrialCommand.class,
      BenchCommand.class
    })
public final class Main implements Runnable {
  static final int FAILED = 1;
  static final int WRONG = 2;

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Say what to do:");
  }

  /** The command line with its ways to fail; streams are taken from {@code System}. */
  static CommandLine commandLine() {
    CommandLine line = new CommandLine(new Main());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setExecutionExceptionHandler(
        (e, failed, parsed) -> {
          PrintWriter err = failed.getErr();
          if (e instanceof Wrong wrong) {
            err.println(wrong.getMessage());
            return wrong.exitCode();
          }
          if (e instanceof FileSystemException file) {
            err.println("This file or folder can't be used: " + said(file));
            return FAILED;
          }
          err.println("It could not be done: " + said(e));
          e.printStackTrace(err);
          return FAILED;
        });
    return line;
  }

  /** With the reason, which some of these exceptions have in their name only. */
  private static String said(FileSystemException e) {
    String why = e.getReason() == null ? e.getClass().getSimpleName() : e.getReason();
    return e.getFile() + " (" + why.replace("Exception", "") + ")";
  }

  private static String said(Throwable e) {
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }

  public static void main(String[] args) {
    System.exit(commandLine().execute(args));
  }
}
