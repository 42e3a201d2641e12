package sunup.ops;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;
import sunup.access.Connections;
import sunup.http.Doors;
import sunup.http.ServerOptions;
import sunup.live.Limits;
import sunup.tls.TlsOptions;

/** TLS and the second port. */
final class DoorOptions {
  @Option(
      names = "--tls",
      description =
          "With --empty: speak TLS by a root that is made at the first start and kept in tls/ of"
              + " the board's folder. The page /trust tells how a screen installs it.")
  private boolean ownRoot;

  @Option(
      names = "--tls-certificate",
      paramLabel = "FILE",
      description =
          "With --empty: speak TLS with this certificate and those above it, PEM. When the files"
              + " change they are taken within ten seconds, without a restart.")
  private Path certificate;

  @Option(names = "--tls-key", paramLabel = "FILE", description = "Its private key, PEM.")
  private Path key;

  @Option(
      names = "--tls-name",
      paramLabel = "HOST",
      description = "A name that screens reach the board by; may be given again.")
  private List<String> names;

  @Option(
      names = "--host",
      defaultValue = ServerOptions.DEFAULT_HOST,
      description =
          "With --pair and TLS: the address to listen on, 0.0.0.0 for all of this machine's (then"
              + " --tls-name says how screens reach it). Without them this machine only.")
  private String host;

  @Option(
      names = "--side-port",
      paramLabel = "PORT",
      description =
          "A second port on this machine alone for /metrics and health in detail, 0 takes a free"
              + " one. Without it there are no metrics.")
  private Integer sidePort;

  @Option(
      names = "--screens-from-one-address",
      paramLabel = "COUNT",
      description =
          "Screens that may come from one address (${DEFAULT-VALUE}). Behind a proxy all of a"
              + " node's screens do.",
      defaultValue = "1024")
  private int screensFromOneAddress;

  void check(boolean empty, boolean pair) throws Wrong {
    if ((certificate == null) != (key == null)) {
      throw Wrong.input("--tls-certificate and --tls-key go together.");
    }
    if (ownRoot && certificate != null) {
      throw Wrong.input("Either --tls, with a root of the board's own, or --tls-certificate.");
    }
    if (names != null && !speaksTls()) {
      throw Wrong.input("--tls-name goes with --tls or --tls-certificate.");
    }
    if (names != null && names.stream().anyMatch(n -> !n.matches("[A-Za-z0-9.:-]{1,253}"))) {
      throw Wrong.input("--tls-name is a host's name or address, such as board.hospital.example.");
    }
    if (speaksTls() && !empty) {
      throw Wrong.input("TLS goes with --empty; the demo plays on this machine alone.");
    }
    if (!empty && !host.equals(ServerOptions.DEFAULT_HOST)) {
      throw Wrong.input("--host goes with --empty; the demo plays on this machine alone.");
    }
    if (!Connections.isLoopback(host) && !(pair && speaksTls())) {
      throw Wrong.input(
          "--host goes with --pair and --tls or --tls-certificate: who is not paired must not"
              + " reach the board from elsewhere.");
    }
    if (isAny() && names == null) {
      throw Wrong.input(
          "--host "
              + host
              + " needs --tls-name, the name or address that screens reach the board by: whoever"
              + " asks by another is refused.");
    }
    if (sidePort != null && (sidePort < 0 || sidePort > 65_535)) {
      throw Wrong.input("--side-port must be 0 to 65535.");
    }
    int most = Limits.DEFAULT.socketsMax();
    if (screensFromOneAddress < 1 || screensFromOneAddress > most) {
      throw Wrong.input(
          "--screens-from-one-address must be 1 to " + most + ", the most that a node serves.");
    }
  }

  String host() {
    return host;
  }

  /** The host in the addresses that are printed: one that the board answers to. */
  String reached() {
    String at = isAny() ? names.get(0) : host;
    return at.contains(":") ? "[" + at + "]" : at;
  }

  private boolean isAny() {
    return host.equals("0.0.0.0") || host.equals("::");
  }

  boolean speaksTls() {
    return ownRoot || certificate != null;
  }

  /**
   * @param folder the board's
   */
  Doors doors(Path folder) {
    List<String> all = new ArrayList<>(names == null ? List.of() : names);
    if (!isAny()) {
      all.add(host);
    }
    TlsOptions tls = null;
    if (ownRoot) {
      tls = TlsOptions.ownRoot(folder.resolve("tls"), all);
    } else if (certificate != null) {
      tls = TlsOptions.files(certificate, key, all);
    }
    return Doors.PLAIN
        .with(tls)
        .beside(sidePort, "127.0.0.1")
        .fromOneAddress(screensFromOneAddress);
  }

  Limits limits() {
    return Limits.DEFAULT.fromOneAddress(screensFromOneAddress);
  }
}
