package sunup.push;

import java.util.Base64;
import sunup.journal.Bytes;

/**
 * Where a browser's push service takes messages for one page, and what they are sealed for.
 *
 * @param key the browser's public key, an uncompressed point on P-256
 * @param auth the browser's secret, 16 bytes
 */
public record Subscription(String endpoint, Bytes key, Bytes auth) {
  /** The least secret that the standard has. */
  static final int AUTH_BYTES = 16;

  /**
   * Of what a page sent.
   *
   * @param key base64url
   * @param auth base64url
   * @throws IllegalArgumentException that says what is wrong
   */
  public static Subscription of(String endpoint, String key, String auth) {
    byte[] point = Base64.getUrlDecoder().decode(key);
    byte[] secret = Base64.getUrlDecoder().decode(auth);
    if (secret.length != AUTH_BYTES) {
      throw new IllegalArgumentException("The browser's secret is not of 16 bytes.");
    }
    Points.read(point);
    return new Subscription(endpoint, Bytes.of(point), Bytes.of(secret));
  }
}
