package sunup.access;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;

/** Whether a screen holds the private half of its key. */
public final class KeyProof {
  /** What a screen signs to show who it is. */
  public static final String PROVE = "sunup prove";

  /** What a screen signs with a new key. */
  public static final String NEW_KEY = "sunup new-key";

  /** Beginning of every SubjectPublicKeyInfo of an uncompressed point on P-256. */
  private static final byte[] P256 =
      HexFormat.of().parseHex("3059301306072a8648ce3d020106082a8648ce3d03010703420004");

  private static final int KEY_BYTES = 91;
  private static final int SIGNATURE_BYTES = 64;

  private KeyProof() {}

  /**
   * What is signed: the purpose, the page's origin, so that no other site can ask for it, nonce.
   */
  public static byte[] words(String purpose, String origin, String nonce) {
    return (purpose + "\n" + origin + "\n" + nonce).getBytes(StandardCharsets.UTF_8);
  }

  /**
   * Looks at a signature.
   *
   * @return the key's fingerprint, or nothing if key or signature are not right
   */
  static Optional<String> check(String key, String signature, byte[] words) {
    byte[] encoded = Secrets.bytes(key);
    byte[] signed = Secrets.bytes(signature);
    if (encoded == null
        || signed == null
        || encoded.length != KEY_BYTES
        || signed.length != SIGNATURE_BYTES
        || !Arrays.equals(encoded, 0, P256.length, P256, 0, P256.length)) {
      return Optional.empty();
    }
    try {
      PublicKey read = KeyFactory.getInstance("EC").generatePublic(new X509EncodedKeySpec(encoded));
      Signature check = Signature.getInstance("SHA256withECDSAinP1363Format");
      check.initVerify(read);
      check.update(words);
      return check.verify(signed)
          ? Optional.of(Secrets.text(Secrets.sha256(encoded)))
          : Optional.empty();
    } catch (GeneralSecurityException e) {
      // Not a point of the curve, or no signature.
      return Optional.empty();
    }
  }
}
