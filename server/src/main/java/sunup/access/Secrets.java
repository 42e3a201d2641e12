package sunup.access;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Locale;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** Random values, hashes and their letters. */
final class Secrets {
  private static final SecureRandom RANDOM = new SecureRandom();

  /** Letters that can be told apart and read aloud: no vowels, no 0, 1, 5, L. */
  private static final String LETTERS = "BCDFGHJKMNPQRSTVWXZ2346789";

  private static final int CODE_LETTERS = 8;

  private Secrets() {}

  static byte[] bytes(int count) {
    byte[] made = new byte[count];
    RANDOM.nextBytes(made);
    return made;
  }

  /** A secret of 128 bits that can stand in an address. */
  static String token() {
    return text(bytes(16));
  }

  /** What a new screen shows: 37 bits. */
  static String pairingCode() {
    StringBuilder code = new StringBuilder();
    for (int i = 0; i < CODE_LETTERS; i++) {
      code.append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
    }
    return code.toString();
  }

  /** A code as it was typed, without what people put between its letters. */
  static String plain(String code) {
    return code.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
  }

  static String text(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** Null if it is no base64url. */
  static byte[] bytes(String text) {
    try {
      return Base64.getUrlDecoder().decode(text);
    } catch (IllegalArgumentException e) {
      return null;
    }
  }

  static byte[] sha256(byte[] of) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(of);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  static byte[] mac(byte[] key, String words) {
    try {
      Mac mac = Mac.getInstance("HmacSHA256");
      mac.init(new SecretKeySpec(key, "HmacSHA256"));
      return mac.doFinal(words.getBytes(StandardCharsets.UTF_8));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }
}
