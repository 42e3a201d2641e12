package sunup.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.regex.Pattern;
import org.bouncycastle.crypto.generators.Argon2BytesGenerator;
import org.bouncycastle.crypto.params.Argon2Parameters;
import sunup.journal.Bytes;

/**
 * PINs as they are kept: Argon2id with a salt each and a pepper that is not in the database, so
 * that a copy of the database alone does not let anybody try the few PINs there are.
 */
final class Pins {
  /** The least that OWASP's page on password storage advises for Argon2id: 19 MiB, 2 passes. */
  private static final int MEMORY_KIB = 19 * 1024;

  private static final int PASSES = 2;
  private static final int HASH_BYTES = 32;
  private static final int SALT_BYTES = 16;
  private static final int DIGITS_MIN = 4;
  private static final int DIGITS_MAX = 12;

  /**
   * What people choose most, by their kinds: one to three digits again and again, two pairs, four
   * that read the same backwards, a year, the middle column of a keypad (from memory: lists of PINs
   * that came out of breaches).
   */
  private static final Pattern TRIED_FIRST =
      Pattern.compile(
          "([0-9]{1,3})\\1+|([0-9])\\2([0-9])\\3|([0-9])([0-9])\\5\\4|(19|20)[0-9]{2}|2580|0852");

  private final byte[] pepper;

  Pins(byte[] pepper) {
    this.pepper = pepper.clone();
  }

  /** What is kept of a PIN. */
  record Kept(Bytes salt, Bytes hash) {}

  /** Says what is wrong with a new PIN; null if nothing is. */
  static String wrong(String pin) {
    if (!pin.matches("[0-9]{" + DIGITS_MIN + "," + DIGITS_MAX + "}")) {
      return "A PIN is " + DIGITS_MIN + " to " + DIGITS_MAX + " digits.";
    }
    int step = pin.charAt(1) - pin.charAt(0);
    boolean even = Math.abs(step) <= 1;
    for (int i = 2; i < pin.length(); i++) {
      even &= pin.charAt(i) - pin.charAt(i - 1) == step;
    }
    return even || TRIED_FIRST.matcher(pin).matches()
        ? "That PIN is tried first by everybody. Take another one."
        : null;
  }

  /** Takes tens of milliseconds and 19 MiB. */
  Kept keep(String pin) {
    byte[] salt = Secrets.bytes(SALT_BYTES);
    return new Kept(Bytes.of(salt), Bytes.of(hash(pin, salt)));
  }

  /**
   * Takes as long.
   *
   * @param kept null for somebody who is not known: as slow, and never right
   */
  boolean right(String pin, Kept kept) {
    byte[] salt = kept == null ? new byte[SALT_BYTES] : kept.salt().raw();
    byte[] hash = hash(pin, salt);
    return kept != null && MessageDigest.isEqual(hash, kept.hash().raw());
  }

  private byte[] hash(String pin, byte[] salt) {
    Argon2BytesGenerator generator = new Argon2BytesGenerator();
    generator.init(
        new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id)
            .withSalt(salt)
            .withSecret(pepper)
            .withMemoryAsKB(MEMORY_KIB)
            .withIterations(PASSES)
            .withParallelism(1)
            .build());
    byte[] made = new byte[HASH_BYTES];
    generator.generateBytes(pin.getBytes(StandardCharsets.UTF_8), made);
    return made;
  }
}
