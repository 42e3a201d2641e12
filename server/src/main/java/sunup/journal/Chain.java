package sunup.journal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * The hash chain over a morning's events: {@code SHA-256(previous || bytes as stored)}. Not keyed:
 * it shows accidental change, not the work of somebody who can write.
 */
public final class Chain {
  /** Before the first event: 32 zero bytes. */
  public static final Bytes START = Bytes.of(new byte[32]);

  private Chain() {}

  public static Bytes next(Bytes previous, Bytes event) {
    MessageDigest sha = sha256();
    sha.update(previous.raw());
    sha.update(event.raw());
    return Bytes.of(sha.digest());
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("this Java has no SHA-256", e);
    }
  }
}
