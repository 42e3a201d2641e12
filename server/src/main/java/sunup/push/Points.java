package sunup.push;

import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.interfaces.ECPublicKey;
import java.security.spec.ECFieldFp;
import java.security.spec.ECParameterSpec;
import java.security.spec.ECPoint;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.HexFormat;

/** Points on P-256 as browsers write them: 65 bytes, not compressed. */
final class Points {
  static final int BYTES = 65;

  /** Beginning of every SubjectPublicKeyInfo of such a point, up to the point itself. */
  private static final byte[] BEGIN =
      HexFormat.of().parseHex("3059301306072a8648ce3d020106082a8648ce3d030107034200");

  private Points() {}

  /**
   * Reads one.
   *
   * @throws IllegalArgumentException if it is no point of the curve: with others a private key
   *     could be found out
   */
  static ECPublicKey read(byte[] point) {
    if (point.length != BYTES || point[0] != 4) {
      throw new IllegalArgumentException("This is no key of a browser.");
    }
    byte[] encoded = Arrays.copyOf(BEGIN, BEGIN.length + BYTES);
    System.arraycopy(point, 0, encoded, BEGIN.length, BYTES);
    try {
      ECPublicKey key =
          (ECPublicKey)
              KeyFactory.getInstance("EC").generatePublic(new X509EncodedKeySpec(encoded));
      if (!lies(key.getW(), key.getParams())) {
        throw new IllegalArgumentException("This is no key of a browser.");
      }
      return key;
    } catch (GeneralSecurityException e) {
      throw new IllegalArgumentException("This is no key of a browser.", e);
    }
  }

  private static boolean lies(ECPoint at, ECParameterSpec on) {
    BigInteger p = ((ECFieldFp) on.getCurve().getField()).getP();
    BigInteger x = at.getAffineX();
    BigInteger y = at.getAffineY();
    BigInteger right =
        x.pow(3).add(on.getCurve().getA().multiply(x)).add(on.getCurve().getB()).mod(p);
    return x.compareTo(p) < 0 && y.compareTo(p) < 0 && y.multiply(y).mod(p).equals(right);
  }

  static byte[] written(ECPublicKey key) {
    byte[] encoded = key.getEncoded();
    return Arrays.copyOfRange(encoded, encoded.length - BYTES, encoded.length);
  }
}
