package sunup.access;

import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.SQLException;

/**
 * What lets a paired screen's page ask over HTTP too: the fingerprint of the key that the screen
 * proved on its socket, and until when, under a MAC. Any node can check it.
 */
final class Passes {
  /** How long a pass counts: whoever steals one has it no longer. The socket brings new ones. */
  static final long PASS_MS = 5 * 60_000L;

  private static final String NAME = "pass";

  private final byte[] key;

  Passes(byte[] key) {
    this.key = key.clone();
  }

  /** The key of all nodes, made by the first. */
  static byte[] key(Connection c) throws SQLException {
    return AccessStore.key(c, NAME);
  }

  String made(String fingerprint, long now) {
    String words = fingerprint + "." + (now + PASS_MS);
    return words + "." + Secrets.text(Secrets.mac(key, words));
  }

  /** The key's fingerprint, or null if the pass does not count. */
  String read(String pass, long now) {
    int end = pass.lastIndexOf('.');
    int middle = end < 0 ? -1 : pass.lastIndexOf('.', end - 1);
    if (middle < 0) {
      return null;
    }
    byte[] given = Secrets.bytes(pass.substring(end + 1));
    String words = pass.substring(0, end);
    if (given == null || !MessageDigest.isEqual(given, Secrets.mac(key, words))) {
      return null;
    }
    return Long.parseLong(words.substring(middle + 1)) > now ? words.substring(0, middle) : null;
  }
}
