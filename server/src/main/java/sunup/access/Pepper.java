package sunup.access;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.SQLException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.journal.SecretFile;

/**
 * What goes into every PIN's hash: a file outside the database. The database keeps what shows that
 * it is the right one, so that a board with another one says so at its start, and not each PIN.
 */
final class Pepper {
  static final int BYTES = 32;

  /** What is kept of it: a MAC of these words, from which it can't be had. */
  private static final String CHECK = "pepper-check";

  /** In place of a hash: no PIN is right. */
  private static final byte[] NONE = {0};

  private static final Logger LOG = LoggerFactory.getLogger(Pepper.class);

  private Pepper() {}

  /**
   * Reads it, or makes the first.
   *
   * @param make whether it may be made if it is missing and no PIN needs it
   * @param lost true if PINs that need another one are to be given up
   * @throws IOException that says what to do
   */
  static byte[] of(Connection c, Path file, boolean make, boolean lost)
      throws IOException, SQLException {
    boolean needed = pins(c) > 0;
    boolean missing = !Files.exists(file);
    if (missing && make && (lost || !needed)) {
      SecretFile.write(file, Secrets.bytes(BYTES));
    }
    byte[] bytes = read(file, needed);
    byte[] kept = AccessStore.secret(c, CHECK, 0);
    byte[] is = Secrets.mac(bytes, CHECK);
    boolean right = kept == null ? !(missing && needed) : MessageDigest.isEqual(kept, is);
    if (!right && needed && !lost) {
      throw new IOException(
          "The pepper's file " + file + " is not the one that the PINs were made with. " + BACK);
    }
    if (!right && needed) {
      LOG.warn("The pepper is another: all {} PINs are given up and must be set anew.", pins(c));
      AccessStore.run(c, "UPDATE access_person SET salt = ?, hash = ?", NONE, NONE);
    }
    if (kept == null || !right) {
      AccessStore.keepSecret(c, CHECK, is, Long.MAX_VALUE);
    }
    return bytes;
  }

  private static final String BACK =
      "Without it no PIN is right: put the one back that the board had. If it is lost, start once"
          + " with --pepper-lost: all PINs are given up, roles and screens stay, and a link for an"
          + " administrator is printed.";

  private static byte[] read(Path file, boolean needed) throws IOException {
    if (!Files.isReadable(file)) {
      throw new IOException(
          "The pepper's file "
              + file
              + " can't be read. "
              + (needed ? BACK : "Make it of at least " + BYTES + " random bytes, mode 600."));
    }
    SecretFile.check(file, "the pepper's file");
    byte[] bytes = Files.readAllBytes(file);
    if (bytes.length < BYTES) {
      throw new IOException(
          "The pepper's file "
              + file
              + " has less than "
              + BYTES
              + " bytes. "
              + (needed ? BACK : "Remove it, or make it of random bytes."));
    }
    return bytes;
  }

  private static long pins(Connection c) throws SQLException {
    return AccessStore.one(
        c,
        "SELECT count(*) AS n FROM access_person WHERE length(hash) > 1",
        row -> row.getLong("n"));
  }
}
