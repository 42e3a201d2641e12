package sunup.tls;

import java.nio.file.Path;
import java.util.List;

/**
 * How the server speaks TLS: with files that are given, or with a root of its own.
 *
 * @param certificate the certificate and those between it and its root, PEM; null for a root of its
 *     own
 * @param key the private key, PEM
 * @param folder where its own root is kept; null if files are given
 * @param names host names that screens reach the server by, besides this machine's own
 * @param lookEveryMs how often it is looked whether files changed or a certificate runs out
 */
public record TlsOptions(
    Path certificate, Path key, Path folder, List<String> names, long lookEveryMs) {
  /** What a site can wait for after it has put new files in place. */
  public static final long LOOK_EVERY_MS = 10_000;

  public TlsOptions {
    names = List.copyOf(names);
  }

  /** Certificate files that somebody else renews. */
  public static TlsOptions files(Path certificate, Path key, List<String> names) {
    return new TlsOptions(certificate, key, null, names, LOOK_EVERY_MS);
  }

  /** A root made at the first start, and a certificate of it for these names. */
  public static TlsOptions ownRoot(Path folder, List<String> names) {
    return new TlsOptions(null, null, folder, names, LOOK_EVERY_MS);
  }

  /** The same with another interval. */
  public TlsOptions looking(long everyMs) {
    return new TlsOptions(certificate, key, folder, names, everyMs);
  }
}
