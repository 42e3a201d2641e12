package sunup.journal;

import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** HMAC-SHA256. */
public final class Mac256 {
  private static final String NAME = "HmacSHA256";

  private Mac256() {}

  public static Bytes of(Bytes key, Bytes value) {
    try {
      Mac mac = Mac.getInstance(NAME);
      mac.init(new SecretKeySpec(key.raw(), NAME));
      return Bytes.of(mac.doFinal(value.raw()));
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException("this Java has no " + NAME, e);
    }
  }
}
