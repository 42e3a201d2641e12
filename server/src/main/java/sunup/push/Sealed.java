package sunup.push;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.SecureRandom;
import java.security.interfaces.ECPublicKey;
import java.security.spec.ECGenParameterSpec;
import java.util.Arrays;
import javax.crypto.Cipher;
import javax.crypto.KeyAgreement;
import javax.crypto.Mac;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;

/**
 * A message that only the browser can read, by RFC 8291: ECDH with a key pair made for it, HKDF
 * with SHA-256, AES-128-GCM in one record of RFC 8188.
 */
final class Sealed {
  private static final int SALT_BYTES = 16;
  private static final int RECORD_BYTES = 4096;
  private static final int TAG_BITS = 128;
  private static final int CEK_BYTES = 16;
  private static final int NONCE_BYTES = 12;
  private static final int IKM_BYTES = 32;

  /** Stands after the content of the last record. */
  private static final byte LAST = 2;

  private static final SecureRandom RANDOM = new SecureRandom();

  private Sealed() {}

  static byte[] of(byte[] plain, Subscription to) throws GeneralSecurityException {
    KeyPairGenerator pairs = KeyPairGenerator.getInstance("EC");
    pairs.initialize(new ECGenParameterSpec("secp256r1"));
    byte[] salt = new byte[SALT_BYTES];
    RANDOM.nextBytes(salt);
    return of(plain, to, pairs.generateKeyPair(), salt);
  }

  /**
   * @param own made for this message and for no other
   */
  static byte[] of(byte[] plain, Subscription to, KeyPair own, byte[] salt)
      throws GeneralSecurityException {
    byte[] theirs = to.key().raw();
    byte[] ours = Points.written((ECPublicKey) own.getPublic());
    KeyAgreement agreed = KeyAgreement.getInstance("ECDH");
    agreed.init(own.getPrivate());
    agreed.doPhase(Points.read(theirs), true);
    byte[] info = joined(ascii("WebPush: info\0"), theirs, ours);
    byte[] ikm = hkdf(to.auth().raw(), agreed.generateSecret(), info, IKM_BYTES);
    byte[] cek = hkdf(salt, ikm, ascii("Content-Encoding: aes128gcm\0"), CEK_BYTES);
    byte[] nonce = hkdf(salt, ikm, ascii("Content-Encoding: nonce\0"), NONCE_BYTES);
    Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
    cipher.init(
        Cipher.ENCRYPT_MODE, new SecretKeySpec(cek, "AES"), new GCMParameterSpec(TAG_BITS, nonce));
    byte[] record = cipher.doFinal(joined(plain, new byte[] {LAST}));
    byte[] header =
        ByteBuffer.allocate(SALT_BYTES + Integer.BYTES + 1)
            .put(salt)
            .putInt(RECORD_BYTES)
            .put((byte) ours.length)
            .array();
    return joined(header, ours, record);
  }

  /** HKDF of RFC 5869 for what fits into one block. */
  private static byte[] hkdf(byte[] salt, byte[] secret, byte[] info, int bytes)
      throws GeneralSecurityException {
    byte[] extracted = hmac(salt, secret);
    return Arrays.copyOf(hmac(extracted, joined(info, new byte[] {1})), bytes);
  }

  private static byte[] hmac(byte[] key, byte[] of) throws GeneralSecurityException {
    Mac mac = Mac.getInstance("HmacSHA256");
    mac.init(new SecretKeySpec(key, "HmacSHA256"));
    return mac.doFinal(of);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] joined(byte[]... parts) {
    ByteBuffer all = ByteBuffer.allocate(Arrays.stream(parts).mapToInt(p -> p.length).sum());
    Arrays.stream(parts).forEach(all::put);
    return all.array();
  }
}
