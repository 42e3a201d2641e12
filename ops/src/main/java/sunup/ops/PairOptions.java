package sunup.ops;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import sunup.access.PairingOptions;

/** Whether screens are paired, and what goes into every PIN's hash. */
final class PairOptions {
  @Option(
      names = "--pair",
      description =
          "With --empty: only paired screens see anything, and people sign on by code and PIN; the"
              + " start print has a link for the first administrator.")
  private boolean pair;

  @Option(
      names = "--pepper",
      paramLabel = "FILE",
      description =
          "With --pair: the file with what goes into every PIN's hash, at least 32 bytes; the same"
              + " on all nodes. One node alone makes it itself (DATA/board/pepper).")
  private Path pepper;

  @Option(
      names = "--pepper-lost",
      description =
          "With --pair, once: the pepper of the PINs is lost. All PINs are given up and set anew;"
              + " roles and screens stay, and a link for an administrator is printed.")
  private boolean pepperLost;

  @Option(
      names = "--sign-in",
      paramLabel = "FILE",
      description =
          "With --pair: the file that names the site's identity provider (OpenID Connect), by which"
              + " people sign on beside code and PIN; ACCESS.md says what stands in it.")
  private Path provider;

  void check(boolean empty) throws Wrong {
    if (pair && !empty) {
      throw Wrong.input("--pair goes with --empty; nobody pairs a demo's screens.");
    }
    if (pepper != null && !pair) {
      throw Wrong.input("--pepper goes with --pair.");
    }
    if (provider != null && !pair) {
      throw Wrong.input("--sign-in goes with --pair.");
    }
    if (pepperLost && !pair) {
      throw Wrong.input("--pepper-lost goes with --pair.");
    }
  }

  boolean pair() {
    return pair;
  }

  /** Null where screens are not paired. */
  PairingOptions options() {
    return pair ? new PairingOptions(pepper, pepperLost, provider) : null;
  }
}
